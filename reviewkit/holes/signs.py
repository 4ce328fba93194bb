"""What single mentions say of where a hole begins: lengths of holes, words of a tee, words amid a hole."""

from __future__ import annotations

import re
from collections.abc import Collection

from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import SMALL_UNITS

HOLED = {"holed", "tap", "putts"}
"""Kinds of mention that tell of a ball in the hole."""
ENDED = {*HOLED, "updown", "stayed_out"}
"""Kinds of mention that end a hole."""
CLOSES = {*ENDED, "score_word", "strokes", "running", "total", "hole_to_par"}
"""The same, and its score."""
_OPENS = {"par", "club", "strike"}
_FEW_WORDS, _TELLS_NOTHING = 3, {"mend?", "who?", "meant?"}
"""Words of an utterance with its full stop, and kinds of mention, that take no place among those near."""
_UNDER_WAY = {"drop", "lie", "found", "putter", "reload", "again", "tap", "stayed_out", "updown", "putts"}
_AROUND_THE_GREEN = {
    ("place", "there"),
    *(("strike", "bunker"), ("strike", "chip"), ("strike", "pitch")),
    *(("club", "SW"), ("club", "LW"), ("club", "56"), ("club", "58"), ("club", "60")),
}
_FAR_YD, _FAR_M = 320, 290
"""Nobody has more left after a tee shot worth telling; a guess."""
_SHORTEST = 70
"""No hole is shorter, in yards or metres; common sense."""
NOT_MINE = {"other", "plan", "past", "aside"}
"""Moods of lengths that no stroke of mine has left."""
_LEFT = re.compile(r"left|to go|to the|out|more|another|still")
COURSE = 18
"""Holes of a course; the 1st comes after the last."""
_PLAINLY = 0.9
"""Weight of words for going on that are no mere "it's a"."""
_NEXT = 3
"""Words from a score to the par that it was made on, at most."""
_MINE = re.compile(r"my [2-9]")


def of_hole(mention: Mention) -> bool:
    """Whether a mention is a hole's length: told as one, or a number that no other stroke starts from."""
    if mention.kind != "distance" or not isinstance(mention.value, int | float):
        return False
    if mention.mood == "length":
        return True
    return mention.value >= (_FAR_M if mention.unit == "m" else _FAR_YD) and from_tee(mention)


def tells_length(talk: Talk, at: int) -> bool:
    """Whether a hole's length is told: as one, or as a yardage beside a par: "288, and it's a par 4".

    So too where it goes with words for a hole: "96 metres, the shortest hole we've got".
    """
    if any(of_hole(m) for m in talk[at].mentions):
        return True
    if not any(from_tee(m) and float(m.value or 0) >= _SHORTEST for m in talk[at].mentions):
        return False
    return begins(talk[at]) or any(tells_par(near) for near in talk[at : at + 2])


def begins(utterance: Utterance) -> bool:
    """Whether a hole is named or gone on to there: "right, eleven", "fourteen then, a fresh start"."""
    if any(m.weight >= _PLAINLY for m in turns(utterance)):
        return True
    return any(plain(m, "hole") for m in utterance.mentions)


def turns(utterance: Utterance) -> list[Mention]:
    """Words for going on to the hole that begins there."""
    away = turns_away(utterance)
    return [m for m in utterance.mentions if plain(m, "turn") and m not in away]


def turns_away(utterance: Utterance) -> list[Mention]:
    """Words for going on that close a hole, behind its end: "brushed it in, a 3 and on we go"."""
    told = [m for m in utterance.mentions if not m.mood]
    if all(m.kind != "turn" for m in told):
        return []
    over = min((m.last for m in told if m.kind in CLOSES), default=None)
    opens = max((m.first for m in told if m.kind in _OPENS or of_hole(m)), default=-1)
    return [m for m in told if m.kind == "turn" and over is not None and m.first > max(over, opens)]


def on_the_green(mention: Mention) -> bool:
    """A length in feet: whoever tells one has played."""
    told = mention.kind == "distance" and mention.unit in SMALL_UNITS and mention.mood not in NOT_MINE
    return told and mention.value is not None


def only_its_number(utterance: Utterance) -> bool:
    """ "Seven.": a hole's number and nothing else, which may also be the score of the one before."""
    alone = utterance.text.strip(" .,!?").isdigit()
    return alone and {"hole", "strokes"} <= {m.kind for m in utterance.mentions if not m.mood}


def yardage(mention: Mention) -> bool:
    """Whether it is a length in yards or metres, or told by its number alone."""
    return mention.kind == "distance" and mention.unit in ("yd", "m", "")


def from_tee(mention: Mention) -> bool:
    """Whether a length may be a tee's: a yardage that is not told as what is left."""
    return yardage(mention) and mention.mood in ("", "togo", "bare") and not _LEFT.search(mention.text)


def slight(utterance: Utterance) -> bool:
    """A word or two that tell nothing: "mate", "no", "sorry"."""
    return len(utterance.text.split()) <= _FEW_WORDS and all(
        m.kind in _TELLS_NOTHING for m in utterance.mentions
    )


def plain(mention: Mention, kind: str) -> bool:
    return mention.kind == kind and not mention.mood


def plain_of(mention: Mention, kinds: set[str]) -> bool:
    return mention.kind in kinds and not mention.mood


def tells_par(utterance: Utterance) -> bool:
    """Whether a par is told, and not as what a score was made on: "7 on a par 4", "and in, par 4"."""
    made = [m.last for m in utterance.mentions if not m.mood and m.kind in ("strokes", "holed", "tap")]
    pars = [m.first for m in utterance.mentions if plain(m, "par")]
    return any(not any(0 <= first - last <= _NEXT for last in made) for first in pars)


def under_way(mention: Mention) -> bool:
    """Words that nobody begins a hole with: a drop, a chip, a putt, what is left to the flag."""
    if mention.kind == "distance":
        words = mention.text
        left = mention.mood == "togo" and (_LEFT.search(words) or "lea" in words or words.startswith("from"))
        return bool(left) or mention.unit in SMALL_UNITS
    around_the_green = (mention.kind, str(mention.value)) in _AROUND_THE_GREEN
    counted = mention.kind == "count" and mention.unit == "hitting" and _MINE.match(mention.text) is not None
    return (mention.kind in _UNDER_WAY or around_the_green or counted) and not mention.mood


def fits(mention: Mention, number: int, ends: Collection[int]) -> bool:
    """Whether "after three holes" or "two to play" can be said on hole `number` of a round.

    `ends` are its last holes: those of the nines, or of a plan told beforehand (19 is the 1st again).
    """
    value = int(mention.value or 0)
    if mention.kind == "to_play":
        return any((last - value - number) % COURSE in (0, COURSE - 1) for last in ends)
    return any(first + value - 1 in (number, number - 1) for first in (1, 10))


def tee(mention: Mention) -> bool:
    """A driver or a word for the tee shot; "driver, by the way" too."""
    told = mention.mood in ("", "after", "with")
    return told and ((mention.kind, mention.value) in {("club", "D"), ("strike", "tee")})

"""Small talk between two holes: whose it is, and how far it reaches.

"So a 6, 4 over. | Hang on, there's a greenkeeper. He's waving. | He's gone. Fifth, 340, driver": the bars are
pauses, and the fifth hole begins with the greenkeeper. But "and that's me 2 over. | What do you call a golfer
who tells the truth? I never met her. | Right, eleven, and it's 140" is a joke told for itself.
"""

from __future__ import annotations

import re

from reviewkit.holes.signs import begins, of_hole, plain, turns
from reviewkit.model import Mention, Talk, Utterance

LONGEST = 7
"""Utterances of small talk before a hole is announced, at most."""
_PAUSE_S, _WAIT_S = 0.65, 2.6
"""Silence between two holes: longer than a breath, shorter than the wait for a ball; common sense."""
_FOR_ITSELF_S, _TO_THE_TEE_S, _LONGER_S = 1.6, 0.6, 0.2
"""Silences before talk that stands for itself and behind it, before a hole is named, at least, and how much
longer the first one is."""
_SCORES = {"score_word", "strokes", "points", "running", "hole_to_par", "total", "putts"}
_PLAY = {
    *("place", "holed", "tap", "putt", "putter", "strike", "club", "drop", "reload", "updown", "stayed_out"),
    *("miss", "contact", "found"),
}
_HERE = re.compile(r"(?<![a-z])(?:this (?:one|1|walk|bit)|next|tee|hole)(?![a-z])")
"""Words of the hole to come."""
_ANNOUNCES = {"par", "hole"}
PLANS = {"planned", "stretch", "opener", "closer"}
"""Kinds of what is told of the round as a whole."""
_BEFORE_FIRST = {"hole", "par", "club", "place", "strike", "turn"}
_OF_A_HOLE = {"par", "club", "strike"}
_DONE = {"", "after", "with"}
"""Moods of what I did."""


def small_talk(talk: Talk, ended: tuple[float, ...]) -> tuple[int, ...]:
    """For each utterance behind a pause the first from it on that tells of a hole; else the utterance itself.

    `ended` counts balls holed and scores told before each: talk before the first hole is not its own.
    """
    return tuple(_reach(talk, at) if _apart(talk, at, ended) else at for at in range(len(talk)))


def asides(talk: Talk, ended: tuple[float, ...]) -> tuple[int, ...]:
    """For each utterance that names a hole the first of small talk before it that stands for itself.

    Else the utterance itself. See the joke above: the silence before it is the longer one.
    """
    return tuple(_aside(talk, at, ended) for at in range(len(talk)))


def _aside(talk: Talk, at: int, ended: tuple[float, ...]) -> int:
    gap_s = talk[at].gap_s
    if gap_s < _TO_THE_TEE_S or not begins(talk[at]):
        return at
    for before in range(at - 1, max(0, at - 1 - LONGEST), -1):
        said = talk[before]
        if plays(said) or _scores(said) or _of_the_hole(said):
            return at
        if said.gap_s >= max(gap_s + _LONGER_S, _FOR_ITSELF_S):
            return before if ended[before] > 0 else at
    return at


def _of_the_hole(utterance: Utterance) -> bool:
    """Whether small talk is of the hole to come: "I'm going to be very quiet for this one"."""
    return begins(utterance) or _announces(utterance) or _HERE.search(utterance.text) is not None


def _reach(talk: Talk, at: int) -> int:
    """Where talk ends that tells no stroke and no hole, and, but for words for going on, no score."""
    turned = _turns(talk[at]) or _recaps(talk, at)
    for by in range(at, min(len(talk), at + LONGEST)):
        if plays(talk[by]) or _announces(talk[by]) or (_scores(talk[by]) and not turned):
            return by
    return at


def idle(talk: Talk) -> tuple[int, ...]:
    """Utterances from each one to the first that tells of a hole, which no plan of the round does."""
    row = [0] * (len(talk) + 1)
    for at in range(len(talk) - 1, -1, -1):
        row[at] = 0 if _tells_of_a_hole(talk[at]) else row[at + 1] + 1
    return tuple(row)


def _tells_of_a_hole(said: Utterance) -> bool:
    plain = {m.kind for m in said.mentions if not m.mood}
    if any(of_hole(m) for m in said.mentions):
        return True
    planned = any(m.kind in PLANS for m in said.mentions)
    return bool(plain & (_OF_A_HOLE if planned else _BEFORE_FIRST))


def begun(talk: Talk, at: int, aside: int, ended: tuple[float, ...]) -> bool:
    """Whether a pause, and no stroke or score since, lies before the words before `at`: a hole began there.

    `aside` is the first of small talk before `at` that stands for itself, else `at`; see `asides`.
    A score may be told after words for going on: "Partner's up first because he made a five. A five."
    """
    scored = False
    for before in range(at - 1, max(0, at - 1 - LONGEST), -1):
        if plays(talk[before]):
            return False
        scored = scored or _scores(talk[before])
        if before == aside:
            return False
        if _apart(talk, before, ended) and not (scored and not _turns(talk[before])):
            return True
    return False


def settles(talk: Talk, at: int) -> bool:
    """Whether a score is told from there on and a pause follows: "I can't count. That's level. | Right, 5th".

    "I'm not going to show the third. Made a six there" is all of a hole.
    """
    scored = False
    for by in range(at, min(len(talk), at + LONGEST)):
        if by > at and scored and talk[by].gap_s >= _PAUSE_S:
            return True
        named = any(m.kind in ("hole", "untold") for m in talk[by].mentions)
        if named or plays(talk[by]) or _announces(talk[by]) or _turns(talk[by]):
            return False
        scored = scored or _scores(talk[by])
    return False


def amid(talk: Talk, at: int) -> bool:
    """Whether the first thing done from there on is no hole's first: a ball looked for, a putt holed.

    "Partner's got a thorn. That's time, lads. It's lost"; "Oh, that's rolled well. And in".
    """
    for utterance in talk[at : at + LONGEST]:
        if any(_late(m) for m in utterance.mentions):
            return True
        if plays(utterance) or _announces(utterance) or _scores(utterance) or _turns(utterance):
            return False
    return False


def _late(mention: Mention) -> bool:
    looked_for = mention.kind == "found" or (mention.kind, mention.value) == ("place", "lost")
    return (looked_for or mention.kind in ("holed", "tap", "putter")) and not mention.mood


def _apart(talk: Talk, at: int, ended: tuple[float, ...]) -> bool:
    """A pause as between two holes, and none for a ball in the air."""
    return ended[at] > 0 and _PAUSE_S <= talk[at].gap_s < _WAIT_S


def plays(utterance: Utterance) -> bool:
    """Whether I strike a ball there, or it comes to rest."""
    return any(m.kind in _PLAY and m.mood in _DONE for m in utterance.mentions)


def _scores(utterance: Utterance) -> bool:
    return any(m.kind in _SCORES and not m.mood for m in utterance.mentions)


def _turns(utterance: Utterance) -> bool:
    return bool(turns(utterance))


def _recaps(talk: Talk, at: int) -> bool:
    """Where I stand, with so many holes to go: "Five over, four to come"."""
    near = [m for said in talk[at : at + 2] for m in said.mentions]
    stands = any(plain(m, "running") for m in talk[at].mentions)
    return stands and any(plain(m, "to_play") for m in near)


def _announces(utterance: Utterance) -> bool:
    return any(_of_one(m) for m in utterance.mentions)


def _of_one(mention: Mention) -> bool:
    return (mention.kind in _ANNOUNCES and mention.mood in ("", "paused")) or of_hole(mention)

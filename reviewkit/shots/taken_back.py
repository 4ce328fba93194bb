"""What the talk takes back: places feared, clubs and lengths put right."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import HAPPENED, SHORT, Cue, bare_hit

_PUT_RIGHT = re.compile(r"(?:make|no|sorry|wait|actually|rather|correction|tell)\b")
_NOW = re.compile(
    r"(?:and |so |but )?(?:it's |that's )?(?:now|therefore|which makes|making)\b|(?:so )?(?:i|we) make it\b"
)
"""What a length has become since it was told: "I had 141, they moved the flag, so now 149"."""
_GIVEN_UP_WITHIN = 5
_DECIDED_WITHIN = 2
"""Utterances from a stroke meant to the one played."""
_PUTT_IT = re.compile(r"\bputt(?:ing|ed)? (?:it|this|that|from|off)\b")
_MY_PUTT = re.compile(
    r"\b(?:i'm|i am|i'll|i|going to|gonna|to) (?:just )?putt(?:ing|ed)? (?:it|this|that|from|off)\b"
)
_MENDS = (
    "no",
    "hang on",
    "hold on",
    "wait",
    "sorry",
    "i tell a lie",
    "tell a lie",
    "scratch that",
    "naw",
    "nah",
    "nope",
    "telling lies",
    "telling you lies",
    "i'm telling lies",
    "i'm telling you lies",
    "i'm lying",
    "that's a lie",
)
_PUT_RIGHT_WITHIN, _THOUGHT_OVER_WITHIN = 12, 30
"""Words from a club to the one that puts it right; to one taken as soon as a mind was changed."""
_AT_ONCE = 5
"""Words of a change of mind, and up to the club then taken."""


def without_places_taken_back(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "It's in the trees, hang on, it's kicked out! It's in the rough": it lies where it was said last."""
    gone: set[int] = set()
    for number, utterance in enumerate(talk):
        for mend in utterance.mentions:
            if mend.kind != "mend?" or mend.text not in _MENDS:
                continue
            feared = _last_place(found, mend, number)
            rest = [at for at, cue in enumerate(found) if cue.mention.first > mend.last]
            seen = next((at for at in rest if not _in_passing(found[at])), None)
            if (
                feared is None
                or seen is None
                or found[seen].kind != "place"
                or found[seen].utterance > number + 2
            ):
                continue
            if found[seen].value not in ("close", "lost", found[feared].value):
                gone |= {
                    *_told_twice(found, feared),
                    *(at for at in rest if at < seen and found[at].kind == "strike"),
                }
    return [cue for at, cue in enumerate(found) if at not in gone]


def _last_place(found: Sequence[Cue], mend: Mention, number: int) -> int | None:
    """Index of the place told last before words that take something back, where nothing was played since."""
    for at in range(len(found) - 1, -1, -1):
        cue = found[at]
        if cue.mention.last >= mend.first or _in_passing(cue):
            continue
        return at if cue.kind == "place" and cue.utterance >= number - 1 and cue.value != "close" else None
    return None


def _told_twice(found: Sequence[Cue], last: int) -> set[int]:
    """ "Over the wall, out of bounds": one place feared, told in two ways."""
    same = {last}
    for at in range(last - 1, -1, -1):
        if found[at].kind == "place" and found[at].value == found[last].value:
            same.add(at)
        elif not _in_passing(found[at]):
            break
    return same


def _in_passing(cue: Cue) -> bool:
    return cue.kind in ("miss", "contact", "distance", "lie") or bare_hit(cue)


def without_strokes_taken_back(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "Chip again, no. Putter.": a stroke thought of and given up for another."""
    mends = [mend.first for mend in _mends(talk) if mend.text in _MENDS]
    gone = set()
    for at, (cue, after) in enumerate(pairwise(found)):
        between = range(cue.mention.last + 1, after.mention.first)
        other = after.kind in ("putter", "club", "putt") or _short(after)
        if _short(cue) and other and len(between) <= _GIVEN_UP_WITHIN:
            gone |= {at for mend in mends if mend in between}
    for at in (at for at, cue in enumerate(found) if _short(cue)):
        gone |= _putted_instead(found, at, talk)
        if _putted_all_along(found, at, talk, mends):
            gone.add(at)
    return [cue for at, cue in enumerate(found) if at not in gone]


def _putted_instead(found: Sequence[Cue], at: int, talk: Sequence[Utterance]) -> set[int]:
    """ "I was going to chip this with the 56. She says putt it, so I'm putting it": a chip only meant;
    "I could chip here, but I'm going to putt it" is another."""
    meant = found[at].meant
    rest = [n for n in range(at + 1, len(found)) if not (_only_named(found[n], meant))]
    if not rest or found[rest[0]].utterance > found[at].utterance + _DECIDED_WITHIN:
        return set()
    after = found[rest[0]]
    if not _putts(after, _PUTT_IT if meant else _MY_PUTT, talk):
        return set()
    return {at, *(n for n in range(at, rest[0]) if found[n].kind in ("club", "strike"))}


def _putts(cue: Cue, told: re.Pattern[str], talk: Sequence[Utterance]) -> bool:
    """Whether it is the putter, or a putt in such words."""
    return cue.kind == "putter" or (cue.kind == "putt" and bool(told.search(talk[cue.utterance].text)))


def _only_named(cue: Cue, meant: bool) -> bool:
    """What may stand between a chip thought of and the putt: other words for it, and how far it is."""
    return (cue.meant and cue.kind in ("club", "strike")) or (meant and cue.kind == "distance")


def _putted_all_along(found: Sequence[Cue], at: int, talk: Sequence[Utterance], mends: Sequence[int]) -> bool:
    """ "Putter off the fringe, a bit of a nudge", "I'm putting this. She says chip it": no chip."""
    before = next((cue for cue in reversed(found[:at]) if not _short(cue)), None)
    if before is None or found[at].utterance > before.utterance + _DECIDED_WITHIN:
        return False
    if not _putts(before, _MY_PUTT, talk):
        return False
    named = at + 1 < len(found) and found[at + 1].kind == "club"
    return not named and not any(before.mention.last < mend < found[at].mention.first for mend in mends)


def _short(cue: Cue) -> bool:
    return cue.kind == "strike" and cue.value in SHORT


def without_clubs_taken_back(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "With the sand wedge, no, sorry, it was the pitching wedge": of clubs put right the last is used."""
    mends = [mend.first for mend in _mends(talk)]
    clubs = [at for at, cue in enumerate(found) if cue.kind == "club"]
    gone: set[int] = set()
    for before, at in pairwise([-1, *clubs]):
        first, last = found[at].mention.first, found[before].mention.last if before >= 0 else -1
        since = max(last + 1, first - _PUT_RIGHT_WITHIN)
        if not any(since <= mend < first for mend in mends):
            continue
        if found[at].after:
            # "It was the 5, no, I tell a lie, it was the 4" is of this stroke.
            found[at] = replace(found[at], mention=replace(found[at].mention, mood=""))
        told = any(cue.kind in HAPPENED for cue in found[max(before, 0) : at])
        at_once = any(first - _AT_ONCE <= mend < first for mend in mends)
        within = _THOUGHT_OVER_WITHIN if at_once else _PUT_RIGHT_WITHIN
        if before >= 0 and first - last <= within and not told:
            gone |= _named_so(found, before)
    return [cue for at, cue in enumerate(found) if at not in gone]


def _named_so(found: Sequence[Cue], last: int) -> set[int]:
    """ "The 9 iron, the sensible club, and I had hold of the 9 iron": a club however often it was named.

    "The 4 hybrid, no, the 3 wood": neither is the hybrid swung that the words name besides.
    """
    named = [found[last].mention]
    for cue in reversed(found[:last]):
        if cue.kind in HAPPENED or (cue.kind == "club" and cue.value != found[last].value):
            break
        named += [cue.mention] * (cue.kind == "club")
    swung = (at for at, cue in enumerate(found) if cue.kind in ("club", "strike"))
    return {at for at in swung if any(found[at].mention.overlaps(club) for club in named)}


def without_drops_taken_back(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "It dropped! No, it didn't, it horseshoed out": no putt was holed."""
    mends = [mend.first for mend in _mends(talk) if mend.text == "no"]
    gone = {at for at, (cue, after) in enumerate(pairwise(found)) if _never_dropped(cue, after, mends)}
    short = {at for at, (cue, after) in enumerate(pairwise(found)) if _straight_but_short(cue, after)}
    return [_missed(cue) if at in short else cue for at, cue in enumerate(found) if at not in gone]


def _straight_but_short(cue: Cue, after: Cue) -> bool:
    """ "Dead centre, one roll short.": the line was good, and that was all."""
    told = (cue.kind, after.kind, after.value, after.utterance) == ("holed", "miss", "short", cue.utterance)
    return told and after.mention.first - cue.mention.last <= _GIVEN_UP_WITHIN


def _missed(cue: Cue) -> Cue:
    return replace(cue, mention=replace(cue.mention, kind="stayed_out", value=None))


def _never_dropped(cue: Cue, after: Cue, mends: Sequence[int]) -> bool:
    if (cue.kind, after.kind) != ("holed", "stayed_out") or after.utterance > cue.utterance + 1:
        return False
    return any(cue.mention.last < mend <= after.mention.first for mend in mends)


def without_lengths_taken_back(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "140, no, 145", "21 feet past? No, 17", "390, no wait, it's 374", "330? 332": the first gives way."""
    mends = [mend.first for mend in _mends(talk)]
    kept: list[Cue] = []
    for cue in found:
        at = max((n for n, old in enumerate(kept) if old.kind != "miss"), default=-1)
        if at >= 0 and (_puts_right(cue, kept[at], mends) or _answers(cue, kept[at], talk)):
            before = kept.pop(at).mention
            if before.mood == "length" and not cue.mention.mood.startswith("to"):
                cue = replace(cue, mention=replace(cue.mention, mood="length"))
        kept.append(cue)
    return kept


def _mends(talk: Sequence[Utterance]) -> list[Mention]:
    return [mention for said in talk for mention in said.mentions if mention.kind == "mend?"]


def _answers(cue: Cue, before: Cue, talk: Sequence[Utterance]) -> bool:
    """ "It's what, 330? The sign says 332": a number asked for, and the answer."""
    asked = talk[before.utterance].text.endswith("?") and cue.utterance == before.utterance + 1
    return asked and cue.kind == before.kind == "distance" and _alike(cue, before)


def _alike(cue: Cue, before: Cue) -> bool:
    return cue.mention.unit == before.mention.unit and 0.7 < float(cue.value) / float(before.value) < 1.4


def _puts_right(cue: Cue, before: Cue, mends: Sequence[int]) -> bool:
    if not (cue.kind == before.kind == "distance" and cue.utterance <= before.utterance + 2):
        return False
    if _PUT_RIGHT.match(cue.mention.text) and cue.utterance <= before.utterance + 1:
        return True
    first, last = cue.mention.first, before.mention.last
    become = _NOW.match(cue.mention.text) is not None
    mended = first - last <= _PUT_RIGHT_WITHIN and any(last < mend < first for mend in mends)
    return (mended or become) and _alike(cue, before)

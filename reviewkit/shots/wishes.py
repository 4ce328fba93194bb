"""Balls told to go in that did not, and putts counted before the stroke that they were to follow."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from reviewkit.model import Utterance
from reviewkit.shots.cue import Cue

_WISHES = ("get in", "go in", "be in", "in the hole", "get in the hole")
_SOON = 3
"""Utterances from a wish to what came of it."""
_PUTTED = ("putts", "tap", "holed", "putt", "stayed_out")
_NO = ("no", "nope", "nah", "naw")


def without_wishes(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "Get in. Nearly", "get in, get in, no!" and "that's in. It's not in": no ball dropped."""
    refused = [
        mention.first
        for said in talk
        for mention in said.mentions
        if mention.kind == "mend?" and mention.text in _NO
    ]
    found = _without_putts_hoped(found)
    wishes = {
        at
        for at, (cue, after) in enumerate(pairwise(found))
        if cue.kind == "holed" and any(_wished(cue, told) for told in (after, *_lies(found, at)))
    }
    for at in range(len(found) - 1, -1, -1):
        after = found[at + 1] if at + 1 < len(found) else None
        if _refused(found[at], after, at + 1 in wishes, refused):
            wishes.add(at)
    out = {at + 1 for at in wishes if at + 1 < len(found) and _out_again(found[at], found[at + 1])}
    return [_stayed_out(cue) if at in out else cue for at, cue in enumerate(found) if at not in wishes]


def _without_putts_hoped(found: list[Cue]) -> list[Cue]:
    """ "Out, two putts, done. Sand wedge.": putts counted right before a club, with others told behind it."""
    hoped = [
        cue.mention
        for at, cue in enumerate(found)
        if cue.kind == "putts" and _club_next(cue, found[at + 1 :]) and any(map(_putt, found[at + 3 :]))
    ]
    return [cue for cue in found if not any(cue.mention.overlaps(putts) for putts in hoped)]


def _club_next(putts: Cue, rest: Sequence[Cue]) -> bool:
    told = [cue for cue in rest if not cue.mention.overlaps(putts.mention)]
    # "Two putts. 72. Cup of tea. Sand wedge": a sum may stand between.
    after = next((cue for cue in told if cue.kind != "distance" or cue.mention.unit), None)
    if after is None or after.kind != "club" or after.utterance > putts.utterance + _SOON:
        return False
    return not after.after and after.mention.mood == ""


def _putt(cue: Cue) -> bool:
    return cue.kind in _PUTTED


def _stayed_out(cue: Cue) -> Cue:
    return replace(cue, mention=replace(cue.mention, kind="stayed_out", value=None))


def _wished(cue: Cue, after: Cue) -> bool:
    """ "Get in. Nearly. It's a foot away", "get in! On the green": a ball told to drop that did not."""
    taken_back = after.kind == "stayed_out" and after.mention.rule == "it is not in after all"
    left = after.kind in ("tap", "stayed_out", "place") or _left(after)
    soon = after.utterance <= cue.utterance + _SOON
    taken_back = taken_back or _out_again(cue, after)
    return ((_is_wish(cue) and left) or taken_back) and soon


def _lies(found: Sequence[Cue], at: int) -> list[Cue]:
    """ "Get in! It's behind the flag. It's on the green": the place told behind a side, if any."""
    after = next((cue for cue in found[at + 1 :] if cue.kind != "miss"), None)
    return [after] if after is not None and after.kind == "place" else []


def _left(length: Cue) -> bool:
    return length.kind == "distance" and length.mention.mood == "left"


def _out_again(cue: Cue, after: Cue) -> bool:
    """ "It's in! It's out. How's that out?": no ball comes out of the sand once it is holed."""
    told = after.kind == "strike" and after.mention.text.endswith("it's out")
    return told and after.utterance == cue.utterance + 1


def _is_wish(cue: Cue) -> bool:
    return cue.kind == "holed" and cue.mention.text in _WISHES


def _refused(cue: Cue, after: Cue | None, followed: bool, refused: Sequence[int]) -> bool:
    """ "Get in, get in, no!": a wish right before a "no", or before such a wish."""
    if not _is_wish(cue):
        return False
    if followed and after is not None and _is_wish(after):
        return True
    last = cue.mention.last
    return any(last < no <= last + _SOON and (after is None or no < after.mention.first) for no in refused)

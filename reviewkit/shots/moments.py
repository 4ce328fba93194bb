"""When each stroke of a reading happened among its words, and where something told stands, seen from it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.steps import Step

_DROPS = ("holed", "tap", "stayed_out", "putts")
_ENDINGS = ("place", *_DROPS)


@dataclass(frozen=True, slots=True)
class Moment:
    """A step's cues: `first`..`last`-1 are its words, `swung` names its club, `ending` says where it ended.

    From `trail` on they are lengths only. A step that is not `told` has no words of its own; its `ending` is
    where those begin that cannot speak of it.
    """

    first: int
    swung: int
    ending: int
    last: int
    trail: int
    told: bool = True
    putted: bool = False


def moments(cues: Sequence[Cue], steps: Sequence[Step]) -> list[Moment]:
    """One a step, in order. Putts of one tally share theirs."""
    found: list[Moment] = []
    for at, step in enumerate(steps):
        first, last = step.draft.first, step.draft.last
        if step.draft.putts and first < last:
            # The putts of a tally may be told one by one behind it.
            last = max(last, _until(cues, [s for s in steps[at + 1 :] if not s.draft.putts]))
            found.append(Moment(first, first, last, last, last))
        elif first == last or not step.told:
            until = max(first, _until(cues, steps[at + 1 :]))
            found.append(Moment(first, first, until, last, last, told=False))
        else:
            putted = step.draft.shape == "putt"
            ending = _ending(cues, first, last, putted) or last
            swung = next((at for at in range(first, last) if cues[at].kind == "club"), first)
            if swung > first and all(cue.mention.overlaps(cues[swung].mention) for cue in cues[swung:last]):
                # Told last, it says nothing of what was told when.
                swung = first
            # "Pitching with the 54. Like 35 yards": so may that of a short stroke.
            behind = putted or (step.draft.shape in SHORT and ending == last)
            found.append(Moment(first, swung, ending, last, _trail(cues, first, last), putted=behind))
    return found


def counted(steps: Sequence[Step], at: int) -> bool:
    """A putt after the first of a tally, which has the tally's words for all of its own."""
    here, before = steps[at].draft, steps[at - 1].draft
    return bool(at and here.putts and before.putts and here.first == before.first)


def zone(found: Sequence[Moment], number: int, at: int, opening: int = 0, left: bool = False) -> str:
    """Where cue `at` stands, seen from a step; nothing where it cannot be the step's.

    own: among the stroke's words before it landed; after: behind that; between: since the words of the stroke
    before; landed: in those, after it landed; struck: in those, before it landed; trail: there, as the last.
    `opening` counts the step's first words that still speak of the stroke before. What was `left` may be told
    before the club of the stroke that left it ("to 10 feet with the 56"), no other length.
    """
    own = found[number]
    if own.told and at >= own.first + opening:
        # A putt's length may be told right behind it.
        behind = own.last + own.putted
        return "own" if at < own.ending else "after" if at < behind else ""
    before = next((moment for moment in reversed(found[:number]) if moment.told and moment != own), None)
    if not own.told and at >= own.ending and not (before and at < before.last):
        return ""
    if before is None or at >= before.last:
        return "between"
    if at >= before.ending:
        return "landed"
    if at >= before.trail:
        return "trail"
    return "struck" if at >= (before.first if left else max(before.first, before.swung)) else ""


def _ending(cues: Sequence[Cue], first: int, last: int, putt: bool) -> int:
    """Index of the first cue that says where the stroke ended; 0 when none does."""
    ends = _DROPS if putt else _ENDINGS
    return next((at for at in range(first, last) if cues[at].kind in ends), 0)


def _trail(cues: Sequence[Cue], first: int, last: int) -> int:
    """Where the length begins with which a stroke's words end: it is of what the stroke left."""
    ends = last - 1 > first and cues[last - 1].kind == "distance" and cues[last - 2].kind != "distance"
    return last - 1 if ends else last


def _until(cues: Sequence[Cue], later: Sequence[Step]) -> int:
    """Index of the cue before which a step without words was played: the next step's first, a tap's own."""
    following = next((step.draft for step in later if step.draft.first < step.draft.last), None)
    if following is None:
        return len(cues)
    if following.family == "tap":
        return _ending(cues, following.first, following.last, True) or following.first
    return following.first

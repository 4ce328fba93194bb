"""What is told of the putts between the ball's coming to the green and its falling: one event a putt.

A tally ("three putts") says how many; the words before it say how each went. The walk trusts itself only
where it finds as many events as there were putts, the last of which may go without saying.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.shots.chart import Step
from reviewkit.shots.cues import Cue
from reviewkit.shots.drafts import side_of
from reviewkit.shots.measures import short_length

_MISSES = ("miss", "stayed_out")
_DROPS = ("holed", "tap")
_ON = ("green", "fringe", "close")


@dataclass(slots=True)
class Putt:
    """A putt as told: its miss, and the index of the cue that tells its length."""

    miss: str = ""
    length: int | None = None


def putts_told(cues: Sequence[Cue], steps: Sequence[Step], units: str) -> dict[int, Putt]:
    """Putts by the index of their step; empty where the words do not go with their number."""
    rows = [at for at, step in enumerate(steps) if step.draft.shape == "putt"]
    if not rows or rows != list(range(rows[0], len(steps))) or rows[0] == 0:
        return {}
    landing = _landing(cues, steps[rows[0] - 1])
    if landing is None:
        return {}
    walked = _walk(cues[landing + 1 :], cues[landing].utterance, units)
    if len(walked) not in (len(rows), len(rows) - 1):
        return {}
    for putt in walked:
        putt.length = None if putt.length is None else putt.length + landing + 1
    return dict(zip(rows, walked, strict=False))


def miss_before_landing(cues: Sequence[Cue], onto: Step) -> str:
    """The miss of the stroke onto the green, without what is told of the putts that its words run into."""
    landing = _landing(cues, onto)
    if landing is None:
        return onto.draft.miss
    own = [
        cue for cue in cues[onto.draft.first : onto.draft.last] if cue.utterance <= cues[landing].utterance
    ]
    return side_of(own)


def _landing(cues: Sequence[Cue], onto: Step) -> int | None:
    """Index of the cue that says the ball came to the green or beside it; None where none does."""
    places = range(onto.draft.first, onto.draft.last)
    return next((at for at in places if cues[at].kind == "place" and cues[at].value in _ON), None)


def _walk(told: Sequence[Cue], landed: int, units: str) -> list[Putt]:
    """The putts in order. Words of the utterance in which the ball landed tell where it lay, not a putt."""
    putts, left = [Putt()], None
    missed_in = -1
    for at, cue in enumerate(told):
        if cue.kind == "distance" and short_length(cue, units):
            if missed_in == cue.utterance or (cue.utterance > landed and _left_over(told, at)):
                left = at
            elif missed_in >= 0:
                putts.append(Putt(length=at))
                left, missed_in = None, -1
            elif putts[-1].length is None:
                putts[-1].length = at
        if cue.utterance == landed or cue.kind not in (*_MISSES, *_DROPS):
            continue
        if missed_in >= 0 and (cue.kind in _DROPS or cue.utterance != missed_in):
            putts.append(Putt(length=left))
            left, missed_in = None, -1
        if cue.kind in _DROPS:
            return putts
        missed_in = cue.utterance
        if cue.kind == "miss" and not putts[-1].miss:
            putts[-1].miss = cue.value
    return putts if left is None else [*putts, Putt(length=left)]


def _left_over(told: Sequence[Cue], at: int) -> bool:
    """Whether a length is how far the ball stopped from the hole: "six feet short"."""
    after = told[at + 1] if at + 1 < len(told) else None
    before = told[at - 1] if at else None
    return any(
        near is not None
        and near.kind == "miss"
        and near.mention.first <= told[at].mention.last + 1
        and near.mention.last >= told[at].mention.first
        for near in (after, before)
    )

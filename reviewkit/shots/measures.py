"""Which told length belongs to which stroke: a length is to the hole, before the stroke it is given to."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model.values import FEET_PER_YARD, YARDS_PER_METRE
from reviewkit.shots.chart import Step
from reviewkit.shots.cues import Cue

_LONGEST_PUTT_YD = 45.0
_SHORTEST_TOLD_YD = 0.6
"""Speakers say "a foot" for a tap-in; as a measurement it is worth nothing."""
_ENDINGS = ("place", "holed", "tap", "stayed_out", "putts")


def yards(cue: Cue, units: str) -> float:
    """A told length in yards. `units` is what a bare number of the fairway means, "yd" or "m"."""
    value = float(cue.value)
    unit = cue.mention.unit or units
    if unit == "m":
        return round(value * YARDS_PER_METRE, 3)
    if unit == "ft":
        return round(value / FEET_PER_YARD, 3)
    return round(value / 36.0, 3) if unit == "in" else value


def distances(cues: Sequence[Cue], steps: Sequence[Step], units: str) -> list[float | None]:
    """For each step the told yards to the hole before it, None when not told."""
    result: list[float | None] = [None] * len(steps)
    for at, step in enumerate(steps):
        if at == 0:
            result[0] = _to_tee(cues, step, units)
            continue
        before = steps[at - 1].draft
        if step.draft.shape == "putt" and step.lie in ("green", "fringe"):
            result[at] = _to_putt(cues, before.first, step, units, steps[at - 1].told)
        else:
            result[at] = _to_swing(cues, before.last, before.first, step, units)
    return _once(cues, steps, result)


def _once(cues: Sequence[Cue], steps: Sequence[Step], found: list[float | None]) -> list[float | None]:
    """A tally's putts share its words: only the first of them has the length told there."""
    seen: set[int] = set()
    for at, step in enumerate(steps):
        if step.draft.putts and step.draft.first in seen:
            found[at] = None
        if step.draft.putts:
            seen.add(step.draft.first)
    return found


def _ending(cues: Sequence[Cue], first: int, last: int) -> int:
    """Index after the first cue that says where the stroke ended; `first` when none does."""
    return next((at + 1 for at in range(first, last) if cues[at].kind in _ENDINGS), first)


def _lengths(cues: Sequence[Cue], first: int, last: int, moods: tuple[str, ...]) -> list[Cue]:
    return [cue for cue in cues[first:last] if cue.kind == "distance" and cue.mention.mood in moods]


def _to_tee(cues: Sequence[Cue], step: Step, units: str) -> float | None:
    """The hole's length, wherever it is told before the tee shot lands."""
    end = _ending(cues, step.draft.first, step.draft.last)
    end = end if end > step.draft.first else step.draft.last
    lengths = [cue for cue in _lengths(cues, 0, len(cues), ("length",)) if yards(cue, units) >= 60]
    if lengths:
        return yards(lengths[0], units)
    told = [cue for cue in _lengths(cues, 0, end, ("togo", "")) if yards(cue, units) >= 60 and cue.mention.unit != "ft"]
    return yards(told[0], units) if told else None


def _to_swing(cues: Sequence[Cue], before: int, told_from: int, step: Step, units: str) -> float | None:
    """Lengths to go told after the stroke before landed, up to where this one lands; the last one counts."""
    start = max(told_from, min(before, _ending(cues, told_from, before)))
    end = _ending(cues, step.draft.first, step.draft.last)
    end = end if end > step.draft.first else step.draft.last
    told = _lengths(cues, start, end, ("togo",))
    own = _lengths(cues, before, end, ("",))
    bare = [cue for cue in own if cue.mention.unit in ("yd", "m")]
    chosen = told or bare
    fits = [yards(cue, units) for cue in chosen if cue.mention.unit != "ft"]
    return fits[0] if fits else None


def _to_putt(cues: Sequence[Cue], told_from: int, step: Step, units: str, after_told: bool) -> float | None:
    """Lengths told after the stroke before ended, up to where this putt ends; the first one counts."""
    start = _ending(cues, told_from, step.draft.first) if after_told else step.draft.first
    stop = step.draft.last
    if not step.draft.putts:
        ends = [at for at in range(step.draft.first, step.draft.last) if cues[at].kind in ("stayed_out", "holed", "tap")]
        stop = ends[0] if ends else stop
    told = _lengths(cues, start, stop, ("", "togo"))
    fits = [yards(cue, "ft" if not cue.mention.unit and units == "yd" else units) for cue in told]
    fits = [length for length in fits if _SHORTEST_TOLD_YD <= length <= _LONGEST_PUTT_YD]
    return fits[0] if fits else None

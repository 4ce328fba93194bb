"""Which told length belongs to which stroke: a length is to the hole, before the stroke it is given to.

A length is given once. A swing takes the last one told before it lands, a putt the first short one; what is
told after a stroke has landed, or as what it leaves, goes to the next.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model.values import FEET_PER_YARD, YARDS_PER_METRE
from reviewkit.shots.chart import Step
from reviewkit.shots.cues import Cue

_LONGEST_PUTT_YD = 45.0
_HOLES = {3: (70.0, 275.0), 4: (225.0, 530.0), 5: (420.0, 680.0), None: (100.0, 680.0)}
"""Lengths that a hole of such a par may have, in yards; common practice of the trade, no source."""
_SHORT_MOODS = ("", "togo", "plan")
_ENDINGS = ("place", "holed", "tap", "stayed_out", "putts")
_LEFT_OVER = re.compile(r"^(?:leav|left|down to|to )|\bmyself\b")


def yards(cue: Cue, units: str) -> float:
    """A told length in yards. `units` is what a bare number of the fairway means, "yd" or "m"."""
    value = float(cue.value)
    unit = cue.mention.unit or units
    if unit == "m":
        return round(value * YARDS_PER_METRE, 3)
    if unit == "ft":
        return round(value / FEET_PER_YARD, 3)
    return round(value / 36.0, 3) if unit == "in" else value


def distances(cues: Sequence[Cue], steps: Sequence[Step], units: str, par: int | None) -> list[float | None]:
    """For each step the told yards to the hole before it, None when not told."""
    used = 0
    result: list[float | None] = []
    for at, step in enumerate(steps):
        start = max(used, _told_since(cues, steps, at))
        stop = _stop(cues, steps, at)
        if at == 0:
            found = _to_tee(cues, stop, units, par)
        elif _counted(steps, at):
            found = None
        elif step.draft.shape == "putt" and step.lie in ("green", "fringe", "unknown"):
            found = _to_putt(cues, start, stop, units, result[-1])
        else:
            found = _to_swing(cues, start, step, stop, units)
        if found is not None and at:
            used = found + 1
        result.append(None if found is None else yards(cues[found], units))
    return result


def _counted(steps: Sequence[Step], at: int) -> bool:
    """A putt after the first of a tally, which has the tally's words for all of its own."""
    here, before = steps[at].draft, steps[at - 1].draft
    return bool(here.putts and before.putts and here.first == before.first)


def _stop(cues: Sequence[Cue], steps: Sequence[Step], at: int) -> int:
    """Index of the cue that decides the stroke; for a stroke without words, of the next stroke's first."""
    first, last = steps[at].draft.first, steps[at].draft.last
    if first == last:
        return steps[at + 1].draft.first if at + 1 < len(steps) and steps[at + 1].told else len(cues)
    if steps[at].draft.putts:
        return last
    return _ending(cues, first, last) or last


def _told_since(cues: Sequence[Cue], steps: Sequence[Step], at: int) -> int:
    """Index of the first cue that may speak of what was left for step `at`."""
    for before in reversed(steps[:at]):
        first, last = before.draft.first, before.draft.last
        if not before.told or first == last:
            continue
        ending = _ending(cues, first, last)
        if before.draft.shape == "putt" and ending:
            return ending
        return max(first, _club_at(cues, first, last))
    return 0


def _ending(cues: Sequence[Cue], first: int, last: int) -> int:
    """Index of the first cue that says where the stroke ended; 0 when none does."""
    return next((at for at in range(first, last) if cues[at].kind in _ENDINGS), 0)


def _club_at(cues: Sequence[Cue], first: int, last: int) -> int:
    return next((at for at in range(first, last) if cues[at].kind == "club"), first)


def _to_tee(cues: Sequence[Cue], stop: int, units: str, par: int | None) -> int | None:
    """The hole's length, wherever it is told; else a likely number told before the tee shot lands."""
    low, high = _HOLES.get(par, _HOLES[None])
    moods = [("length",), ("togo", "bare", "", "plan")]
    for end, wanted in ((len(cues), moods[0]), (stop, moods[1])):
        for at in range(end):
            cue = cues[at]
            if cue.kind != "distance" or cue.mention.mood not in wanted or cue.mention.unit in ("ft", "in"):
                continue
            if low <= yards(cue, units) <= high:
                return at
    return None


def _to_swing(cues: Sequence[Cue], start: int, step: Step, stop: int, units: str) -> int | None:
    """A length to go; a bare number or a plain length only among the stroke's own words."""
    club = _club_at(cues, step.draft.first, step.draft.last)
    chosen: int | None = None
    for at in range(start, stop):
        cue = cues[at]
        if cue.kind != "distance" or cue.mention.unit in ("ft", "in"):
            continue
        own = at >= step.draft.first or (
            cue.mention.unit in ("yd", "m") and yards(cue, units) >= 30 and at > start
        )
        after_club = own and at > club and cues[club].kind == "club"
        if cue.mention.mood == "togo" and not (after_club and _LEFT_OVER.search(cue.mention.text)):
            chosen = at
        elif own and chosen is None and cue.mention.mood in ("bare", "", "plan") and yards(cue, units) >= 12:
            short = cue.mention.mood == "" and "short" in _next_words(cues, at)
            chosen = None if short else at
    return chosen


def _next_words(cues: Sequence[Cue], at: int) -> str:
    after = cues[at + 1] if at + 1 < len(cues) else None
    return after.value if after is not None and after.utterance == cues[at].utterance else ""


def _to_putt(cues: Sequence[Cue], start: int, stop: int, units: str, before: float | None) -> int | None:
    """The first short length told after the stroke before and before this putt is decided."""
    for at in range(start, stop):
        cue = cues[at]
        if cue.kind != "distance" or cue.mention.mood not in _SHORT_MOODS:
            continue
        again = before is not None and abs(yards(cue, units) - before) < 0.1 * before
        if short_length(cue, units) and not again:
            return at
    return None


def short_length(cue: Cue, units: str) -> bool:
    """Whether a told length is one that a putt may have."""
    small = cue.mention.unit in ("ft", "in", "m", "yd") or (units == "m" and not cue.mention.unit)
    return small and cue.mention.mood in _SHORT_MOODS and yards(cue, units) <= _LONGEST_PUTT_YD

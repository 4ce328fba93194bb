"""Whether a stroke was meant for the green, so that it can have missed short or long."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import SHORT
from reviewkit.shots.drafts import PENALTIES
from reviewkit.shots.steps import Step

_ONE_SHOT, _DRIVABLE = 245, 330
"""Yards of a par 3, and of a par 4 that is driven at, at most."""
_BESIDE = 40
"""Yards left of a drive that was meant for the green, at most."""


def for_the_green(
    sort: str, steps: Sequence[Step], at: int, par: int | None, lengths: Sequence[float | None]
) -> bool:
    """Whether the stroke, of this kind, could miss short or long.

    "Laid up short of the ditch" is where it was meant to stop, and a topped drive fell short of no target.
    """
    draft, after = steps[at].draft, steps[at + 1].draft if at + 1 < len(steps) else None
    if sort == "tee":
        there = draft.result in ("green", "fringe") or one_shotter(lengths[at])
        return par not in (4, 5) or there or _driven(steps, at, lengths)
    if sort == "layup":
        near = after is not None and after.shape in SHORT
        return draft.result in PENALTIES or (near and draft.result != "fairway" and draft.shape != "layup")
    # One that never left the sand, or the trees, missed nothing.
    return sort != "recovery" and not (sort == "bunker" and draft.result == "sand")


def one_shotter(yards: float | None) -> bool:
    """Whether a hole may be a par 3 by its length."""
    return yards is not None and yards < _ONE_SHOT


def _driven(steps: Sequence[Step], at: int, lengths: Sequence[float | None]) -> bool:
    """ "It's only 290. Driver. Just short of the green. Chipped it": so little is left of it, or a short
    stroke is next; of a hole of unknown length, so little is left."""
    far, after = lengths[at], at + 1
    if (far is not None and far > _DRIVABLE) or after >= len(steps):
        return False
    left = lengths[after]
    if left is None:
        return far is not None and steps[after].draft.shape in SHORT
    return left <= _BESIDE

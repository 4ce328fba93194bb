"""How the Rules of Golf count: strokes and penalties of a hole, the number of the next stroke, points."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model import Shot


def taken(shots: Sequence[Shot]) -> int:
    """Strokes so far, each with the penalty that it incurred (Rules 17.1, 18.2, 19.2)."""
    return len(shots) + sum(shot.penalty_strokes for shot in shots)


def next_stroke(shots: Sequence[Shot]) -> int:
    """The number of the stroke to come: out of bounds from the tee, the next is the third (Rule 18.2)."""
    return taken(shots) + 1


def stableford(to_par: int, given: int = 0) -> int:
    """Points of a hole with `given` handicap strokes on it, the fixed target being par (Rule 21.1)."""
    return max(0, 2 - to_par + given)

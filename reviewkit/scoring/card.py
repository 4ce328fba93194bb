"""What a hole's strokes say for the card: putts, penalties, fairway, green in regulation.

The trade's definitions, with their edges:
fairway hit: tee shot at rest in the fairway, any club, par 4 and 5 only; the first cut is a miss, as is out
of bounds (quoting the PGA TOUR).
green in regulation: part of the ball on the putting surface after par less two strokes or fewer; the fringe
is not the green; penalty strokes count; a driven par 4 counts.
putt: a stroke made from the putting green, any club; one from the fringe with a putter is none.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import HoleScore, Shot
from reviewkit.scoring.counting import taken


def putts(shots: Sequence[Shot]) -> int:
    """Strokes made from the putting green. A putt whose lie is not known counts as one from the green."""
    return sum(shot.kind == "putt" and shot.lie in ("", "green") for shot in shots)


def penalties(shots: Sequence[Shot]) -> int:
    return sum(shot.penalty_strokes for shot in shots)


def fairway_hit(shots: Sequence[Shot], par: int | None) -> bool | None:
    """Whether the first tee shot found the fairway; None on a par 3 and where it is not known."""
    if par is None or par < 4 or not shots or shots[0].result == "unknown":
        return None
    return shots[0].result == "fairway"


def green_in_regulation(shots: Sequence[Shot], par: int | None) -> bool | None:
    """Whether the ball lay on the green after par less two strokes; None where it cannot be known."""
    if par is None or not shots:
        return None
    for number, shot in enumerate(shots, 1):
        if shot.kind == "putt" and shot.lie == "green":
            return taken(shots[: number - 1]) <= par - 2
        if shot.result in ("green", "holed"):
            return taken(shots[:number]) <= par - 2
        if taken(shots[:number]) >= par - 2 and shot.result != "unknown":
            return False
    return None


def keep_card(score: HoleScore, shots: Sequence[Shot]) -> HoleScore:
    """`score` with the figures that follow from the hole's strokes; none where no stroke is known."""
    if not shots:
        return score
    return replace(
        score,
        putts=putts(shots),
        penalty_strokes=penalties(shots),
        fairway_hit=fairway_hit(shots, score.par),
        green_in_regulation=green_in_regulation(shots, score.par),
    )

"""Scores: the total, by par, and what followed what."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence

from reviewkit.stats.play import Hole, Play
from reviewkit.stats.registry import Reading, mean, share, statistic, total

COUNTED = "counted from holes.csv"
GROUP = "Score"


@statistic(
    "score",
    "Score",
    group=GROUP,
    unit="strokes",
    counts="holes",
    definition="Strokes on the holes whose score is known, penalty strokes included.",
    source=COUNTED,
)
def score(play: Play) -> Reading:
    return total(hole.score.strokes for hole in play.holes)


@statistic(
    "to_par",
    "Score to par",
    group=GROUP,
    unit="strokes",
    counts="holes",
    definition="Strokes minus par over the holes where both are known.",
    source=COUNTED,
)
def to_par(play: Play) -> Reading:
    return total(hole.to_par for hole in play.holes)


@statistic(
    "score_by_par",
    "Average score",
    group=GROUP,
    unit="strokes a hole",
    counts="holes",
    definition="Mean strokes on the holes of one par.",
    source=COUNTED,
)
def score_by_par(play: Play) -> Sequence[Reading]:
    pars = sorted({hole.par for hole in play.holes if hole.par is not None})
    return [
        mean((hole.score.strokes for hole in play.holes if hole.par == par), part=f"par {par}")
        for par in pars
    ]


def _holes_where(play: Play, fits: Callable[[int], bool], part: str = "") -> Reading:
    """How many holes' score to par fits; None when no hole's score to par is known."""
    reading = total((None if hole.to_par is None else fits(hole.to_par) for hole in play.holes), part)
    return reading if reading.possible else Reading(0.0)


@statistic(
    "holes_by_score",
    "Holes",
    group=GROUP,
    unit="holes",
    counts="holes",
    definition="Holes by score to par: under par, level, one over, two or more over.",
    source=COUNTED,
)
def holes_by_score(play: Play) -> Sequence[Reading]:
    return [
        _holes_where(play, lambda over: over < 0, "birdie or better"),
        _holes_where(play, lambda over: over == 0, "par"),
        _holes_where(play, lambda over: over == 1, "bogey"),
        _holes_where(play, lambda over: over >= 2, "double or worse"),
    ]


@statistic(
    "damage",
    "Damage",
    group=GROUP,
    unit="strokes",
    counts="holes",
    definition="Strokes beyond bogey, summed over the holes of double bogey or worse.",
    source=COUNTED,
)
def damage(play: Play) -> Reading:
    return total(None if hole.to_par is None else max(hole.to_par - 1, 0) for hole in play.holes)


@statistic(
    "bounce_back",
    "Bounce backs",
    group=GROUP,
    unit="share",
    counts="chances",
    definition="Holes under par straight after a hole over par, of all holes that follow one over par; "
    "the last hole played opens no chance.",
    source="PGA TOUR definition, relayed in a 2016 article",
)
def bounce_back(play: Play) -> Reading:
    return share(_answers(play.holes))


def _answers(holes: Sequence[Hole]) -> list[bool | None]:
    chances: list[bool | None] = []
    for before, after in itertools.pairwise(holes):
        if before.to_par is None:
            chances.append(None)
        elif before.to_par > 0:
            chances.append(None if after.to_par is None else after.to_par < 0)
    return chances

"""From tee to green: fairways, greens in regulation, how near approaches finish."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewkit.model import Shot
from reviewkit.model.values import FEET_PER_YARD
from reviewkit.stats.play import Hole, Play
from reviewkit.stats.registry import Reading, middle, share, statistic

TEE = "Off the tee"
APPROACH = "Approach"
BANDS = ((0, 75), (75, 100), (100, 125), (125, 150), (150, 175), (175, 200), (200, 1000))
"""Yards to the hole before the approach, lower bound included."""
NEAR_YD = 45.0
"""30 yards from a green's edge, taken as 15 yards from the hole: no log knows the edge itself."""


def _driving(play: Play) -> list[Hole]:
    return [hole for hole in play.holes if hole.par is not None and hole.par >= 4]


@statistic(
    "fairways",
    "Fairways hit",
    group=TEE,
    unit="share",
    counts="tee shots",
    definition="Tee shots at rest in the fairway, any club, of those on par 4 and longer; "
    "first cut and out of bounds are misses.",
    source="PGA TOUR definition, quoted by thompsontide.com 2011; CRAN package of golf statistics",
)
def fairways(play: Play) -> Reading:
    return share(hole.score.fairway_hit for hole in _driving(play))


@statistic(
    "fairway_misses",
    "Fairways missed",
    group=TEE,
    unit="share",
    counts="missed fairways",
    definition="Missed fairways by the side told, of the missed fairways whose side is told.",
    source="counted from holes.csv and shots.csv",
)
def fairway_misses(play: Play) -> Sequence[Reading]:
    missed = [hole for hole in _driving(play) if hole.score.fairway_hit is False]
    sides = [hole.shots[0].miss if hole.shots else "" for hole in missed]
    return [share((side == name if side else None for side in sides), name) for name in ("left", "right")]


@statistic(
    "greens",
    "Greens in regulation",
    group=APPROACH,
    unit="share",
    counts="holes",
    definition="Any part of the ball on the putting surface after par minus two strokes or fewer, penalty "
    "strokes counted; the fringe is not the green.",
    source="theleftrough.com; rotowire.com; wording of PGA TOUR statistic 103 from memory",
)
def greens(play: Play) -> Reading:
    return share(hole.score.green_in_regulation for hole in play.holes)


@statistic(
    "proximity",
    "Left after approaches",
    group=APPROACH,
    unit="ft",
    counts="approaches",
    definition="Median distance to the hole after an approach that finishes on the green or within about "
    "30 yards of its edge, by the yards it was played from.",
    source="golfwrx.com 2018; the median is the robust alternative to the tour's mean",
)
def proximity(play: Play) -> Sequence[Reading]:
    near = [(shot.distance_yd, left) for shot, left in approaches(play) if left is None or left <= NEAR_YD]
    bands = []
    for low, high in BANDS:
        left = [
            None if after is None else after * FEET_PER_YARD
            for before, after in near
            if before is not None and low <= before < high
        ]
        if left:
            bands.append(middle(left, part=f"{low}-{high} yd" if high < 1000 else f"over {low} yd"))
    return [middle(None if left is None else left * FEET_PER_YARD for _, left in near), *bands]


def approaches(play: Play) -> Iterator[tuple[Shot, float | None]]:
    """Strokes at the green that came to rest near it, with the yards left after them (None: not told)."""
    for hole, shot in play.strokes:
        aimed = shot.kind == "approach" or (shot.kind == "tee" and hole.par == 3)
        if not aimed or shot.penalty_strokes:
            continue
        after = hole.following(shot)
        if shot.holed:
            yield shot, 0.0
        elif after is not None and (shot.result in ("green", "fringe", "sand", "rough") or after.distance_yd):
            yield shot, after.distance_yd

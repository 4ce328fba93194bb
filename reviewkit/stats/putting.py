"""On the green."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model.values import FEET_PER_YARD
from reviewkit.stats.play import Hole, Play
from reviewkit.stats.registry import Reading, mean, middle, share, statistic, total

GROUP = "Putting"
ON_GREEN = "a putt is a stroke made from the putting green with any club; from the fringe it is none"
SOURCE = "putt: geoff mangum's forum and R. Minton's page; three-putt and putts a green hit: yardbarker.com"


@statistic(
    "putts",
    "Putts",
    group=GROUP,
    unit="putts",
    counts="holes",
    definition=f"Putts on the holes where they are known; {ON_GREEN}.",
    source=SOURCE,
)
def putts(play: Play) -> Reading:
    return total(hole.score.putts for hole in play.holes)


@statistic(
    "putts_a_hole",
    "Putts a hole",
    group=GROUP,
    unit="putts a hole",
    counts="holes",
    definition=f"Mean putts on the holes where they are known, and on greens hit in regulation; {ON_GREEN}.",
    source=SOURCE,
)
def putts_a_hole(play: Play) -> Sequence[Reading]:
    hit = [hole for hole in play.holes if hole.score.green_in_regulation]
    return [
        mean(hole.score.putts for hole in play.holes),
        mean((hole.score.putts for hole in hit), part="greens hit"),
    ]


@statistic(
    "one_putts",
    "One-putts",
    group=GROUP,
    unit="share",
    counts="holes",
    definition=f"Holes with exactly one putt; {ON_GREEN}.",
    source=SOURCE,
)
def one_putts(play: Play) -> Reading:
    return share(_putts_where(play, 1, 1))


@statistic(
    "three_putts",
    "Three-putts",
    group=GROUP,
    unit="share",
    counts="holes",
    definition=f"Holes with three putts or more; {ON_GREEN}.",
    source=SOURCE,
)
def three_putts(play: Play) -> Reading:
    return share(_putts_where(play, 3, 99))


def _putts_where(play: Play, low: int, high: int) -> list[bool | None]:
    counts = [hole.score.putts for hole in play.holes]
    return [None if count is None else low <= count <= high for count in counts]


@statistic(
    "first_putt",
    "First putt from",
    group=GROUP,
    unit="ft",
    counts="first putts",
    definition="Median distance of the first putt on a hole, in feet, where it is told.",
    source="counted from shots.csv",
)
def first_putt(play: Play) -> Reading:
    firsts = [_first_putt_yards(hole) for hole in play.holes if any(s.lie == "green" for s in hole.shots)]
    return middle(None if yards is None else yards * FEET_PER_YARD for yards in firsts)


def _first_putt_yards(hole: Hole) -> float | None:
    return next(shot.distance_yd for shot in hole.shots if shot.lie == "green")

"""Handicap arithmetic after the Rules of Handicapping 2024, for information only: never an official index.

Everything is Decimal. A half is rounded upward, negatives towards zero (Rule 5.1). The expected score for
holes not played is not published; `expected` is a plug-in, and what rests on it is unofficial.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import ROUND_FLOOR, Decimal
from functools import cache

from reviewkit.errors import ReviewkitError
from reviewkit.stats.benchmark import table_rows

TENTH, WHOLE = Decimal("0.1"), Decimal(1)
NEUTRAL_SLOPE = Decimal(113)
SOFT_CAP, HARD_CAP = Decimal(3), Decimal(5)
Expected = Callable[[Decimal], Decimal]


def half_up(value: Decimal, step: Decimal = TENTH) -> Decimal:
    """Rounded to a multiple of `step`, a half upward: 10.55 -> 10.6, -1.55 -> -1.5."""
    return (value / step + Decimal("0.5")).to_integral_value(ROUND_FLOOR) * step


def score_differential(
    adjusted_gross: int, course_rating: Decimal, slope: int, conditions: int | Decimal = 0
) -> Decimal:
    """Rule 5.1a: (113 / slope) x (adjusted gross - course rating - playing conditions adjustment)."""
    return half_up(_differential(adjusted_gross, course_rating, slope, conditions))


def _differential(gross: int, course_rating: Decimal, slope: int, conditions: int | Decimal) -> Decimal:
    if not 55 <= slope <= 155:
        raise ReviewkitError(f"Slope rating {slope} is not between 55 and 155.", "Take it from the card.")
    return NEUTRAL_SLOPE / Decimal(slope) * (Decimal(gross) - course_rating - Decimal(conditions))


def handicap_index(differentials: Sequence[Decimal]) -> Decimal | None:
    """Rule 5.2: mean of the lowest differentials of the last 20 plus the table's adjustment; None under 3."""
    record = list(differentials)[-20:]
    rule = _used().get(len(record))
    if rule is None:
        return None
    count, adjustment = rule
    lowest = sorted(record)[:count]
    return half_up(sum(lowest, Decimal(0)) / count + adjustment)


def capped(average: Decimal, low_index: Decimal) -> Decimal:
    """Rule 5.8: beyond 3.0 over the low index half counts (soft cap), never more than 5.0 (hard cap)."""
    rise = average - low_index
    if rise > SOFT_CAP:
        rise = min(SOFT_CAP + (rise - SOFT_CAP) / 2, HARD_CAP)
    return half_up(low_index + rise)


def exceptional(differential: Decimal, index: Decimal) -> Decimal:
    """Rule 5.9: -1.0 for a differential 7.0 to 9.9 under the index, -2.0 from 10.0, else 0."""
    under = index - differential
    return Decimal(-2) if under >= 10 else Decimal(-1) if under >= 7 else Decimal(0)


def course_handicap(index: Decimal, slope: int, course_rating: Decimal, par: int, holes: int = 18) -> int:
    """Rule 6.1: index x slope / 113 + (course rating - par), rounded; nine holes use half the index."""
    if holes not in (9, 18):
        raise ReviewkitError(f"{holes} holes have no course handicap.", "Give 9 or 18.")
    own = half_up(index / 2) if holes == 9 else index
    return int(half_up(own * Decimal(slope) / NEUTRAL_SLOPE + course_rating - Decimal(par), WHOLE))


def strokes_received(handicap: int, stroke_index: int, holes: int = 18) -> int:
    """Strokes on the hole of `stroke_index`; a plus handicap gives strokes back from the easiest hole on."""
    every, rest = divmod(abs(handicap), holes)
    if handicap >= 0:
        return every + (stroke_index <= rest)
    return -(every + (stroke_index > holes - rest))


def net_double_bogey(par: int, received: int | None) -> int:
    """Rule 3.1: par + 2 + strokes received; par + 5 for a player without an index (None)."""
    return par + 5 if received is None else par + 2 + received


def nine_hole_differential(nine: Decimal, index: Decimal, expected: Expected) -> Decimal:
    """Rule 5.1b: a nine-hole differential made an 18-hole one by the expected part. Unofficial."""
    return half_up(nine + half_up(expected(index)))


def part_round_differential(
    gross: int, course_rating: Decimal, slope: int, holes: int, index: Decimal, expected: Expected
) -> Decimal:
    """10 to 17 holes: the played part's differential and the expected one of the rest. Unofficial.

    `gross` and `course_rating` are of the holes played; `expected` is the nine-hole expected differential,
    taken in proportion to the holes not played.
    """
    if not 10 <= holes <= 17:
        raise ReviewkitError(f"{holes} holes are not a part round.", "Give 10 to 17.")
    rest = expected(index) * Decimal(18 - holes) / 9
    return half_up(_differential(gross, course_rating, slope, 0) + rest)


def community_expected(index: Decimal) -> Decimal:
    """About 0.52 x index + 1.2 for nine holes: found by players, not in the Rules. Unofficial."""
    return Decimal("0.52") * index + Decimal("1.2")


@cache
def _used() -> dict[int, tuple[int, Decimal]]:
    return {
        int(row["n_in_record"]): (int(row["lowest_used"]), Decimal(row["adjustment"]))
        for row in table_rows("whs_differentials_used.csv")
    }

"""Handicap arithmetic against every printed example of the Rules of Handicapping that we hold."""

from __future__ import annotations

from decimal import Decimal

import pytest

from reviewkit.errors import ReviewkitError
from reviewkit.stats.handicap import (
    capped,
    community_expected,
    course_handicap,
    exceptional,
    half_up,
    handicap_index,
    net_double_bogey,
    nine_hole_differential,
    part_round_differential,
    score_differential,
    strokes_received,
)


# R&A Rule 5 interpretations 5.2a/1 and 5.2a/2; Dansk Golf Union, page on fewer than 20 scores,
# examples 1 and 2.
@pytest.mark.parametrize(
    ("record", "index"),
    [
        ("15.3 15.2 16.6", "13.2"),
        ("40.7 42.4 36.1", "34.1"),
        ("40.7 42.4 36.1 45.9 43.6 45.0", "37.4"),
        ("25.3 26.4 23.2 20.9 27.8 30.5", "21.1"),
        ("25.3 26.4 23.2 20.9 27.8 30.5 25.3 20.4 22.3 19.8 20.1 26.3", "20.3"),
    ],
)
def test_index_from_few_scores(record: str, index: str) -> None:
    assert handicap_index([Decimal(text) for text in record.split()]) == Decimal(index)


def test_fewer_than_three_scores_give_no_index() -> None:
    assert handicap_index([Decimal(1), Decimal(2)]) is None


def test_only_the_last_twenty_count() -> None:
    assert handicap_index([Decimal("-30.0"), *[Decimal("10.0")] * 20]) == Decimal("10.0")


# The old manual's 10-1a example (same formula as 5.1a without an adjustment for conditions); the second
# worked by hand from the formula.
@pytest.mark.parametrize(("gross", "differential"), [(95, "21.2"), (69, "-2.3")])
def test_score_differential(gross: int, differential: str) -> None:
    assert score_differential(gross, Decimal("71.5"), 125) == Decimal(differential)


# Rule 5.1's text: .5 is rounded upward, negatives towards zero; 22.05 shown as 22.1 by Dansk Golf Union.
@pytest.mark.parametrize(
    ("raw", "rounded"), [("-1.55", "-1.5"), ("10.55", "10.6"), ("22.05", "22.1"), ("-2.26", "-2.3")]
)
def test_halves_go_up(raw: str, rounded: str) -> None:
    assert half_up(Decimal(raw)) == Decimal(rounded)


# USGA Local Guidance on Rule 5 (first printed; second computed from its inputs); USGA FAQ.
@pytest.mark.parametrize(
    ("average", "low", "index"), [("11.6", "6.5", "10.6"), ("18.2", "10.2", "15.2"), ("13.4", "10.0", "13.2")]
)
def test_caps(average: str, low: str, index: str) -> None:
    assert capped(Decimal(average), Decimal(low)) == Decimal(index)


# Rule 5.9 (Dansk Golf Union manual 2024; Minnesota Golf FAQ).
@pytest.mark.parametrize(
    ("under", "change"), [("6.9", 0), ("7.0", -1), ("9.9", -1), ("10.0", -2), ("14.2", -2)]
)
def test_exceptional_scores(under: str, change: int) -> None:
    assert exceptional(Decimal("12.0") - Decimal(under), Decimal("12.0")) == change


def test_nine_hole_course_handicap() -> None:
    """USGA Local Guidance for Rule 6: 8.7 / 2 = 4.35 -> 4.4; 4.011 -> 4."""
    assert course_handicap(Decimal("8.7"), 121, Decimal("35.3"), 36, holes=9) == 4


def test_maximum_hole_scores() -> None:
    """USGA FAQ: course handicap 15, par 4, stroke index 10 -> 7; without an index par + 5 (Rule 3.1a)."""
    assert net_double_bogey(4, strokes_received(15, 10)) == 7
    assert net_double_bogey(4, None) == 9


# Worked by hand from Rule 6 (appendix E's allocation): each hole once, then again from stroke index 1.
@pytest.mark.parametrize(
    ("handicap", "stroke_index", "received"), [(20, 2, 2), (20, 3, 1), (0, 1, 0), (-2, 18, -1), (-2, 16, 0)]
)
def test_strokes_received(handicap: int, stroke_index: int, received: int) -> None:
    assert strokes_received(handicap, stroke_index) == received


def test_nine_holes_with_a_plugged_in_expectation() -> None:
    """USGA 2024 nine-hole FAQ, from memory and unverified: 7.2 + 8.5 = 15.7 at index 14.0."""
    assert nine_hole_differential(Decimal("7.2"), Decimal("14.0"), lambda index: Decimal("8.5")) == Decimal(
        "15.7"
    )
    assert community_expected(Decimal("14.0")) == Decimal("8.48")


def test_part_rounds_refuse_whole_ones() -> None:
    assert part_round_differential(
        64, Decimal("55.0"), 113, 14, Decimal("10.0"), lambda index: Decimal("9.0")
    ) == Decimal("13.0")
    with pytest.raises(ReviewkitError):
        part_round_differential(64, Decimal("71.0"), 113, 18, Decimal("10.0"), community_expected)

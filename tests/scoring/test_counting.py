"""Stroke counts against the Rules of Golf and the published definitions of the card's figures."""

from __future__ import annotations

import pytest

from reviewkit.model import HoleScore, Shot
from reviewkit.scoring import keep_card, next_stroke, stableford, taken
from tests.scoring.rounds import shot


def played(*rows: tuple[str, str, int] | tuple[str, str, int, str]) -> tuple[Shot, ...]:
    return tuple(shot(1, k, row[0], 10.0 * k, row[1], row[2], *row[3:]) for k, row in enumerate(rows, 1))


@pytest.mark.parametrize(
    ("case", "shots", "nth"),
    [
        # USGA Rule 18; R&A Player Edition 18.2: stroke and distance, the next is the 3rd.
        ("18.2 out of bounds", [("tee", "ob", 1)], 3),
        ("18.2 lost", [("tee", "lost", 1)], 3),
        # USGA text of 18.3: a provisional in play counts with the penalty, so after it the next is the 4th.
        ("18.3 provisional in play", [("tee", "lost", 1), ("tee", "fairway", 0)], 4),
        # USGA, Model Local Rule E-5: two penalty strokes, the next is the 4th.
        ("E-5 drop by the fairway", [("tee", "ob", 2)], 4),
        # R&A diagrams of 17.1d, yellow and red: one penalty stroke, the next is the 3rd.
        ("17.1d penalty area", [("tee", "penalty", 1)], 3),
        # Rules of Golf 2023, 19.3b: unplayable in a bunker, taken back on the line outside it, two strokes.
        ("19.3b unplayable in a bunker", [("tee", "sand", 0), ("bunker", "unplayable", 2)], 5),
        # Rules of Golf 2023, 13.1f: relief from a wrong green is free.
        ("13.1f wrong green", [("tee", "unknown", 0)], 2),
    ],
)
def test_the_next_stroke_is_numbered_as_the_rules_number_it(
    case: str, shots: list[tuple[str, str, int]], nth: int
) -> None:
    assert next_stroke(played(*shots)) == nth, case


def test_a_whiff_counts_and_a_hole_sums_up() -> None:
    # Rules of Golf, Definitions, Stroke: a forward movement made to strike the ball counts, hit or not.
    hole = played(
        ("tee", "unknown", 0), ("tee", "penalty", 1), ("approach", "green", 0), ("putt", "holed", 0)
    )
    assert taken(hole) == 5


@pytest.mark.parametrize(("to_par", "points"), [(3, 0), (2, 0), (1, 1), (0, 2), (-1, 3), (-2, 4), (-3, 5)])
def test_stableford_points(to_par: int, points: int) -> None:
    # R&A Player Edition, Rule 21.1: 0 for two over or no score, 1, 2, 3, 4, 5 up to three under.
    assert stableford(to_par) == points
    assert stableford(to_par + 1, given=1) == points


def card(par: int, shots: tuple[Shot, ...]) -> HoleScore:
    return keep_card(HoleScore(1, 1, 0.0, 60.0, par, taken(shots)), shots)


@pytest.mark.parametrize(
    ("par", "shots", "fairway", "green", "putts", "penalties"),
    [
        # Fairway hit: par 4 and 5 only, the first cut is a miss (thompsontide.com 2011; CRAN Rlab::golf).
        (
            4,
            [
                ("tee", "fairway", 0),
                ("approach", "green", 0),
                ("putt", "green", 0, "green"),
                ("putt", "holed", 0, "green"),
            ],
            True,
            True,
            2,
            0,
        ),
        (
            3,
            [("tee", "green", 0), ("putt", "green", 0, "green"), ("putt", "holed", 0, "green")],
            None,
            True,
            2,
            0,
        ),
        (
            4,
            [("tee", "rough", 0), ("approach", "green", 0), ("putt", "holed", 0, "green")],
            False,
            True,
            1,
            0,
        ),
        # Green in regulation: the fringe is not the green; a putter from there makes no putt.
        (
            4,
            [
                ("tee", "fairway", 0),
                ("approach", "fringe", 0),
                ("putt", "green", 0, "fringe"),
                ("putt", "holed", 0, "green"),
            ],
            True,
            False,
            1,
            0,
        ),
        # Penalty strokes count towards it, and a driven par 4 is one.
        (
            4,
            [("tee", "penalty", 1), ("approach", "green", 0), ("putt", "holed", 0, "green")],
            False,
            False,
            1,
            1,
        ),
        (
            4,
            [("tee", "green", 0), ("putt", "green", 0, "green"), ("putt", "holed", 0, "green")],
            False,
            True,
            2,
            0,
        ),
        # Holed from the fairway in two on a par 4: the hole lies on the green, in time.
        (4, [("tee", "fairway", 0), ("approach", "holed", 0)], True, True, 0, 0),
        # Where the first stroke ended is not told: nothing is claimed of the fairway.
        (
            5,
            [
                ("tee", "unknown", 0),
                ("layup", "unknown", 0),
                ("approach", "unknown", 0),
                ("putt", "holed", 0, "green"),
            ],
            None,
            True,
            1,
            0,
        ),
    ],
)
def test_the_card_follows_the_trades_definitions(
    par: int,
    shots: list[tuple[str, str, int]],
    fairway: bool | None,
    green: bool | None,
    putts: int,
    penalties: int,
) -> None:
    kept = card(par, played(*shots))
    assert (kept.fairway_hit, kept.green_in_regulation) == (fairway, green)
    assert (kept.putts, kept.penalty_strokes) == (putts, penalties)


def test_no_strokes_known_leaves_the_cells_empty() -> None:
    kept = keep_card(HoleScore(1, 1, 0.0, 60.0, 4, 5), ())
    assert kept.putts is None and kept.green_in_regulation is None and kept.fairway_hit is None

"""What strokes say of a par that nobody names."""

from __future__ import annotations

import pytest

from reviewkit.model import Mention, Shot
from reviewkit.scoring.play import par_of_play

THERE = (Mention("place", "green", 5, 7, 10.0, 12.0, "on the green"),)


def hole(*shots: tuple[str, str, str]) -> tuple[Shot, ...]:
    return tuple(
        Shot(1, k, 10.0 * k, 10.0 * k + 5, kind, club, result=result)
        for k, (kind, club, result) in enumerate(shots, 1)
    )


@pytest.mark.parametrize(
    ("shots", "par"),
    [
        (hole(("tee", "7I", "green"), ("putt", "", "holed")), 3),
        (hole(("tee", "D", "fairway"), ("layup", "7I", "fairway"), ("approach", "GW", "green")), 5),
        (hole(("tee", "5H", "fringe"), ("chip", "SW", "green")), 3),
    ],
)
def test_strokes_tell_the_par(shots: tuple[Shot, ...], par: int) -> None:
    odds = par_of_play(shots, THERE)
    assert max(odds, key=lambda k: odds[k]) == par


def test_a_driver_into_the_fairway_is_no_par_three() -> None:
    odds = par_of_play(hole(("tee", "D", "fairway")), ())
    assert odds[3] < 0.01 * odds[4]


@pytest.mark.parametrize("shots", [(), hole(("putt", "", "holed")), hole(("tee", "", "unknown"))])
def test_nothing_told_leaves_it_even(shots: tuple[Shot, ...]) -> None:
    assert set(par_of_play(shots, THERE).values()) == {1.0}


def test_a_green_that_only_implied_putts_tell_of_says_nothing() -> None:
    shots = hole(("tee", "D", "green"), ("putt", "", "holed"))
    assert par_of_play(shots, ())[4] > par_of_play(shots, ())[3]
    assert par_of_play(shots, THERE)[3] >= par_of_play(shots, THERE)[4]

"""Putts that nobody told of, by how far away the ball lay."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from reviewkit.model import Plan, Shot
from reviewkit.reasoning import reason
from reviewkit.shots.holing import tapped, untold
from tests.support.narrations import GREETING, transcript

ONTO = [
    GREETING,
    "",
    "Hole one, a par four.",
    "Driver, fairway.",
    "8 iron from 150 yards, it's on the green.",
]


def played(lines: Sequence[str]) -> tuple[Shot, ...]:
    return reason(transcript([*ONTO, *lines]), Plan()).shots


def test_a_long_putt_is_seldom_the_last() -> None:
    odds = {length: dict(untold(length, 0)) for length in (2.0, 12.0, 45.0)}
    assert odds[2.0][1] > odds[2.0][2]
    assert odds[12.0][1] < odds[12.0][2]
    assert odds[45.0][1] < odds[45.0][2] and odds[45.0][3] > odds[12.0][3]


def test_nobody_taps_in_from_afar() -> None:
    alone, another = tapped(15.0, close=False)
    assert alone < another
    alone, another = tapped(2.0, close=False)
    assert alone > another


@pytest.mark.parametrize(
    ("said", "putts"),
    [
        (["Forty feet.", "Right."], 2),
        (["Twelve feet.", "Pulled it left, walked up.", "Knocked in what remained."], 2),
        (["Fifteen feet past.", "It's hanging.", "Tap in."], 2),
        (["Fifteen feet.", "Slid by.", "In with the next for my four."], 2),
        (["Ten feet.", "It's gone by on the left.", "I'll finish that."], 2),
        (["Twenty-four feet.", "I only breathed on it, eighteen inches.", "That's in."], 2),
    ],
)
def test_putts_on_the_green(said: list[str], putts: int) -> None:
    assert sum(shot.kind == "putt" for shot in played(said)) == putts


def test_a_putt_missed_for_a_score_makes_another() -> None:
    assert sum(shot.kind == "putt" for shot in played(["Ten feet, missed it for birdie."])) == 2
    assert sum(shot.kind == "putt" for shot in played(["Ten feet, holed it for birdie."])) == 1

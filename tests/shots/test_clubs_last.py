"""Speakers who name the club when the ball has landed; common practice of the trade, no source."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

HOLES = [
    "Hole one, a par four.",
    "It's in the middle of the fairway. Three wood.",
    "One forty to go. And that's on the green. Eight iron.",
    "Two putts for a par.",
    "",
    "Hole two, a par three.",
    "That's in the bunker on the left. Six iron.",
    "Splashed it onto the green. Sand wedge. Two putts for a bogey four.",
    "",
    "Hole three, a par four.",
    "Down the middle of the fairway again. Driver.",
    "And it's short, it's in the rough. Nine iron.",
    "Chipped onto the green. Gap wedge. One putt for a par.",
]


def clubs(lines: list[str]) -> dict[int, list[str]]:
    read = reason(transcript([GREETING, "", *lines]), Plan())
    holes: dict[int, list[str]] = {}
    for shot in read.shots:
        if shot.kind != "putt":
            holes.setdefault(shot.hole, []).append(shot.club)
    return holes


def test_a_habit_of_naming_clubs_last_is_known_by_the_tee_shots() -> None:
    assert clubs(HOLES) == {1: ["3W", "8I"], 2: ["6I", "SW"], 3: ["D", "9I", "GW"]}


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ("Off to the right, in the rough. That was the driver, by the way.", ["D", "7I"]),
        ("I hung it out to the right, in the rough, with the driver.", ["D", "7I"]),
        ("Took the five wood, no, sorry, it was the three wood, into the rough.", ["3W", "7I"]),
        ("I had the driver out and I put it back. Three wood, into the rough.", ["3W", "7I"]),
    ],
)
def test_a_club_told_of_the_stroke_before_put_right_or_put_back(told: str, expected: list[str]) -> None:
    rest = ["7 iron from 150 yards onto the green.", "Two putts for a par."]
    assert clubs(["Hole one, a par four.", told, *rest])[1] == expected

"""Holes told over again when they are done, clubs named before the ball landed, and wishes."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

TALES = {
    "a recap adds no strokes": (
        [
            "Driver, in the fairway.",
            "150 left, 6 iron, short of the green in the rough.",
            "Chip to six feet. Missed it, tapped in.",
            "So that was driver, 6 iron, chip and two putts for a five.",
        ],
        ["D", "6I", "", "", ""],
    ),
    "a club meant is the one used where no other is named": (
        [
            "The plan is driver at the oak, and then two easy ones. Breathing out.",
            "That was a nice turn. We're in the fairway.",
            "120 left. 9 iron, on the green. Two putts.",
        ],
        ["D", "9I", "", ""],
    ),
    "a chip thought of and given up": (
        [
            "Driver, in the fairway. 120 left. 9 iron, over the back, on the fringe.",
            "Chip, no. Putter. Two feet. In.",
        ],
        ["D", "9I", "", ""],
    ),
    "a ball told to drop that did not": (
        [
            "Driver, in the fairway. 120 left. 9 iron, on the green.",
            "Rolled it up. Oh, get in! Nearly. It's a foot away. Tapped it in.",
        ],
        ["D", "9I", "", ""],
    ),
    "a ball told to drop that only came to the green": (
        [
            "Driver, in the fairway. 120 left. 9 iron, in the bunker.",
            "Sand wedge. Oh, get in, first time! It's on the green. Long putt, about three feet away.",
            "Down it goes. Five.",
        ],
        ["D", "9I", "SW", "", ""],
    ),
}


@pytest.mark.parametrize(("lines", "clubs"), TALES.values(), ids=TALES)
def test_each_stroke_is_told_once(lines: Sequence[str], clubs: Sequence[str]) -> None:
    shots = reason(transcript([GREETING, "", "Hole one, a par four.", *lines]), Plan()).shots
    assert [shot.club for shot in shots] == clubs

"""Clubs by their owner's names for them."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

HOLE = "Hole one, a par four."
REST = ["140 left. 8 iron, on the green. Two putts."]


@pytest.mark.parametrize(
    ("told", "clubs"),
    [
        # A name told to be the driver's stands for it, and for no player.
        (
            ["Petunia is my driver, she's moody.", "Come on, Petunia. Middle of the fairway.", *REST],
            ["D", "8I"],
        ),
        (
            ["I'm on the spoon, that's my three wood. Left rough.", "190. The spoon again, on the green."],
            ["3W", "3W"],
        ),
        # What is said of a place names no club.
        (["Into the trees, that's my driver.", "Out of the trees, on the green."], ["D", ""]),
        # The only hybrid of a bag needs no number.
        (
            ["Took the rescue, the five. In the fairway.", "Took the rescue again, on the green."],
            ["5H", "5H"],
        ),
        (
            [
                "Hybrid, I only got the one. It's a four. In the fairway.",
                "Took the hybrid again, on the green.",
            ],
            ["4H", "4H"],
        ),
        (
            [
                "Hybrid. I've only got the one. It's a four. In the fairway.",
                "Took the hybrid again, on the green.",
            ],
            ["4H", "4H"],
        ),
        (
            [
                "Four hybrid off the tee. In the fairway.",
                "I've a three hybrid, too. Hit the hybrid, on the green.",
            ],
            ["4H", "3H"],
        ),
        # One just named is no other, whichever is named more often.
        (
            [
                "Four hybrid off the tee. The four hybrid, the lovely four hybrid. In the fairway.",
                "Five hybrid. I say hybrid, it's more of a rake. On the green.",
            ],
            ["4H", "5H"],
        ),
        # Its number is told in the next breath, and a number misheard once is no second hybrid.
        (["Hit the rescue.", "The 3, and it's in the fairway.", "Rescue again, on the green."], ["3H", "3H"]),
        (
            [
                "Four hybrid off the tee. The four hybrid found the rough.",
                "Five hybrid, no, the hybrid, it's always the hybrid, on the green.",
            ],
            ["4H", "4H"],
        ),
    ],
)
def test_a_club_goes_by_its_own_name(told: list[str], clubs: list[str]) -> None:
    shots = reason(transcript([GREETING, "", HOLE, *told, "Two putts for a par."]), Plan()).shots
    assert [shot.club for shot in shots if shot.kind != "putt"] == clubs

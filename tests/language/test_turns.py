"""Whose ball is told of right behind another player's stroke."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript

_MINE = "And I chipped onto the green."


def others(lines: list[str]) -> list[tuple[str, object]]:
    """Kind and value of what the last sentence tells of another player."""
    return [(m.kind, m.value) for m in read_talk(transcript(lines), Plan())[-1].mentions if m.mood == "other"]


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("He hit 8 iron. It's in the bunker, though!", ("place", "sand")),
        ("He's going for it, he's got 3 wood. And it's in the water.", ("place", "penalty")),
        ("Oh, he hit it stiff. That's three feet!", ("distance", 3)),
        ("Okay, so it's his turn, and he's on. Left side, long putt.", ("miss", "left")),
        ("Ned hit driver. And Ned from 98. Gap wedge.", ("club", "GW")),
        ("Alright, your go. Nice 8 iron.", ("club", "8I")),
    ],
)
def test_it_goes_on_to_the_next_sentence(said: str, told: tuple[str, object]) -> None:
    assert told in others([f"{_MINE} {said}"])


@pytest.mark.parametrize(
    "said",
    [
        "He hit 8 iron. 7 iron for this. It's in the bunker.",
        "He hit 8 iron. I'm in the bunker.",
        "He hit it stiff. Twenty feet for par.",
        "He's yelling no. It's in the hole!",
        "7 iron. He's walking off already. It's in the bunker.",
    ],
)
def test_it_ends_where_my_own_stroke_is_told(said: str) -> None:
    assert others([f"{_MINE} {said}"]) == []


def test_it_is_mine_while_my_own_ball_is_in_the_air() -> None:
    assert others(["Driver. He hit his before me. It's in the left rough."]) == []

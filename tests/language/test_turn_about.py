"""Another player's turn told whole, clubs too, before mine."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript

_BEFORE = ["Playing with my mate Ned. Ned hit his 6 iron in the trees.", "Second hole, par 4, 380."]


def clubs(said: str) -> list[object]:
    """The clubs that are mine."""
    talk = read_talk(transcript([*_BEFORE, said]), Plan())
    return [m.value for told in talk for m in told.mentions if m.kind == "club" and m.mood in ("", "plan")]


@pytest.mark.parametrize(
    ("said", "mine"),
    [
        ("Ned's hit. Brace yourselves. Hybrid, seven iron in the fairway. For me it's a 3 wood.", ["3W"]),
        ("Ned. Driver. Down the middle. See you. Now me. 3 wood.", ["3W"]),
        ("Ned to go first. 5 wood. Oh that's gone left. Trees. My turn. Driver.", ["D"]),
        ("Ned's honour. Driver. Hard luck Ned. I'm going with the 3 wood. Fairway.", ["3W"]),
        ("He's having a lash. Driver. In the bunker. I hit 3 wood. Fairway.", ["3W"]),
        ("Ned's up. Driver. Ned's chipped out. Mine now. 3 wood. Fairway.", ["3W"]),
    ],
)
def test_his_club_is_told_between_his_name_and_my_turn(said: str, mine: list[object]) -> None:
    assert clubs(said) == mine


@pytest.mark.parametrize(
    "said",
    [
        "Cheers Ned. Driver. Fairway. I'm happy. 9 iron.",
        "Ned's hit. Driver. Fairway. I'm happy with that. 9 iron.",
        "Ned's hit. Driver. Fairway. I'll take the 9 iron from 130 out.",
        "Ned's in the trees. Driver. Fairway. I hit 9 iron next.",
        "Watch this, Ned. Driver. Fairway. I'll take a 9 iron from there.",
    ],
)
def test_a_club_without_a_turn_of_mine_behind_it_is_mine(said: str) -> None:
    assert clubs(said) == ["D", "9I"]


def test_my_ball_in_the_air_comes_down_first() -> None:
    assert clubs("3 wood. Ned. Oh Ned. 7 iron. I hit driver.") == ["3W", "7I", "D"]

"""Where a ball ended that is told in words that no rule knows."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

HOLE = [GREETING, "", "Hole one, a par five."]
ONWARD = ["8 iron onto the green.", "Two putts."]
PLACES = {
    "beside a word that was misheard": ("5 iron, position was the fairway bright half.", "fairway"),
    "in a manner of speaking": ("7 iron to a comfortable figure, fairway was obtained.", "fairway"),
    "the rough, in the same way": ("5 iron, terminus deep rough territory.", "rough"),
    "not where it did not go": ("5 iron, nowhere near any fairway.", "unknown"),
    "nor another's": ("5 iron. Dave, he is over by fairway there.", "unknown"),
}


@pytest.mark.parametrize(("told", "result"), PLACES.values(), ids=PLACES)
def test_a_place_without_a_rule_is_where_the_ball_ended(told: str, result: str) -> None:
    round_ = reason(transcript([*HOLE, "Driver in the fairway.", told, *ONWARD]), Plan())
    assert [shot.result for shot in round_.shots][1] == result

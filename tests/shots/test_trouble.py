"""What became of a ball that found the only trouble there is."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

LAND = "There's a fence all down the right."
GONE = "Driver, over the fence, out of bounds."


@pytest.mark.parametrize(
    ("told", "miss"),
    [
        ([LAND, GONE], "right"),
        ([LAND, "And there's a lake down the left.", GONE], ""),
        ([GONE], ""),
        ([LAND, "Driver, pulled it left, out of bounds."], "left"),
    ],
)
def test_a_lost_ball_went_where_the_only_trouble_is(told: list[str], miss: str) -> None:
    lines = [
        GREETING,
        "",
        "Hole one, a par four.",
        *told,
        "Reloaded, fairway. Wedge on. Two putts for a six.",
    ]
    tee = reason(transcript(lines), Plan()).shots[0]
    assert (tee.result, tee.miss) == ("ob", miss)


def test_a_ball_given_up_without_a_word_is_out_of_bounds_where_that_is_the_only_trouble() -> None:
    gone = "Driver, and that's away left. Playing three from the tee, 3 wood, fairway."
    rest = [gone, "Wedge on. Two putts for a six."]
    fates = []
    for land in ("Out of bounds all down the left.", "It bends to the left."):
        lines = [GREETING, "", "Hole one, a par four.", land, *rest]
        fates.append(reason(transcript(lines), Plan()).shots[0].result)
    assert fates == ["ob", "lost"]

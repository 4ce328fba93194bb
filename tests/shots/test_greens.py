"""Putts told one by one and summed up: which words are whose."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

ON = ["Hole one, a par four.", "Driver in the fairway.", "8 iron from 150 yards onto the green."]
TOLD = {
    "first short, then missed, three putts": (
        ["Fifty feet, and I left the first one six feet short.", "Missed the next. Three putts."],
        [("short", 50.0), ("", 6.0), ("", None)],
    ),
    "raced past, then pulled": (
        ["Forty-five feet for birdie.", "Six feet past.", "Pulled that one left, tapped in, three putts."],
        [("long", 45.0), ("left", 6.0), ("", None)],
    ),
    "past, and the next lipped out": (
        ["Fifteen feet for birdie, and it's five feet past.", "It lipped out. Tapped in."],
        [("long", 15.0), ("", 5.0), ("", None)],
    ),
    "two foot left": (
        ["Twenty-four feet, and it's two feet short.", "Holed the two-footer for par."],
        [("short", 24.0), ("", 2.0)],
    ),
    "nothing but the tally": (["Two putts from thirty feet for par."], [("", 30.0), ("", None)]),
    "by on a side of what was misheard": (
        ["Fifteen feet.", "It's catching the right lift and spinning out.", "Tapped in for par."],
        [("right", 15.0), ("", None)],
    ),
    "missed, and a side heard for that it was on": (
        ["Fifteen feet.", "I've missed that, I've missed that, I'm right.", "Tapped it in."],
        [("right", 15.0), ("", None)],
    ),
    "slid by": (
        ["Twelve feet for birdie.", "Missed it on the right, tapped in."],
        [("right", 12.0), ("", None)],
    ),
}


@pytest.mark.parametrize(("lines", "expected"), TOLD.values(), ids=TOLD)
def test_each_putt_has_its_own_miss_and_length(
    lines: list[str], expected: list[tuple[str, float | None]]
) -> None:
    shots = reason(transcript([GREETING, "", *ON, *lines]), Plan()).shots
    putts = [(s.miss, s.distance_yd and round(s.distance_yd * 3, 1)) for s in shots if s.kind == "putt"]
    assert putts == expected
    assert [shot.miss for shot in shots if shot.kind != "putt"] == ["", ""]

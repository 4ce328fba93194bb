"""Balls told to go in where none can, which end no hole."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("lines", "holed"),
    [
        (["Driver, fairway.", "He's parked over there. Get in, get in."], False),
        (["Driver, on the short stuff.", "Quick, the rain. Get in."], False),
        (["Driver, fairway.", "Get in, get in.", "So, 140.", "He says it's a seven."], False),
        (["Seven iron, on the green.", "Twenty feet. Get in!"], True),
        (["Chip, rolling, rolling.", "Get in!"], True),
        # What came of it may be told only behind it.
        (["Wedge, and get in! Get in!", "Three feet."], True),
    ],
)
def test_only_a_ball_near_the_hole_is_cheered_in(lines: list[str], holed: bool) -> None:
    kinds = [m.kind for said in read_talk(transcript(lines), Plan()) for m in said.mentions if not m.mood]
    assert ("holed" in kinds) is holed

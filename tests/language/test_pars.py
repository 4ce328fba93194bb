"""Pars told like scores, where the hole's length stands before them."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("line", "scores"),
    [
        ("Number one, 305, it's a four for people with decent knees.", []),
        ("It's 380. It's a four. There's a crowd.", []),
        ("It's 505 yards, so it's a five for most of us.", []),
        ("The next one's the river hole, 471, a five, and there's a sign.", []),
        ("Hole three, 344, a four, wind in the face.", []),
        ("So, home. It's 352. A four, back past the kirk.", []),
        # Too short for such a par, or told once a ball was struck: a club or a score.
        ("It's 305. It's a five.", [5]),
        ("305 to carry it. Driver down the middle. It's a four.", [4]),
        ("Tapped that in, it's a five.", [5]),
    ],
)
def test_a_length_makes_a_par_of_a_number(line: str, scores: list[int]) -> None:
    mentions = [m for said in read_talk(transcript([line]), Plan()) for m in said.mentions if not m.mood]
    assert bool(scores) or any(m.kind == "par" and m.weight >= 0.8 for m in mentions)
    assert [m.value for m in mentions if m.kind == "strokes"] == scores

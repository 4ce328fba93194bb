"""A listener's loops are no talk."""

from __future__ import annotations

import pytest

from reviewkit.language.loops import LOOP
from reviewkit.language.tokens import sentences
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("heard", "texts"),
    [
        (
            "Hole eight. " + "D. " * LOOP + "It ran along the fairway.",
            ["hole 8 .", "it ran along the fairway ."],
        ),
        ("Go, " * LOOP + "and it's on.", ["and it's on ."]),
        ("Five, " * LOOP + "on the green.", ["on the green ."]),
        # What was said meanwhile is lost.
        ("It's leaning " + "left, " * LOOP + "and the rain's in.", ["it's leaning .", "and the rain's in ."]),
        ("On the green. " + "Yes. " * LOOP, ["on the green ."]),
        ("No, no, no, no, no. Bunker.", ["no , no , no , no , no .", "bunker ."]),
    ],
)
def test_a_loop_is_left_out(heard: str, texts: list[str]) -> None:
    assert [sentence.text for sentence in sentences(transcript([heard]))] == texts

"""Clubs named by their number alone."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

FOUR = "Hole one, a par four. Driver, fairway."


@pytest.mark.parametrize(
    ("told", "club"),
    [
        ("148 from there. Six. Onto the green.", "6I"),
        ("One thirty to the flag, into the breeze. Felt it on the neck. Nine. On the green.", "9I"),
        # Degrees, where the length has been told.
        ("95 to the flag. Grass is thick, so 56 and commit. Onto the green.", "56"),
        ("95 to the flag. Long chat with a heron about that. Same 52 as before. Onto the green.", "52"),
        # A number after a landing counts strokes.
        ("148 from there, onto the green. Five.", ""),
    ],
)
def test_a_number_after_a_length_is_a_club(told: str, club: str) -> None:
    played = reason(transcript([GREETING, "", FOUR, told, "Two putts."]), Plan()).shots
    assert played[1].club == club

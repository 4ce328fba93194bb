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
        # One of two, or one in place of another.
        ("It's a wedge or the nine. Nine, out over the wall. Onto the green.", "9I"),
        ("Between the seven and the eight here. Eight. Onto the green.", "8I"),
        ("Eight iron or nine? Nine. Onto the green.", "9I"),
        ("155 from there. Seven. Sitting down a touch. Make it the six. Onto the green.", "6I"),
        ("155 from there. Eight iron. Wind's up now. Let's make it a seven. Onto the green.", "7I"),
        ("155 from there. Eight. On second thoughts nine. Onto the green.", "9I"),
        ("155 from there. Eight. Back in the bag. Seven. Onto the green.", "7I"),
        # Behind a standing it is a total.
        ("95 to the flag, into the rough. Bogey, 3 over. 57 total. Old low was 58.", ""),
        # A number after a landing counts strokes.
        ("148 from there, onto the green. Five.", ""),
    ],
)
def test_a_number_after_a_length_is_a_club(told: str, club: str) -> None:
    played = reason(transcript([GREETING, "", FOUR, told, "Two putts."]), Plan()).shots
    assert played[1].club == club


def test_putts_hoped_for_before_the_club_are_not_putted() -> None:
    told = "6 iron, in the right bunker. Out, two putts, done. Sand wedge. Didn't get out. Back at my feet."
    again = "Again, same club. Out. Ten feet. That's four. Right edge! Spun out. Tap. Six."
    played = reason(transcript([GREETING, "", FOUR, told, again]), Plan()).shots
    assert [shot.club for shot in played] == ["D", "6I", "SW", "SW", "", ""]
    assert played[2].result == "sand"
    assert played[4].miss == "right"

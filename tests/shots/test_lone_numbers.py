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
        ("122 left. Eight iron. No, hang on, changed my mind. Back to the nine. Onto the green.", "9I"),
        ("The lip was low enough for an eight, I said. It was a seven in the end. Onto the green.", "7I"),
        ("126. It's wedge or it's nine, and nine was the answer before, so nine it was. On the green.", "9I"),
        ("146. So that's an eight. Seven? No, it's an eight, don't dither. Onto the green.", "8I"),
        ("139. I was between eight and nine, and the nine had to be perfect. So eight. On the green.", "8I"),
        ("152 left. Grabbed the seven, put the six back. Onto the green.", "7I"),
        ("Swapped the seven iron for the eight. Onto the green.", "8I"),
        ("148. I could see Gordon pull seven, I had eight, and it's on the green.", "8I"),
        # Another's club in my hands, one for us both, and one of another day.
        ("So I borrowed Gordon's eight iron. Onto the green.", "8I"),
        ("Me and Gordon both hit eight iron. Mine's on the green.", "8I"),
        ("Eight iron. My mate reckons it's a seven iron all day. Onto the green.", "8I"),
        ("Eight iron. Ten years ago that was a pitching wedge. Onto the green.", "8I"),
        # Of the sort that was named with it, where such a one is carried.
        ("I'm going rescue. The four, I should say. Onto the green.", "4H"),
        ("I've got my driving iron out, it's the two. Onto the green.", "2I"),
        ("I thought about the three hybrid, but no, the five. Onto the green.", "5H"),
        ("Four hybrid, wait, actually the seven. Onto the green.", "7I"),
        # Thought of, and another taken by its number.
        ("I was set on the rescue, then I thought about my rescue. So, seven. Onto the green.", "7I"),
        ("A hybrid goes past the flag, into the flax. Seven iron. Onto the green.", "7I"),
        # As a hole is named, or a score, but behind a length.
        ("134, into the sun, so that's the eight, the one I like. Onto the green.", "8I"),
        ("152, that's my seven. Onto the green.", "7I"),
        # By its short name, and one that only would have been enough.
        ("78, sandy. Get down. Onto the green.", "SW"),
        ("85. The sixty flat out would do it, but no. So the sand wedge. Onto the green.", "SW"),
        # Right behind its length.
        ("176, seven, thought about the six. Onto the green.", "7I"),
        # Weighed before, and chosen after all.
        ("130 left. It's a really good seven, or it's a hybrid and it's in the car park. Seven. On.", "7I"),
        ("I was all set with the seven, then I thought hybrid for the wind. So, seven. On the green.", "7I"),
        ("110, so that's an eight. Or it's a nine hit properly. I'll hit a nine properly. It's on.", "9I"),
        ("108 left. I could hit nine, and then a chip, and that's the careful way. Seven. It's on.", "7I"),
        ("110, and it's a nine iron normally, but I'm going to punch the eight. Onto the green.", "8I"),
        ("149 remaining. Selected the eight. Onto the green.", "8I"),
        # Weighed, and taken where no other is.
        ("160 to the flag, eight iron isn't enough but I trust nothing else. Chunked it.", "8I"),
        ("That's a four hybrid or a three hybrid, and I'm taking the three hybrid. On the green.", "3H"),
        # Behind a standing it is a total.
        ("95 to the flag, into the rough. Bogey, 3 over. 57 total. Old low was 58.", ""),
        # A number after a landing counts strokes.
        ("148 from there, onto the green. Five.", ""),
    ],
)
def test_a_number_after_a_length_is_a_club(told: str, club: str) -> None:
    played = reason(transcript([GREETING, "", FOUR, told, "Two putts."]), Plan()).shots
    assert played[1].club == club


def test_a_number_told_again_is_the_club_used_before() -> None:
    told = "Seven wood, onto the fairway. Seven again. Left, into the greenside bunker. 56, square face."
    played = reason(
        transcript([GREETING, "", FOUR, told, "Splashed to three feet. Converted."]), Plan()
    ).shots
    assert [shot.club for shot in played] == ["D", "7W", "7W", "56", ""]


def test_putts_hoped_for_before_the_club_are_not_putted() -> None:
    told = "6 iron, in the right bunker. Out, two putts, done. Sand wedge. Didn't get out. Back at my feet."
    again = "Again, same club. Out. Ten feet. That's four. Right edge! Spun out. Tap. Six."
    played = reason(transcript([GREETING, "", FOUR, told, again]), Plan()).shots
    assert [shot.club for shot in played] == ["D", "6I", "SW", "SW", "", ""]
    assert played[2].result == "sand"
    assert played[4].miss == "right"


def test_putts_hoped_for_with_a_sum_behind_them_are_not_putted() -> None:
    told = "6 iron, in the right bunker. I'll just get it out. Two putts. 72. Tea. Sand wedge. Splash."
    played = reason(transcript([GREETING, "", FOUR, told, "On the green. It's gone in."]), Plan()).shots
    assert [shot.club for shot in played] == ["D", "6I", "SW", ""]


def test_putts_to_spare_are_not_putted() -> None:
    told = "6 iron, onto the green, four metres. I only need two putts for my nine over."
    played = reason(
        transcript([GREETING, "", FOUR, told, "Up the rise and it's gone in. A three."]), Plan()
    ).shots
    assert len(played) == 3


@pytest.mark.parametrize(
    ("told", "club"),
    [
        # Of the sort that the round names elsewhere, else what most people carry.
        ("Gary's got his driver out. From 235 I hit 3, and it's in the fairway.", "3W"),
        ("Three hybrid once more. Into the rough. From 235 I hit 3, and it's in the fairway.", "3H"),
        ("Three iron first. Into the rough. From 235 I hit 3, and it's in the fairway.", "3I"),
        ("From 160 I hit 5, and it's in the fairway.", "5I"),
    ],
)
def test_a_3_by_its_number_is_of_the_sort_that_is_carried(told: str, club: str) -> None:
    played = reason(transcript([GREETING, "", FOUR, told, "Then a wedge on, two putts."]), Plan()).shots
    assert club in [shot.club for shot in played]

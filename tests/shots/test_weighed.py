"""Clubs held against each other, and the one taken told behind the stroke or never."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

FOUR = "Hole one, a par four. Driver, fairway."


@pytest.mark.parametrize(
    ("weighed", "told", "club"),
    [
        # Told behind the landing, by its number or its name.
        (
            "155. Comfortable six, or a very good seven.",
            "Onto the fringe. The answer was five, I'd hit the six.",
            "6I",
        ),
        ("150. It's the seven or it's the eight.", "On the green. That was the seven.", "7I"),
        (
            "140. Thought about the seven. Could even nine it.",
            "On the green. It was the eight in the end.",
            "8I",
        ),
        ("155. An eight if I flush it and a seven if I don't.", "On the green. Seven, by the way.", "7I"),
        (
            "112. Pitching wedge if I nail it, nine if I'm gentle.",
            "Over the back, long grass. The nine, obviously.",
            "9I",
        ),
        (
            "240. Hybrid's safe, three wood could reach it.",
            "Into the bunker. Three wood, since you asked.",
            "3W",
        ),
        (
            "172. Five iron will get tangled, a seven can't reach.",
            "Short, on the fairway. It was the seven.",
            "7I",
        ),
        # Taken before it was struck.
        ("155. It's the seven or the eight, no, seven it is.", "Onto the green.", "7I"),
        ("155. Thought about six, took seven.", "Onto the green.", "7I"),
        (
            "155. Six is too much, eight isn't enough, so seven iron rather than eight.",
            "Onto the green.",
            "7I",
        ),
        ("150. Could be a seven.", "Onto the green.", "7I"),
        # Weighed in several breaths.
        (
            "Five wood from here, or hybrid, or a seven. Five wood, six iron. Six iron.",
            "Up the fairway.",
            "6I",
        ),
        ("Driver is lunacy. Three wood is not much better. I took the five wood.", "Into the rough.", "5W"),
        ("90. 52, 56, or trundle the nine along. I'll have the 56.", "Onto the green.", "56"),
        ("155. I wanted the seven iron, and we met with the eight.", "Onto the green.", "8I"),
        # Nobody says which.
        (
            "188. Can't get there with a five iron. The hybrid might, the five wood would.",
            "Greenside bunker, right.",
            "",
        ),
        ("155. Six iron, or the seven iron?", "On the green. Not telling you which.", ""),
        # Where it would land is not where it lies.
        (
            "210. Hybrid's too much, it's in those bunkers, five iron's on the limit, six is sensible.",
            "Back on the fairway. The six, that was.",
            "6I",
        ),
        (
            "210. Hybrid's too much. It's in those bunkers. Five irons on the limit. Six is sensible.",
            "Run along the fairway a fair bit. The six, that was.",
            "6I",
        ),
    ],
)
def test_of_clubs_weighed_the_one_taken_counts(weighed: str, told: str, club: str) -> None:
    after = "" if "green" in told else "Chipped on."
    played = reason(transcript([GREETING, "", FOUR, weighed, told, after, "Two putts."]), Plan()).shots
    assert played[1].club == club
    assert played[1].result not in ("sand", "unknown") or "bunker" in told

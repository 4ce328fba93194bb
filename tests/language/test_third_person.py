"""A whole round told as of another: who "he" is."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript

_CALLED = ["He looks at it.", "He walks round it.", "He likes it, he really does."] * 6
""" "He" more often than a round needs in which the speaker tells of himself so."""


def moods(lines: list[str], kind: str) -> list[tuple[object, str]]:
    """Value and mood of what the last line tells."""
    talk = read_talk(transcript(lines), Plan())
    last = len(talk) - 1
    return [(m.value, m.mood) for m in talk[last].mentions if m.kind == kind]


@pytest.mark.parametrize(
    ("said", "kind", "told"),
    [
        ("He's pulling the six iron.", "club", [("6I", "")]),
        ("And he's got the driver in those big old hands.", "club", [("D", "")]),
        ("Oh, he tops the driver!", "contact", [("topped", "")]),
        ("He takes the eight, and it's on.", "club", [("8I", "")]),
        # A partner who is named is the one meant by what follows.
        ("Marv hit his, and he's in the bunker.", "place", [("sand", "other")]),
    ],
)
def test_he_is_the_one_who_speaks_where_nobody_says_i(
    said: str, kind: str, told: list[tuple[object, str]]
) -> None:
    assert moods([*_CALLED, said], kind) == told


_COACHED = ["You look at it.", "You walk round it.", "You like it, you really do."] * 6


@pytest.mark.parametrize(
    ("said", "kind", "told"),
    [
        ("You take the six iron, and you're on, but you're at the back.", "place", [("green", "")]),
        ("You've got one sixty left.", "distance", [(160, "togo")]),
    ],
)
def test_you_are_the_one_who_speaks_where_nobody_says_i(
    said: str, kind: str, told: list[tuple[object, str]]
) -> None:
    assert moods([*_COACHED, said], kind) == told


def test_he_is_another_where_i_play_too() -> None:
    mine = ["I look at it, and I like it.", "I walk round it."] * 7
    assert moods([*_CALLED, *mine, "He's pulling the six iron."], "club") == [("6I", "other")]
    assert moods(["He's pulling the six iron."], "club") == [("6I", "other")]

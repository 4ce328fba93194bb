"""Where the hook of a left-handed speaker goes: common practice of the game, no source."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript


def side(first: str, told: str) -> object:
    talk = read_talk(transcript([first, told]), Plan())
    return next(mention.value for mention in talk[-1].mentions if mention.kind == "miss")


@pytest.mark.parametrize(
    ("first", "told", "wanted"),
    [
        ("I play left-handed, same as my dad.", "Hooked it into the rough.", "right"),
        ("You'll see I'm a lefty.", "Sliced the driver.", "left"),
        ("For a lefty it's a fine hole.", "Pushed it.", "left"),
        # What names the side says where it went.
        ("I play left-handed, same as my dad.", "Driver, and it's gone left.", "left"),
        # Another's hand, and a bunker on that side.
        ("My mate's a lefty.", "Hooked it into the rough.", "left"),
        ("For left-hand bunkers they have a nice rake.", "Hooked it into the rough.", "left"),
    ],
)
def test_curves_go_by_the_hand_of_the_speaker(first: str, told: str, wanted: str) -> None:
    assert side(first, told) == wanted

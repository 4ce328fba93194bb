"""What is done but once on a hole: narrations invented here, and how often it is done again."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest

from reviewkit.holes.again import agains
from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (["7 iron onto the green.", "12 feet.", "Two putts."], [0, 0]),
        # Behind the end a ball is struck, behind the green from afar.
        (["7 iron onto the green.", "Two putts for par.", "Gap wedge, up and over."], [1, 0]),
        (["7 iron onto the green.", "12 feet, and he says it's given.", "Driver, down the left."], [0, 1]),
        (["7 iron onto the green.", "Tapped in.", "512 from here, and driver."], [1, 1]),
        # Where the end is told first, nothing has been played.
        (["Holed it from 12 feet for bogey.", "Driver, and I'd 150 left.", "8 iron to the green."], [0, 0]),
        (["I make that three over.", "Driver on the fairway."], [0, 0]),
        # A length told behind its stroke.
        (["8 iron, half a swing.", "That's on, 25 feet short.", "127, that was.", "Two putts."], [0, 0]),
        # A chip from beside the green.
        (["8 iron, on the green and off it.", "Sand wedge to six feet.", "In the hole."], [0, 0]),
    ],
)
def test_a_swing_behind_the_end_or_a_long_one_behind_the_green_begins_anew(
    lines: Sequence[str], expected: list[int]
) -> None:
    talk = read_talk(transcript(lines), Plan())
    told = [again.tell(np.array([0]), np.array([len(talk)]))[0] / again.odds for again in agains(talk)]
    assert told == expected

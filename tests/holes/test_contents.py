"""What a stretch of talk tells of one hole, by invented narrations."""

from __future__ import annotations

import numpy as np
import pytest

from reviewkit.holes.contents import Contents
from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript

TALE = ["Driver on the fairway.", "8 iron, on the green."]


def tells(lines: list[str]) -> float:
    talk = read_talk(transcript(lines), Plan())
    return float(Contents(talk).tell(np.array([0]), np.array([len(talk)]))[0])


@pytest.mark.parametrize("total", ["And that's still two over.", "That leaves me one under."])
def test_a_total_ends_a_hole_only_behind_a_swing(total: str) -> None:
    assert tells([*TALE, total]) > tells([total, *TALE])


def test_a_ball_that_is_further_away_than_before_is_on_another_hole() -> None:
    far, near = "154 left. 6 iron, on the green.", "92 left. 52 degree, on the green."
    assert tells([*TALE, near, far]) < tells([*TALE, far, near])
    talk = read_talk(transcript([*TALE, near, far]), Plan())
    begun = next(at for at, said in enumerate(talk) if said.text.startswith("154"))
    told = Contents(talk).tell(np.array([begun]), np.array([len(talk)]))
    assert float(told[0]) == pytest.approx(tells([far]))


def test_a_par_with_its_length_behind_three_strokes_is_another_holes() -> None:
    tale = ["Driver in the rough.", "Gap wedge, through the green.", "Lob wedge, on the green."]
    introduced, idle = "So this par 3 is 142.", "So this is fun."
    assert tells([*tale, introduced]) < tells([*tale, idle]) - 1.0
    assert tells([introduced, *tale]) >= tells([idle, *tale])
    assert tells([*tale[:2], introduced]) == pytest.approx(tells([*tale[:2], idle]))

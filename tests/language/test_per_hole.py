"""A hole's score and the round's, told in one breath with the same words."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("lines", "hole", "round_"),
    [
        (["Tapped in. Plus one, and the balance stood at plus five with three to play."], [1], [5]),
        (["A three-putt, a plus two, and a total of plus seven."], [2], [7]),
        (["Holed for minus one. Call it plus four through seven."], [-1], [4]),
        # With the habit, or far from the standing told before, one figure will do.
        (["In. Plus one, plus six with two to play.", "Tapped in. Plus one."], [1, 1], [6]),
        # Two standings.
        (["So we went from plus three to plus five."], [], [5]),
        (["I was plus one, and now I'm plus three."], [], [1, 3]),
        (["Bogey. Plus three.", "Birdie, plus two."], [], [3, 2]),
    ],
)
def test_a_small_figure_before_the_standing_is_the_holes(
    lines: list[str], hole: list[int], round_: list[int]
) -> None:
    mentions = [m for said in read_talk(transcript(lines), Plan()) for m in said.mentions]
    assert [m.value for m in mentions if m.kind == "hole_to_par"] == hole
    assert [m.value for m in mentions if m.kind == "running"] == round_

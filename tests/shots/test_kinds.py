"""What sort of stroke it was, out of a fairway's sand and elsewhere."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

KINDS = {
    "out of a fairway bunker, and no further than the fairway": (
        ["Driver, into the fairway bunker.", "9 iron out to the fairway.", "120 left, 8 iron on the green."],
        ["tee", "layup", "approach"],
    ),
    "as much told with what was left": (
        [
            "Driver, into the fairway bunker.",
            "291 remained, so a 9 iron to the fairway.",
            "158 left, 7 iron on the green.",
        ],
        ["tee", "layup", "approach"],
    ),
    "out of one onto the green": (
        ["Driver, into the fairway bunker.", "150 left, 7 iron, on the green."],
        ["tee", "approach"],
    ),
    "one that cannot reach, by the words": (
        [
            "Driver, in the fairway.",
            "I'm 190 out, which I don't reach. 4 hybrid, in the fairway.",
            "60 left, sand wedge, on the green.",
        ],
        ["tee", "layup", "approach"],
    ),
    "sand by the green": (
        [
            "Driver, in the fairway.",
            "140 left, 8 iron into the greenside bunker.",
            "Splashed out onto the green.",
        ],
        ["tee", "approach", "bunker"],
    ),
}


@pytest.mark.parametrize(("lines", "expected"), KINDS.values(), ids=KINDS)
def test_a_stroke_is_of_its_kind(lines: list[str], expected: list[str]) -> None:
    told = [GREETING, "", "Hole one, a par five, 520 yards.", *lines, "Two putts."]
    kinds = [shot.kind for shot in reason(transcript(told), Plan()).shots]
    assert kinds == [*expected, "putt", "putt"]

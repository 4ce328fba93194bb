"""What sort of stroke it was, out of a fairway's sand and elsewhere."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

KINDS = {
    "out of a fairway bunker, and no further than the fairway": (
        ["Driver, into the fairway bunker.", "9 iron out to the fairway.", "120 left, 8 iron on the green."],
        ["tee", "recovery", "approach"],
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
    "kept low with a wedge from by the green": (
        [
            "Driver, in the fairway.",
            "140 left, 8 iron over the back, in the rough.",
            "52, low one, run it up, on the green.",
        ],
        ["tee", "approach", "chip"],
    ),
    "putted, whatever another calls for": (
        [
            "Driver, in the fairway.",
            "8 iron, on the fringe.",
            "I'm putting this. She says chip it. Eight feet.",
        ],
        ["tee", "approach", "putt"],
    ),
    "putted, with words of a chip": (
        [
            "Driver, in the fairway.",
            "8 iron, on the fringe.",
            "Putter, a bit of a nudge, down to eight feet.",
        ],
        ["tee", "approach", "putt"],
    ),
    "putted, after all": (
        [
            "Driver, in the fairway.",
            "8 iron, on the fringe.",
            "I was going to chip this with the 56. She says putt it, so I'm putting it, nine yards.",
        ],
        ["tee", "approach", "putt"],
    ),
    "chipped, after all": (
        ["Driver, in the fairway.", "8 iron, on the fringe.", "Putter. No, chip with the 56. Eight feet."],
        ["tee", "approach", "chip"],
    ),
    "sand of which nobody told, by its club and how little the other stroke told": (
        ["Driver, in the fairway.", "140 left, 8 iron.", "Sand wedge, one attempt, on the green."],
        ["tee", "approach", "bunker"],
    ),
    "sand of which nobody told, by the next stroke out of it": (
        [
            "Driver, in the fairway.",
            "140 left, 8 iron, left of the green.",
            "Sand wedge. Hit the face and rolled back to my feet.",
            "And it's out, on the green.",
        ],
        ["tee", "approach", "bunker", "bunker"],
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

"""One ball told of twice, endings shared by several strokes, and words that point back."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

TALES = {
    "where it lies, said again before it is struck": (
        [
            "Driver, in the fairway. 112, nine iron, thinned it, into the sand at the back.",
            "Down in the bunker. Sand wedge, it's out, and it's on. Two putts for a five.",
        ],
        ["fairway", "sand", "green", "green", "holed"],
    ),
    "where it lies, said again with the count of strokes": (
        [
            "Driver, in the water. Drop, playing three. 5 wood, in the rough. Wedge, into the front bunker.",
            "I'm lying four and I'm in a bunker. The 60. It's out, on the green. Two putts for a seven.",
        ],
        ["penalty", "rough", "sand", "green", "green", "holed"],
    ),
    "where it lies, said again behind another's stroke": (
        [
            "Driver, in the fairway. 130, nine iron, it's in that sand by the green.",
            "Oh, he hit it stiff. That's three feet! Okay, fist bump.",
            "My turn in the beach. I just hit sand and close my eyes. On the green, two feet. And it's in.",
        ],
        ["fairway", "sand", "green", "holed"],
    ),
    "a bunker that was not got out of is told again, and is another stroke": (
        [
            "Driver, in the fairway. 112, nine iron, into the sand at the back.",
            "Sand wedge, still in the bunker. Sand wedge again, it's on. Two putts for a six.",
        ],
        ["fairway", "sand", "sand", "green", "green", "holed"],
    ),
    "a putt missed, and in the next breath how": (
        [
            "Driver, in the fairway. Gap wedge, on, five metres away.",
            "Had a look at it. Went by on the right. Tapped in for a four.",
        ],
        ["fairway", "green", "green", "holed"],
    ),
    "a putt that caught the edge and fell": (
        [
            "Driver, in the fairway. Eight iron, in the rough behind the green. Chipped it to four feet.",
            "It caught the left side, it thought about the matter, and it fell in. A four.",
        ],
        ["fairway", "rough", "green", "holed"],
    ),
    "up and down, said behind the putt": (
        [
            "Driver, in the fairway. Seven iron, over the back, in the rough.",
            "The 56, out to a metre. One point two, and it's in the middle. Four. Up and down, don't tell.",
        ],
        ["fairway", "rough", "green", "holed"],
    ),
    "the same club as elsewhere, and which": (
        [
            "Driver, in the fairway. 138 left, the same number as the seventh, so the same club.",
            "The 8 iron, then, and it went into the rough. Chipped to four feet. Holed it for a four.",
        ],
        ["fairway", "rough", "green", "holed"],
    ),
    "sand that others knew": (
        [
            "Driver, into the fairway bunker. My dog dug in that bunker once.",
            "Eight iron, out to the fairway. Pitching wedge, on. I spend more time in the sand than he did.",
            "Two putts for a five.",
        ],
        ["sand", "fairway", "green", "green", "holed"],
    ),
    "told to clear it": (
        ["Three wood. Go, go, go over the wall, go. It's on the fairway. Wedge on. Two putts for a four."],
        ["fairway", "green", "green", "holed"],
    ),
    "a ball that came back off the bank, and a putt's length behind it": (
        [
            "Driver, in the fairway. Gap wedge, it hit the bank and came back. Five feet.",
            "The putt was made. A birdie.",
        ],
        ["fairway", "green", "holed"],
    ),
    "in there, and then where": (
        [
            "Driver, in the fairway. There's a trap on the right. 5 wood. Yep, it's in there.",
            "Never moved, right-hand bunker. Out with the 56, stone dead, tapped it in.",
        ],
        ["fairway", "sand", "green", "holed"],
    ),
    "a ball that only seemed to be in": (
        ["Driver, in the fairway. Wedge, on the green. That's in. It's not in. Tapped it in for a four."],
        ["fairway", "green", "green", "holed"],
    ),
    "a ball that was in, and out again": (
        [
            "Driver, in the fairway. Gap wedge, on the green, ten feet.",
            "It's in! It's out. How's that out. Tapped it in for a four.",
        ],
        ["fairway", "green", "green", "holed"],
    ),
    "a ball told to go in that did not": (
        [
            "Driver, in the fairway. Wedge, on the green. Twelve feet for par.",
            "Get in, get in, no! Tapped it in for a four.",
        ],
        ["fairway", "green", "green", "holed"],
    ),
    "out of bounds, it seemed, and told in two ways": (
        [
            "Driver, that's gone over the wall, out of bounds.",
            "No, hang on, it hit a branch. So it's in the trees. Six iron, out to the fairway.",
            "Wedge on the green. Two putts for a five.",
        ],
        ["trees", "fairway", "green", "green", "holed"],
    ),
    "another's ball in the pond": (
        [
            "Only a hundred and ten to the pin. Plop. And he's reloading. Oh dear.",
            "So nine iron, on the green. Two putts for a three.",
        ],
        ["green", "green", "holed"],
    ),
    "wonder at a putt is no putt": (
        ["Driver, in the fairway. Wedge, on the green.", "Lipped out! How's that not dropped? Tapped it in."],
        ["fairway", "green", "green", "holed"],
    ),
    "one ending for all": (
        [
            "Driver, five wood, seven iron, every one of them on the fairway. Wedge on the green.",
            "Two putts for a six.",
        ],
        ["fairway", "fairway", "fairway", "green", "green", "holed"],
    ),
    "all the way, and no more than one": (
        [
            "Driver, in the rough. Seven iron short of the green.",
            "Chip, didn't make it up the bank, did it, came all the way back down to my shoes.",
            "Chip on the green. Two putts for a six.",
        ],
        ["rough", "rough", "unknown", "green", "green", "holed"],
    ),
    "a hazard named before": (
        [
            "There's a bunker at one fifty on the left. Three wood, and that is where that finished.",
            "Out sideways, fairway. Wedge on the green. Two putts for a five.",
        ],
        ["sand", "fairway", "green", "green", "holed"],
    ),
    "told in, and lying elsewhere": (
        [
            "Driver, in the fairway. Three wood, just a worm burner, tucked in, but it's still fairway.",
            "Wedge on the green. Two putts for a five.",
        ],
        ["fairway", "fairway", "green", "green", "holed"],
    ),
    "bound for sand, and in": (
        [
            "Driver, pushed it. It's rolling towards that fairway bunker and it's in.",
            "Nine iron, on. Two putts.",
        ],
        ["sand", "green", "green", "holed"],
    ),
    "a putter from the fairway": (
        [
            "Driver, in the fairway. Three wood, stopped in the fairway short of the green.",
            "Putter from there, sixty feet, and it finished four feet past. Knocked it in for a four.",
        ],
        ["fairway", "fairway", "green", "holed"],
    ),
    "water that it stayed out of": (
        ["Eight iron. It didn't go in the pond! It went in the sand. Sand wedge, on. Two putts for a four."],
        ["sand", "green", "green", "holed"],
    ),
}


@pytest.mark.parametrize(("lines", "results"), TALES.values(), ids=TALES)
def test_each_ball_is_told_of_once(lines: Sequence[str], results: Sequence[str]) -> None:
    par = "three" if "pond" in lines[0] or "Plop" in lines[0] else "four"
    shots = reason(transcript([GREETING, "", f"Hole one, a par {par}.", *lines]), Plan()).shots
    assert [shot.result for shot in shots] == results


def test_the_same_words_once_more_in_one_breath_tell_of_one_putt() -> None:
    opening = "Hole one, a par four. Driver, fairway. 9 iron on the green. 3 metres right of the pin."
    once, twice = (
        reason(transcript([GREETING, "", opening, said, "Hole two, a par four. Driver."]), Plan()).scores[0]
        for said in ("I missed it.", "I missed it, I missed it.")
    )
    assert (once.strokes, once.confidence) == (twice.strokes, twice.confidence)

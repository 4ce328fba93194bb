"""Where the words of a landing end and those of the first putt begin."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

ON = [GREETING, "", "Hole one, a par four.", "Driver in the fairway."]
TOLD = {
    "a putt's side in the breath of its length": (
        [
            "8 iron into the rough.",
            "Chip with the 56, and I got nine feet, hushed it, I just knew it was going right as I hit it.",
            "Two putts.",
        ],
        ["", "", "", "right", ""],
    ),
    "a length told again": (
        ["Wedge, on the green, five feet away, five feet, and it was never anything but missing left."],
        ["", "", "left", ""],
    ),
    "missed it, and no breath in between": (
        ["Wedge on, I've left myself six feet missed it right never frightened the hole. Tapped in."],
        ["", "", "right", ""],
    ),
    "a putt, and no length before it": (
        [
            "8 iron into the bunker.",
            "Sand wedge, and that's come out soft.",
            "Thought this putt was in, it stayed out on the right.",
            "So a five, one over.",
        ],
        ["", "", "", "right", ""],
    ),
    "struck, and that was no bunker shot": (
        ["8 iron into the bunker.", "It's some, fourteen feet.", "I needed that and missed it on the left."],
        ["", "", "", "left", ""],
    ),
    "near the hole came the putt": (
        ["Wedge, a touch long, on the green.", "Twenty feet.", "Stopped shy of the hole, gimme range. Par."],
        ["", "long", "short", ""],
    ),
    "where it lies, told around a side": (
        [
            "8 iron, it's on the collar.",
            "Just off the front.",
            "That's the fringe.",
            "Putter, nine metres. Tapped in.",
        ],
        ["", "short", "", ""],
    ),
    "what was left for a pitch, and where it lies": (
        [
            "5 wood, in the rough.",
            "A little pitch, 20 yards, up the bank.",
            "It's bitten. It's five feet shy of the hole.",
            "Two putts.",
        ],
        ["", "", "short", "", ""],
    ),
    "where a fringe is, then the putter's own side": (
        [
            "8 iron, it's on the fringe at the back.",
            "Two yards past.",
            "Putter, 26 feet to the cup.",
            "It's stopped. Six inches to the left of the hole.",
            "Tapped in.",
        ],
        ["", "long", "left", ""],
    ),
    "one putt short, with a side heard between": (
        [
            "Wedge, on the green, ten feet.",
            "It didn't get there. Dies on the left, short by one turn.",
            "Tapped in.",
        ],
        ["", "", "short", ""],
    ),
    "which fringe it is": (
        ["8 iron, it's sitting on the fringe.", "Just in front.", "Putter. Five feet past. Holed it."],
        ["", "short", "long", ""],
    ),
    "topped along the fairway": (
        ["5 iron, topped it, it went about sixty yards, fairway.", "8 iron onto the green.", "Two putts."],
        ["", "", "", "", ""],
    ),
    "two putts missed in one breath": (
        [
            "Wedge, on the green.",
            "Forty feet, left it five feet short, then missed the five on the right.",
            "So a five, one over.",
        ],
        ["", "", "short", "right", ""],
    ),
    "a side told behind the next breath": (
        [
            "Wedge, on the green.",
            "Died eight feet short.",
            "Missed the eight footer.",
            "On the right.",
            "Three putts.",
        ],
        ["", "", "short", "right", ""],
    ),
    "slipped by, of what nobody understood": (
        [
            "Wedge, on the green.",
            "Two metres short.",
            "Second go, and it slipped by the left neck.",
            "So a five, one over.",
        ],
        ["", "", "short", "left", ""],
    ),
    "gone by, and on which side": (
        ["Wedge, on the green.", "Seven metres, and it's gone by along the right, half a metre. Tapped in."],
        ["", "", "right", ""],
    ),
    "short, out of the rough": (
        [
            "5 iron, in the rough short of the green.",
            "Chip, didn't make it up the bank, came all the way back down to my shoes.",
            "Same club. Stopped four feet from the hole. Holed it.",
        ],
        ["", "short", "short", "", ""],
    ),
    "out of the sand that is no miss": (
        [
            "5 iron, in the bunker.",
            "Sand wedge, didn't make it up the bank, still in the bunker.",
            "Same again, four feet. Holed it.",
        ],
        ["", "", "", "", ""],
    ),
    "a chip thought of, and rued": (
        [
            "Wedge, it's on the fringe.",
            "I was going to chip this with the 56. So I'm putting it, nine metres.",
            "Should've chipped it. Three metres short. Holed the next.",
        ],
        ["", "", "short", ""],
    ),
    "lay there, and struck on in the same breath": (
        [
            "Wedge, on the green, about 15 feet, and then I tried so hard that I knocked at 4 feet by,"
            " and then I holed the 4 footer coming back."
        ],
        ["", "", "long", ""],
    ),
    "dead in the water, and by how much": (
        [
            "8 iron, it's wet. It hit the bank and rolled back in, it was one yard short.",
            "Drop, so that's four, 45 yards, 56, seven foot. In!",
        ],
        ["", "short", "", ""],
    ),
    "two sides in one breath, each its own": (
        [
            "5 wood, rough to the left, 30 short, 30 yards out, as I said, sand wedge, too strong, back of"
            " the green.",
            "22 feet. Holed it.",
        ],
        ["", "left", "long", ""],
    ),
    "short, of what nobody understood": (
        [
            "Wedge, on the green.",
            "50 feet. It looked there. It wasn't by short.",
            "Five feet, in.",
        ],
        ["", "", "short", ""],
    ),
    "hoped, and out": (
        [
            "5 iron, in the bunker.",
            "Sand wedge, open it up and hope out 15 feet past but out.",
            "The putt stayed up on the high side, left bobe 4, that one's rolled in.",
        ],
        ["", "", "long", "left", ""],
    ),
    "pushed it, which is not of it": (
        ["Wedge, on the green, 20 feet.", "Pushed it a hair. Tap in. Four."],
        ["", "", "right", ""],
    ),
    "sailed by the hole": (
        ["Wedge, on the green, 20 feet.", "It went sailing by the hole. Tap in. Four."],
        ["", "", "long", ""],
    ),
    "near enough to kick in, a putt later": (
        [
            "Wedge, right of the green, in the rough.",
            "18 yards, 54, and the lie 8 at 12 feet short.",
            "From 12 feet I make 31 percent. This was one of the others, both side, left, kick in, five.",
        ],
        ["", "right", "short", "left", ""],
    ),
    "weight is not where it went": (
        [
            "Chip, and it was good weight, but it wandered off to the left, so I've got 4 feet.",
            "Holed it for a three.",
        ],
        ["", "left", ""],
    ),
}


@pytest.mark.parametrize(("lines", "expected"), TOLD.values(), ids=TOLD)
def test_a_side_is_the_landings_or_the_putts(lines: list[str], expected: list[str]) -> None:
    assert [shot.miss for shot in reason(transcript([*ON, *lines]), Plan()).shots] == expected

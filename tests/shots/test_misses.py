"""Which way a stroke missed and which club it was played with, where several are told."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

OPENING = [GREETING, "", "Hole one, a par four."]
PUTTED = "Two putts for par."
MISSES = {
    "a side of the fairway is none": (
        ["Driver, left side of the fairway.", "8 iron onto the green.", PUTTED],
        ["", "", "", ""],
    ),
    "an approach that stops in the fairway is short": (
        [
            "Driver in the fairway.",
            "170 left, 5 iron, on the fairway, 30 yards short of the green.",
            "Chip onto the green to four feet.",
            "Holed it.",
        ],
        ["", "short", "", ""],
    ),
    "right up into it is no side": (
        [
            "Hit a cracker with the driver. It's ran right up into that bunker.",
            "8 iron, on the green.",
            PUTTED,
        ],
        ["", "", "", ""],
    ),
    "the right answer is no side": (
        ["Off with the driver, knowing the right answer, rough.", "8 iron, on the green.", PUTTED],
        ["", "", "", ""],
    ),
    "where the ball lay on the green": (
        ["Driver in the fairway.", "8 iron, and it's on.", "Thirty feet short of the flag.", PUTTED],
        ["", "short", "", ""],
    ),
    "where it landed, and where it ended": (
        [
            "Driver in the fairway.",
            "7 iron, it landed five short, so twelve feet past, on the green.",
            "Missed.",
            "Left edge.",
            "I had that in.",
            "Tapped in.",
        ],
        ["", "long", "left", ""],
    ),
    "cheered in, but on the green behind the flag": (
        [
            "Driver in the fairway.",
            "92, the gap wedge. Oh, get in! Not in, but it's spun round behind the flag, it's on the green.",
            "Two metres. And in for the birdie.",
        ],
        ["", "long", ""],
    ),
    "in one breath what a putt left, and the putt of that length": (
        [
            "Driver in the fairway.",
            "9 iron, on the green, thirty feet.",
            "Too cautious with it. Six feet short, the six-footer I struck well and it stayed above ground.",
            "Tapped in. So that was a five.",
        ],
        ["", "", "short", "", ""],
    ),
    "a bunker, told again with its side": (
        [
            "Driver in the fairway.",
            "140, 8 iron. Bunker. Right-hand bunker.",
            "Out in one, on the green.",
            "Two putts for a five.",
        ],
        ["", "right", "", "", ""],
    ),
    "a side told behind the sand, before it is got out of twice": (
        [
            "Driver in the fairway.",
            "150, 7 iron, pitched in the sand. Right of the green.",
            "First dig. Still in there.",
            "Second dig, out, on the green.",
            "Two putts for a six.",
        ],
        ["", "right", "", "", "", ""],
    ),
    "a side put right at once": (
        [
            "Driver in the fairway.",
            "150, 7 iron, on the green.",
            "20 feet. It stayed out on the left, excuse me, on the right.",
            "Tapped in for a par.",
        ],
        ["", "", "right", ""],
    ),
    "where it lies, and then the putt": (
        [
            "Driver in the fairway.",
            "95, gap wedge.",
            "Green. Nine feet past.",
            "Birdie putt, missed it left.",
            "Tapped in.",
        ],
        ["", "long", "left", ""],
    ),
    "right inside a bush is no side": (
        [
            "Driver in the fairway.",
            "5 iron, in the gorse, it's right inside it, so that's unplayable, and a penalty shot.",
            "Drop. Sand wedge, on the green.",
            "Two putts.",
        ],
        ["", "", "", "", ""],
    ),
    "where the ball lay, told behind its length": (
        ["Driver in the fairway.", "8 iron, it's on, I'm about twenty feet away.", "Left of it.", PUTTED],
        ["", "left", "", ""],
    ),
    "pulled into the water, told behind the splash": (
        [
            "Driver in the fairway.",
            "5 wood. Plop. I've pulled it left, and there's a moorhen giving me a look.",
            "So I've dropped one, with the penalty, from 154.",
            "5 iron, it's gone over the back into the rough.",
            "Chip to six feet.",
            "Two putts.",
        ],
        ["", "left", "long", "", "", ""],
    ),
    "further than intended, which is no plan": (
        [
            "Driver in the fairway.",
            "Chipped it, and it ran on further than intended to nine feet beyond.",
            PUTTED,
        ],
        ["", "long", "", ""],
    ),
    "not going to get there": (
        [
            "Driver in the fairway.",
            "3 wood, no, it's not gonna get there short of the green in the rough.",
            "Chip on.",
            "Two putts for five.",
        ],
        ["", "short", "", "", ""],
    ),
    "on the far edge of the green, and then putted": (
        [
            "Driver in the fairway.",
            "5 hybrid, it held the green.",
            "Hanging on to the far left edge.",
            "Forty feet, two putts.",
        ],
        ["", "left", "", ""],
    ),
    "onto the green with the putter, and another that missed": (
        [
            "Driver in the fairway.",
            "5 hybrid, it's pulled up on the fringe.",
            "I putt it from off the green. It's on, and it's got to within eight feet.",
            "Missed it on the right.",
            "Tap. Five!",
        ],
        ["", "", "", "right", ""],
    ),
    "over the pond, and the bunker's side in the next breath": (
        [
            "It's one sixty over the pond.",
            "Seven iron. It's carrying. It's over.",
            "It's in the bunker though.",
            "Right hand one.",
            "It's like hitting off a driveway.",
            "Sand wedge, five feet. In. Three.",
        ],
        ["right", "", ""],
    ),
    "how it was struck, and the side again": (
        [
            "Driver in the fairway.",
            "131, nine iron. Tugged it, missed the green on the left.",
            "Short sided, so out came the lob wedge, popped it up to six feet.",
            "Two putts for five.",
        ],
        ["", "left", "", "", ""],
    ),
    "a par 4 driven at can be missed short": (
        [
            "It's only 290. Driver.",
            "It's just short of the green, it's in the light rough.",
            "Chip to three feet.",
            "Three feet, made it. Three.",
        ],
        ["short", "", ""],
    ),
    "a call to the ball is no stroke, nor how long something is": (
        [
            "Driver in the fairway.",
            "6 iron. Up, up, get out. It's on.",
            "Our basement is 38 feet long, so I practised. Rolled it to two feet.",
            "Made it. Four.",
        ],
        ["", "", "", ""],
    ),
    "a saying is no putt": (
        [
            "Driver in the fairway.",
            "6 iron, on the green.",
            "He told me, never up, never in. So I've hit it too hard, it's gone way past.",
            "Coming back I've left it short. Tapped in. Five.",
        ],
        ["", "", "long", "short", ""],
    ),
    "right there is no side, and what was meant is no miss": (
        [
            "Driver in the fairway.",
            "8 iron, pitched past it on purpose, it's right there, ten feet.",
            "Two putts. Four.",
        ],
        ["", "", "", ""],
    ),
    "who was right, where it was aimed, and what is left over": (
        [
            "The plan's driver, a hair left of the oak.",
            "Everybody at home was right.",
            "It's in the fairway.",
            "8 iron, on the green, eleven feet left over for the birdie.",
            "Two putts.",
        ],
        ["", "", "", ""],
    ),
    "how the hole lies is none": (
        ["Marsh down the right, room on the left.", "Driver, in the rough.", "8 iron, and it's on.", PUTTED],
        ["", "", "", ""],
    ),
    "so far of the hole on the green": (
        ["Driver in the fairway.", "8 iron, and it's on the green.", "Seven feet left of the hole.", PUTTED],
        ["", "left", "", ""],
    ),
    "told between a ball in the water and its drop": (
        [
            "7 iron from 177.",
            "Splash.",
            "Two yards short.",
            "So I'm at the drop zone, hitting three, 95 to the flag.",
            "Gap wedge, on the green.",
            "Two putts for five.",
        ],
        ["short", "", "", ""],
    ),
    "told between a landing and the next stroke": (
        [
            "Driver in the fairway.",
            "8 iron, and it's in the rough.",
            "Ten yards short of the green.",
            "Chip onto the green to four feet.",
            "Holed it.",
        ],
        ["", "short", "", ""],
    ),
    "how far a putt stopped": (
        [
            "Driver in the fairway.",
            "8 iron onto the front of the green.",
            "Fifty feet, and I give it a rap, to about four feet short.",
            "Holed that, so two putts.",
        ],
        ["", "", "short", ""],
    ),
    "landing short to run on is none": (
        ["Driver in the fairway.", "8 iron, landed just short and ran onto the green.", PUTTED],
        ["", "", "", ""],
    ),
    "what the putt did after a sand shot": (
        [
            "Driver in the fairway.",
            "8 iron into the bunker on the left.",
            "Splashed it out to 15 feet.",
            "Missed it on the right.",
            "Tapped in.",
        ],
        ["", "left", "", "right", ""],
    ),
    "short of what a lay-up was to stay short of is none": (
        ["Driver in the fairway.", "Laid up short of the ditch with a 7 iron, fairway.", PUTTED],
        ["", "", "", ""],
    ),
    "a topped drive fell short of no target": (
        [
            "Driver, topped it, didn't get to the fairway, in the left rough.",
            "8 iron onto the green.",
            PUTTED,
        ],
        ["left", "", "", ""],
    ),
    "a stroke out of the trees that went too far": (
        [
            "Driver into the trees.",
            "Punched it out, too far, into the rough.",
            "8 iron onto the green.",
            "Two putts for five.",
        ],
        ["", "", "", "", ""],
    ),
    "an edge by itself, before a tap": (
        ["Driver in the fairway.", "8 iron, and it's on, 20 feet.", "Close. Left edge.", "Tapped it in."],
        ["", "", "left", ""],
    ),
    "an edge by itself is where it was aimed": (
        ["Driver in the fairway.", "8 iron, and it's on, 20 feet.", "Left edge. It's in. Birdie."],
        ["", "", ""],
    ),
    "one that never left the sand": (
        [
            "Driver in the fairway.",
            "8 iron into the bunker on the left.",
            "It moved about a yard, still in the sand.",
            "Splashed it out to 3 feet.",
            "Holed it.",
        ],
        ["", "left", "", "", ""],
    ),
    "right by itself, before trouble": (
        [
            "Driver in the fairway.",
            "5 iron, and I got all of it. Why's it curving? Right. Bunker.",
            "Splashed it out to three feet.",
            "Holed it.",
        ],
        ["", "right", "", ""],
    ),
    "the flag's place is none": (
        ["Driver in the fairway.", "The flag's on the left, so 8 iron, middle of the green.", PUTTED],
        ["", "", "", ""],
    ),
    "what was meant ends where something happened": (
        [
            "Driver in the fairway.",
            "I was aiming at the flag and pulled it into the left rough.",
            "Chip onto the green to four feet.",
            "Holed it.",
        ],
        ["", "left", "", ""],
    ),
    "fell short, hit fat": (
        ["Driver in the fairway.", "8 iron. Chunked it, in the rough.", "Chip onto the green.", "Two putts."],
        ["", "short", "", "", ""],
    ),
    "a fat drive is short of nothing": (
        ["Driver. Chunked it, in the rough.", "8 iron onto the green.", PUTTED],
        ["", "", "", ""],
    ),
    "a side in misheard words": (
        ["Driver. Ended up in the left room.", "150, 8 iron onto the green.", PUTTED],
        ["left", "", "", ""],
    ),
    "a side between stops": (
        ["Driver. It's in the rough, miles left, wherever that is.", "150, 8 iron onto the green.", PUTTED],
        ["left", "", "", ""],
    ),
    "what is left, and all right, are no sides": (
        ["Driver, in the rough, it's all right there.", "150 left, 8 iron onto the green.", PUTTED],
        ["", "", "", ""],
    ),
    "right by itself behind the low side": (
        ["Driver in the fairway.", "8 iron onto the green.", "Low side.", "Right.", "Tapped in."],
        ["", "", "right", ""],
    ),
    "a putt pushed in is pushed nowhere": (
        [
            "Driver in the fairway.",
            "8 iron onto the green.",
            "Six metres, stopped a hand away.",
            "Pushed it in.",
        ],
        ["", "", "", ""],
    ),
    "no splash, and then there was one": (
        [
            "Driver in the fairway.",
            "165, 6 iron, and it's flying. No splash.",
            "So there was a splash. It was short. It's in the pond.",
            "Dropped one, pitching wedge onto the green.",
            "Two putts.",
        ],
        ["", "short", "", "", ""],
    ),
    "a putt bewailed twice": (
        [
            "Driver in the fairway.",
            "8 iron onto the green, nine feet.",
            "For a birdie, and I left it short. I left it short!",
            "Tapped in.",
        ],
        ["", "", "short", ""],
    ),
    "a putt's miss said, then where it went": (
        [
            "Driver in the fairway.",
            "8 iron onto the green, nine feet.",
            "It's missed.",
            "It's missed on the right, I never scared it.",
            "Tapped in.",
        ],
        ["", "", "right", ""],
    ),
    "how the land lies": (
        ["The flax is on the left.", "Driver, in the rough.", "8 iron onto the green.", PUTTED],
        ["", "", "", ""],
    ),
    "another's ball, told first": (
        [
            "Driver in the fairway.",
            "8 iron, on the green, a little past, it's 30 feet.",
            "It's in the bunker. Well, he's in the bunker.",
            PUTTED,
        ],
        ["", "long", "", ""],
    ),
    "a putt told by what it was from": (
        [
            "Driver in the fairway.",
            "8 iron from 150, on the green, five metres.",
            "I left the five-metre one short on the lip, and tapped it in.",
        ],
        ["", "", "short", ""],
    ),
    "a ball called she": (
        [
            "Driver in the fairway.",
            "8 iron, in the bunker.",
            "Sand wedge, out she comes, on the green, miles past the pin.",
            "Two putts.",
        ],
        ["", "", "long", "", ""],
    ),
}
CLUBS = {
    "talked of": (["I took 3 wood because I couldn't grip the driver, fairway."], "3W"),
    "its number": (["The fairway pinches in at the driver number, so 3 wood.", "Fairway."], "3W"),
    "weighed": (["I had the driver out, put it back, 3 wood, fairway."], "3W"),
    "another player's": (["My mate hit driver, I hit 3 wood down the middle."], "3W"),
    "another player's, by name": (["Ned hit 5 wood. Ned, driver, middle. Me, 3 wood, fairway."], "3W"),
    "advice not taken": (["Ned hit driver. Driver, he says. 3 wood, just up the fairway."], "3W"),
    "another day's": (["I hit driver here last week, so it's the 3 wood, fairway."], "3W"),
    "put right, before it is meant": (
        ["My notion was the 4 hybrid. But no, I'm going to hit 3 wood.", "It's down in that bunker."],
        "3W",
    ),
    "the only one named": (["My 3 wood carries 235, and it did, fairway."], "3W"),
    "gone left with it": (["It's gone left, driver, in the rough."], "D"),
}


@pytest.mark.parametrize(("lines", "expected"), MISSES.values(), ids=MISSES)
def test_a_miss_goes_to_the_stroke_it_befell(lines: list[str], expected: list[str]) -> None:
    assert [shot.miss for shot in reason(transcript([*OPENING, *lines]), Plan()).shots] == expected


def test_a_tee_shot_meant_for_the_green_that_stops_in_front_is_short() -> None:
    told = "7 iron, it's straight, it's a bit short, it's on the fairway."
    lines = [GREETING, "", "Hole one, a par three, 118.", told, "Chip onto the green.", "Two putts."]
    tee = reason(transcript(lines), Plan()).shots[0]
    assert (tee.result, tee.miss) == ("fairway", "short")


@pytest.mark.parametrize(("lines", "club"), CLUBS.values(), ids=CLUBS)
def test_the_club_is_the_one_played(lines: list[str], club: str) -> None:
    told = [*OPENING, *lines, "150 left, 8 iron onto the green.", PUTTED]
    shots = reason(transcript(told), Plan()).shots
    assert [shot.club for shot in shots] == [club, "8I", "", ""]


def test_a_drive_chipped_on_from_the_rough_before_the_green_was_short() -> None:
    told = "3 wood. Landed it too short. It's in the rough just before the green. Chip with the 60, two feet."
    lines = [GREETING, "", "Hole one, a par four, 296 yards.", told, "Tapped in for a birdie."]
    assert reason(transcript(lines), Plan()).shots[0].miss == "short"

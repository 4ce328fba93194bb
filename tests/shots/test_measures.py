"""Lengths told on one hole, and the strokes they are played from; the holes are invented here."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from reviewkit.shots.reach import out_of_reach, reach, twin, without_hundreds
from tests.support.narrations import GREETING, transcript

FOUR = "Hole one, par 4, 388 yards."
DRIVER = "Driver, down the middle, fairway."
FT = 1 / 3
M = 1.0936133  # yards in a metre, by the definition of the yard as 0.9144 m
TALES: dict[str, tuple[Sequence[str], Sequence[float | None]]] = {
    "a number put right": (
        [
            FOUR,
            DRIVER,
            "One forty, no, one fifty to the pin, 8 iron, on the green, about twenty feet.",
            "First putt four feet by.",
            "Knocked that in for par.",
        ],
        [388, 150, 20 * FT, 4 * FT],
    ),
    "what a lay-up is to leave is not its own": (
        [
            *("Hole one, par 5, 512 yards.", DRIVER),
            *(
                "Still 203 to the flag.",
                "The plan was to leave myself 80 yards, with a 6 iron. It did. Fairway.",
            ),
            *("Gap wedge, on the green, twelve feet.", "Two putts, par."),
        ],
        [512, 203, None, 12 * FT, None],
    ),
    "a chip from the fringe with a long club": (
        [
            *(FOUR, DRIVER, "A sand wedge from 74, and it came up on the front fringe."),
            *("With the 8 iron I ran it up from eleven yards to five feet.", "Holed that for par."),
        ],
        [388, 74, 11, 5 * FT],
    ),
    "a putt told by its length and what it left, and the return": (
        [
            *("Hole one, par 3, 118 yards.", "The 5 hybrid. It stopped on the apron in front."),
            "Thirty feet, and I went four feet beyond.",
            "The return was one of those that look in, and slid past on the left.",
            "Tapped that in.",
        ],
        [118, 30 * FT, 4 * FT, None],
    ),
    "a first putt told as a tap-in is": (
        [
            *(FOUR, DRIVER, "7 iron from 150, came up short in the rough."),
            *("Chip with the 56. Yeah, all right, seven foot.", "And walked it in, par."),
        ],
        [388, 150, None, 7 * FT],
    ),
    "a hole's length told late": (
        [
            "There's a driver coming up. Watch. Straight over the marker, in the fairway.",
            "That was the first, I ought to have said, 297 yards and a par four.",
            *("Sand wedge from 60, on the green, twelve feet past.", "Two putts, par."),
        ],
        [297, 60, 12 * FT, None],
    ),
    "a short hole's length told behind its stroke": (
        [
            "Hole one, par 3. 6 iron. That's on the green, twenty feet, and it's only 138.",
            "Rolled it up beside the hole. Tapped in, three.",
        ],
        [138, 20 * FT, None],
    ),
    "a putt's length by its number alone": (
        [
            *(FOUR, DRIVER, "One forty left, 8 iron, on the green."),
            *("Forty odd, this putt. Call it forty. Left it four away.", "Four footer. In. Par."),
        ],
        [388, 140, 40 * FT, 4 * FT],
    ),
    "so much for the third, and lengths by a plaque, put right, and of a foot": (
        [
            "Hole one, it's 152 over the gorse, par 3.",
            "8 iron, chunked it, and it's in the pond.",
            "There's a drop zone, and it says 84 on the plaque.",
            "Now it's 84 for the third. Sand wedge, on the green, about twenty feet.",
            "That's run nine feet past. No, I've walked it, it's eight. Eight feet for a five, come on.",
            "Missed on the left. Foot. In it goes.",
        ],
        [152, 84, 20 * FT, 8 * FT, 1 * FT],
    ),
    "what a lay-up leaves is the next stroke's": (
        [
            "Hole one, par 5, five twenty.",
            "Driver, fairway.",
            "Two thirty out, laid up with a 6 iron to ninety.",
            "Sand wedge, on the green, twelve feet past.",
            "Slid by on the right, two feet coming back, in for par.",
        ],
        [520, 230, 90, 12 * FT, 2 * FT],
    ),
    "a partner's length": (
        [
            "Hole one, par 4.",
            "My buddy Dave hit it to eight feet from one thirty.",
            "I hit driver in the fairway.",
            "One eighteen for me, pitching wedge, on the green.",
            "Thirty feet, lagged it to a couple of feet and cleaned it up.",
        ],
        [None, 118, 30 * FT, 2 * FT],
    ),
    "break is no length": (
        [
            FOUR,
            DRIVER,
            "8 iron from 150 yards onto the green.",
            "A thirty footer, it breaks about two feet, left it five feet short.",
            "Made the five-footer. Par.",
        ],
        [388, 150, 30 * FT, 5 * FT],
    ),
    "short of the green is not from the hole": (
        [
            FOUR,
            "3 wood found the fairway.",
            "Hundred and sixty left, 7 iron.",
            "Came up short, ten yards short of the green in the rough.",
            "Chipped it to three feet.",
            "Holed it, par.",
        ],
        [388, 160, None, 3 * FT],
    ),
    "to the front and to the pin": (
        [
            "Hole one, par 5.",
            "Driver, fairway.",
            "I've two hundred and ten to the front, two twenty five to the pin.",
            "3 wood. In the greenside bunker.",
            "Twenty five yard bunker shot, 56, out to eight feet.",
            "And that drops for birdie.",
        ],
        [None, 225, 25, 8 * FT],
    ),
    "a tally after its putts": (
        [
            "Hole one, par 3, one seventy.",
            "7 iron on the green.",
            "Fifty feet, and the first one ten feet short.",
            "Missed the next by two inches. Three putts.",
        ],
        [170, 50 * FT, 10 * FT, None],
    ),
    "metres": (
        [
            "Hole one, par 4, 355 metres.",
            "Driver, fairway.",
            "A hundred and twenty two metres left, 8 iron, on the green, four metres.",
            "Missed by a whisker, tap in, par.",
        ],
        [355 * M, 122 * M, 4 * M, None],
    ),
    "feet without the word": (
        [FOUR, DRIVER, "I've got one twelve in, gap wedge, stuck it to six.", "And in it goes for birdie."],
        [388, 112, 6 * FT],
    ),
    "trouble and the flag": (
        [
            "Hole one, par 4.",
            "My driver carried about two forty, fairway.",
            "There's a bunker one twenty out, pin's at one thirty eight.",
            "9 iron, in the rough right of the green.",
            "Nice chip, couple of feet past.",
            "Made it.",
        ],
        [None, 138, None, 2 * FT],
    ),
    "putts told behind their tally": (
        [
            "Hole one, par 3. It's only one twenty.",
            "Pitching wedge, fifty feet past the flag but on the green.",
            "Three putts. First one ten feet short, second one two feet by. Bogey.",
        ],
        [120, 50 * FT, 10 * FT, 2 * FT],
    ),
    "two putts in one breath": (
        [
            "Hole one, par 3, one seventy.",
            "6 iron, front fringe.",
            "Putter, 29 feet, to within a foot.",
            "And in.",
        ],
        [170, 29 * FT, 1 * FT],
    ),
    "another day's length and a number right before its club": (
        [
            "Hole one, par 4 of 390.",
            "3 wood in the fairway.",
            "Last week I had one sixty here and hit it in the water.",
            "Today it's one seventy. 6 iron. On the green.",
            "Thirty feet, two putts.",
        ],
        [390, 170, 30 * FT, None],
    ),
    "a length put right": (
        [
            "Hole one, par 4, it's 390, no, wait, they moved it up, it's 374 today.",
            "Driver, fairway.",
            "150 left, 8 iron, on the green.",
            "Two putts.",
        ],
        [374, 150, None, None],
    ),
    "a length asked for, and the sign's answer": (
        [
            "Hole one, par 4. I want to say it's 330? The sign says 332.",
            "Driver, fairway.",
            "80 left, sand wedge, on the green.",
            "Two putts.",
        ],
        [332, 80, None, None],
    ),
    "up and down, the first of the two told before": (
        [FOUR, DRIVER, "86 left. Sand wedge. Five feet. Up and down for birdie."],
        [388, 86, 5 * FT],
    ),
    "what a putt from off the green left": (
        [
            FOUR,
            DRIVER,
            "150 left, 7 iron, on the front fringe.",
            "Putter, up the slope, and it's about four feet.",
            "It's in! That's a four.",
        ],
        [388, 150, None, 4 * FT],
    ),
    "where the ball lies, told before its putt": (
        [
            FOUR,
            DRIVER,
            "190 left, 4 hybrid, it's on!",
            "It's right on the front, so I'm miles short of it, but it's on the green.",
            "This putt is a bus ride. Fifty feet.",
            "That's gone eight feet past.",
            "Coming back, missed it left.",
            "In. Three putts, bogey.",
        ],
        [388, 190, 50 * FT, 8 * FT, None],
    ),
    "what was left, and the putt from there": (
        [
            FOUR,
            DRIVER,
            "150, 8 iron, on the green.",
            "I putted, it left me five feet, then the five footer slipped past on the right.",
            "Then the last bit. Five.",
        ],
        [388, 150, None, 5 * FT, None],
    ),
    "the next one's in, so there was one before": (
        [
            FOUR,
            DRIVER,
            "165 with a tree in the way. 5 iron, keep it low.",
            "It's under the tree. It's short, in the fairway just short.",
            "Forty yards, sand wedge, little pitch. It's on. Twenty-five feet.",
            "Good try, good try.",
            "And the next one's in, so I got a five.",
        ],
        [388, 165, 40, 25 * FT, None],
    ),
    "a hole finished has no strokes to come": (
        [
            FOUR,
            DRIVER,
            "140 left, 9 iron, on the green, 18 feet.",
            "Two putts, that's all I need, two putts, and I've charged it 5 feet by.",
            "Lipped out on the left. So I tapped that in for a five.",
        ],
        [388, 140, 18 * FT, 5 * FT, None],
    ),
    "how far short of the green, and the pitch from there": (
        [
            FOUR,
            DRIVER,
            "150 left. 7 iron, heavy, thirty-five yards short in the light rough.",
            "Pitched it up with the 58 to a foot.",
            "Tapped that in. Four.",
        ],
        [388, 150, 35, 1 * FT],
    ),
    "a putt of which nothing was heard but the lengths around it": (
        [
            FOUR,
            DRIVER,
            "142 to the flag, so a smooth eight. On. Twenty five feet, uphill.",
            "Gave it a flurb flurb. Six feet.",
            "Back up the hill. Missed it. Tap in for five.",
        ],
        [388, 142, 25 * FT, 6 * FT, None],
    ),
    "a length told twice, and another club's own behind it": (
        [
            FOUR,
            DRIVER,
            "It's 162 remaining, and I haven't got a 162, I've got a 150 and a prayer.",
            "Six iron, on the green, 20 feet.",
            "Two putts, par.",
        ],
        [388, 162, 20 * FT, None],
    ),
    "a hole that is so long going back": (
        [
            "Next hole. 401 metres back down to the clubhouse, par four.",
            DRIVER,
            "140 left, so a smooth eight. On. Eight metres.",
            "Two putts, par.",
        ],
        [401 * M, 140 * M, 8 * M, None],
    ),
    "a drive of which nothing was heard": (
        [FOUR, "Flurb, flurb.", "152 to the flag, 8 iron, on the green, 20 feet.", "Two putts, par."],
        [388, 152, 20 * FT, None],
    ),
    "a drive of which only its strike was heard, and much less left than the hole is long": (
        [
            FOUR,
            "Listen to that, absolutely creamed.",
            "152 left, 8 iron, short, in the rough.",
            "Chipped it to 6 feet. Holed it. Par.",
        ],
        [388, 152, None, 6 * FT],
    ),
    "a chip that is bumped with a longer club": (
        [FOUR, DRIVER, "What have I got? 30 yards. So I'm bumping the 7 iron along. On the green.", "Par."],
        [388, 30, None, None],
    ),
    "a drive whose landing was not heard, and the next for a shorter club": (
        [FOUR, "Driver, flurb.", "Wedge from 110, flurb it, four feet.", "Kicked that in. Birdie."],
        [388, 110, 4 * FT],
    ),
    "a stroke that came up short, of a club not heard": (
        [
            FOUR,
            "Driver, rough left.",
            "I've got 165 out of the rough, six flurb, came up short of the green.",
            "Chip, to about ten feet.",
            "Ten footer for par. In the cup!",
        ],
        [388, 165, None, 10 * FT],
    ),
    "what a long club left is no hole's length": (
        [
            "Hole one.",
            "3 wood, to stay behind the cross bunkers.",
            "I've got 145, into the greenside bunker.",
            "Sand wedge out, 8 feet.",
            "Missed it left. Tap in. Bogey five.",
        ],
        [None, 145, None, 8 * FT, None],
    ),
    "two numbers by themselves, what was left and the wedge": (
        [FOUR, DRIVER, "64. 56. Half swing. On the green, ten feet.", "Missed it. Tap in. Four."],
        [388, 64, 10 * FT, None],
    ),
    "a count run into what was left": (
        [
            FOUR,
            "Driver, into the trees.",
            "Little punch under the branches, back on the fairway, that's two 95 in.",
            "Pitching wedge, heavy, short in the rough. Chip onto the green. One putt, five.",
        ],
        [388, None, 95, None, None],
    ),
    "an age is no length for a hybrid": (
        [
            FOUR,
            DRIVER,
            "172. 4 hybrid. I'm 54 and I call it the rescue. It's on the green, nine feet.",
            "Two putts, par.",
        ],
        [388, 172, 9 * FT, None],
    ),
    "where it came to rest out of the sand": (
        [
            FOUR,
            DRIVER,
            "150, 8 iron, into the bunker.",
            "Got out of the sand in one. About six metres from the stick.",
            "Two putts, five.",
        ],
        [388, 150, None, 6 * M, None],
    ),
    "so short a length is the last putt's, whatever putt the count adds": (
        [
            FOUR,
            DRIVER,
            "One fifty, 8 iron, out of the sand, stopped five feet from it.",
            "Five feet for par. I'm going straight at it. It's in the hole. That's a five.",
        ],
        [388, 150, None, None, 5 * FT],
    ),
    "a miss, and the next stroke's short club": (
        [
            FOUR,
            DRIVER,
            "One twenty-five. Hit it well short of the green.",
            "Ten yards, with the 56, onto the green.",
            "In.",
        ],
        [388, 125, 10, None],
    ),
    "a short stroke's length behind its words": (
        [
            FOUR,
            DRIVER,
            "150, 7 iron, short, in the rough.",
            "Pitching with the 54. Like thirty-five yards.",
            "Twenty feet. 2 putts.",
        ],
        [388, 150, 35, 20 * FT, None],
    ),
    "a sign puts right what was thought": (
        ["Hole one, I want to say it's 330. The sign says 332.", DRIVER, "2 putts."],
        [332, None, None, None],
    ),
    "halfway, and so many more": (
        [
            FOUR,
            DRIVER,
            "110, wedge, on the green. Thirty feet.",
            "Left it short. So fifteen more. Missed on the right.",
            "Tap in.",
        ],
        [388, 110, 30 * FT, 15 * FT, None],
    ),
    "a number without a unit that is no length": (
        [FOUR, DRIVER, "One third at 5 to the stick. 8 iron, on the green.", "Two putts, par."],
        [388, None, None, None],
    ),
    "a teen heard as a ten": (
        [FOUR, DRIVER, "That leaves 180, so it's a smooth gap wedge, on the green.", "Two putts, par."],
        [388, 118, None, None],
    ),
    "a teen heard as a ten, of a wedge, a short iron and a putt": (
        [
            "Hole one, par 5, 490 metres.",
            "Driver, in the rough. Seven iron from 180 metres, short, in the rough.",
            "So a wedge from 150 metres, on the green.",
            "40 metres, so two putts would do. Left it a metre short. Tapped in.",
        ],
        [490 * M, 118 * M, 115 * M, 14 * M, 1 * M],
    ),
    "told before anything has flown, how long it is, and what it is not tried for": (
        [
            "So off we go, 331 yards, par four.",
            "Driver, fairway. Nine iron from 120, on the green, 25 feet off to the right.",
            "I'm not trying to make it. That's two feet.",
            "Two feet, straight in.",
        ],
        [331, 120, 25 * FT, 2 * FT],
    ),
    "a partner's measure of mine, and a length told anew": (
        [
            "Hole one, par four, 380. Driver, fairway.",
            "Fintan shot it for me with his laser, it's 125. Eight iron, on the green.",
            "Twelve foot. Fintan says fourteen. So fourteen foot it is. Bit short, that's three feet.",
            "Three feet for a four. Missed that. Tapped in for five.",
        ],
        [380, 125, 14 * FT, 3 * FT, None],
    ),
    "of two lengths the short one dropped": (
        [
            "Hole one, par four, 380 metres. Driver, fairway. Nine iron from 120, on the green.",
            "Nine metres, and it's short, but it's all right, it's a metre and a half. And it's in. Four!",
        ],
        [380 * M, 120 * M, 9 * M, 1.5 * M],
    ),
    "no club's reach, and what it was hit like": (
        [
            "Hole one. The last of the short ones is 148, par three.",
            "Seven iron, on the fringe. Putter, thirty feet, all uphill, so it's a forty foot hit.",
            "First one finished a foot beyond the cup, and I made the next. Three.",
        ],
        [148, 30 * FT, 1 * FT],
    ),
    "lengths by a gadget, as I make them, and too much of them": (
        [
            *(FOUR, DRIVER, "Fifty-eight, my watch says. Half a sand wedge, on the green."),
            "Thirty-one feet, I make it. Felt good, was four foot too brave.",
            "Missed the one back. Tapped in, five.",
        ],
        [388, 58, 31 * FT, 4 * FT, None],
    ),
    "money, and what is left": (
        [
            *(FOUR, DRIVER, "One forty-five, seven iron, in the bunker."),
            "Sand wedge, as taught in a lesson for sixty quid. Out, and what's left is three feet.",
            "In for four.",
        ],
        [388, 145, None, 1],
    ),
    "a length from the green, to where it should land, and wet at that": (
        [
            *(FOUR, DRIVER, "One eighty left, downhill, wet, all of a four iron. Right rough."),
            "It's eight paces from the green. Lob wedge, two feet past my spot, and on, six feet.",
            "In for four.",
        ],
        [388, 180, None, 2],
    ),
    "a putt of so many by its number": (
        [
            *(FOUR, DRIVER, "One forty, pitching wedge, out of the thick grass. Green."),
            "Thirty feet. Left it seven short. Missed the seven. Tapped in.",
        ],
        [388, 140, 10, 7 * FT, None],
    ),
    "the length behind the words, and a putt told behind the putter": (
        [
            "Hole one, par five. Driver first, 482 it is, on the fairway.",
            "250, three wood, over the back, in the rough. Chip on to the fringe.",
            "So the putter from the back edge. Twelve feet. It's a foot short.",
            "And that's in. Five.",
        ],
        [482, 250, None, 12 * FT, 1 * FT],
    ),
}


@pytest.mark.parametrize(("lines", "expected"), TALES.values(), ids=TALES)
def test_each_stroke_has_the_length_told_for_it(
    lines: Sequence[str], expected: Sequence[float | None]
) -> None:
    shots = reason(transcript([GREETING, "", *lines]), Plan()).shots
    assert [shot.distance_yd for shot in shots] == [e and pytest.approx(e, abs=0.01) for e in expected]


def test_a_twin_is_a_number_that_sounds_alike_and_a_club_has_its_reach() -> None:
    assert [twin(value) for value in (180, 130, 250, 118, 120, 200, 90)] == [
        118,
        113,
        215,
        None,
        None,
        None,
        19,
    ]
    bag = ["D", "3W", "5W", "4H", *(f"{number}I" for number in range(5, 10)), "PW", "50", "54", "60"]
    lengths = [reach(club) or 0.0 for club in bag]
    assert lengths == sorted(lengths, reverse=True) and lengths[-1] > 0
    assert reach("") is None and reach("same") is None


def test_a_count_heard_as_hundreds_is_no_part_of_a_length() -> None:
    heard = [(295, "GW"), (210, "PW"), (250, "PW"), (210, "5I"), (150, "PW")]
    assert [without_hundreds(value, reach(club)) for value, club in heard] == [95, 110, None, None, None]


def test_a_length_half_heard_is_more_of_the_hole_than_the_strokes_before_went() -> None:
    assert out_of_reach(["5I", "PW"], 302, 6)
    assert not out_of_reach(["D", "PW"], 302, 6)
    assert not out_of_reach(["5I", "56"], 302, 6)
    assert not out_of_reach(["5I", "PW"], 302, 95)
    assert not out_of_reach(["", "8I", "9I"], None, 6)

"""Narrations invented here, and the holes that an attentive listener would find in them."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.holes import decode
from reviewkit.holes.chat import amid, asides, settles
from reviewkit.holes.evidence import Evidence
from reviewkit.holes.signs import tells_length, tells_par, turns, turns_away
from reviewkit.language.talk import read_talk
from reviewkit.model import HoleSpan, Plan
from tests.support.narrations import GREETING, starts, transcript

FOUR = ["Driver down the middle.", "8 iron from 150 yards onto the green.", "Two putts for par.", ""]
THREE = ["7 iron onto the green.", "Rolled the first putt close, tapped in for par.", ""]


def hole(opening: str, tale: Sequence[str] = FOUR) -> list[str]:
    return [opening, *tale]


def spans(lines: Sequence[str], plan: Plan | None = None, cuts: Sequence[float] = ()) -> tuple[HoleSpan, ...]:
    plan = plan or Plan()
    return decode(read_talk(transcript(lines), plan), plan, cuts)


ANNOUNCED = [
    *(GREETING, ""),
    *hole("Hole one, a par four."),
    *hole("Hole two, a par three.", THREE),
    *hole("Hole three, another par four."),
]
TALES = {
    "announced": (ANNOUNCED, (1, 2, 3)),
    "by ordinals": (
        [
            *(GREETING, ""),
            *hole("So the first, a par four."),
            *hole("Second hole, par three.", THREE),
            *hole("On to the third, par four."),
        ],
        (1, 2, 3),
    ),
    "one not announced": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            *hole("Right, a long walk to the next tee."),
            *hole("Hole three, par four."),
        ],
        (1, 2, 3),
    ),
    "one looks back": (
        [
            *(GREETING, ""),
            *hole("Hole three, par four."),
            *hole("Hole four, par three.", THREE),
            "The fifth, par four.",
            "Driver, pulled into the left rough, same miss as the fourth.",
            *FOUR[1:],
            *hole("Hole six, par three.", THREE),
        ],
        (3, 4, 5, 6),
    ),
    "one looks ahead": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            "Par five next.",
            *hole("The second, a par five.", ["Driver down the middle.", "3 wood laid up.", *FOUR[1:]]),
            *hole("Hole three, par four."),
        ],
        (1, 2, 3),
    ),
    "shotgun": (
        [
            "Shotgun start today.",
            "",
            *hole("Hole fifteen, par four."),
            *hole("Hole sixteen, par three.", THREE),
            *hole("Seventeenth, par four."),
            *hole("Hole eighteen, par four."),
            *hole("And round to the first, par four."),
            *hole("Hole two, par three.", THREE),
        ],
        (15, 16, 17, 18, 1, 2),
    ),
    "the first of a shotgun not named": (
        [
            *("It was a shotgun, and we were sent out to the seventh to start.", ""),
            *hole("So that's us on the tee then, 312 yards, a par four."),
            *hole("Now the eighth goes over the brook, a par three.", THREE),
            *hole("And this one's a slog, par four."),
        ],
        (7, 8, 9),
    ),
    "one that nobody filmed": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            *("I haven't got anything for two. Bogey, it says on my card.", ""),
            *hole("So this is the last, hole three, a par four."),
        ],
        (1, 2, 3),
    ),
    "one left out": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            *hole("Hole two, par three.", THREE),
            *hole("Hole four, par four."),
            *hole("Hole five, par three.", THREE),
        ],
        (1, 2, 4, 5),
    ),
    "an end told in other words, the next not announced": (
        [
            *(GREETING, ""),
            *("Hole one, par three.", "Six iron, and that's on the green, twenty feet."),
            *("Up beside the hole, he says leave it.", ""),
            *("Five hundred and ten, over the left shoulder.", *FOUR),
            *hole("So the third, a par four."),
        ],
        (1, 2, 3),
    ),
    "words for going on that close a hole": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            *("Eight iron, half a swing.", "That's on, twenty feet short.", ""),
            *("Up to the lip, brushed it in, a three at the second and on we go.", ""),
            *hole("Par four, a wall on the right."),
            *hole("So the fourth, a par four."),
        ],
        (1, 2, 3, 4),
    ),
    "where it began was lost": (
        [
            *("A twilight start, and we've drawn the forwarding to kick off.", ""),
            *hole("Off we go then, 335 yards, par four."),
            *hole("Righto, on to the next tee, 158 yards, a par three.", THREE),
            *hole("Moving on, sixteen, par four."),
            *hole("Seventeen, and I've got the honour, par four."),
            *hole("Up past the clubhouse, a par four."),
            *hole("So we swing around to the first, a par four."),
            *hole("Two is 310 yards, par four."),
        ],
        (14, 15, 16, 17, 18, 1, 2),
    ),
    "one number wrong amid a nine": (
        [
            *("Just the back nine today.", ""),
            *hole("So this is the tenth, a par four."),
            *hole("A bit of a walk to the next tee, a par three.", THREE),
            *hole("Now comes the long one, par four."),
            *hole("The thirteenth, a par four."),
            *hole("Right, number two, uphill, par four."),
            *hole("On to the next, a par three.", THREE),
            *hole("And number sixteen, par four."),
        ],
        (10, 11, 12, 13, 14, 15, 16),
    ),
    "numbers heard as tens": (
        [
            *("It's a shotgun, three of us.", ""),
            *hole("We're on forty. Par four, 310."),
            *hole("Fifty next. A par three.", THREE),
            *hole("And this is sixty. 405, par four."),
            *hole("A 70 yard walk and then a par four."),
        ],
        (14, 15, 16, 17),
    ),
    "across to the last": (
        [
            *(GREETING, ""),
            *hole("Hole one, par four."),
            *hole("Hole two, par three.", THREE),
            *hole("Hole three, par four."),
            *hole("And it's dark, so we cut across to hole eighteen, the eighteenth, par four."),
        ],
        (1, 2, 3, 18),
    ),
}


@pytest.mark.parametrize("name", TALES)
def test_holes_are_those_a_listener_would_name(name: str) -> None:
    lines, expected = TALES[name]
    found = spans(lines)
    assert tuple(span.hole for span in found) == expected
    assert [span.play_order for span in found] == list(range(1, len(found) + 1))


def test_a_hole_begins_where_it_is_announced_and_ends_where_the_next_begins() -> None:
    found = spans(ANNOUNCED)
    said = starts(ANNOUNCED)
    wanted = [said[line] for line in ANNOUNCED if line.startswith("Hole")]
    assert [span.start_s for span in found] == pytest.approx(wanted)
    assert [span.end_s for span in found[:-1]] == [span.start_s for span in found[1:]]
    assert all(span.told and "hole" in span.reason for span in found)


TAIL = [
    *hole("Hole three, a par four."),
    *hole("Hole four, par three.", THREE),
    *hole("Hole five, par four."),
]
BEGUN = {
    "after the score of the one before": [
        *(GREETING, "", "Hole one, a par four.", *FOUR[:2], "First putt to two feet.", "", "Tap.", "Bogey."),
        *("> Next is the short one over the brook, 126 to the pin.", *THREE, *TAIL),
    ],
    "before its number told late": [
        *(GREETING, "", *hole("Hole one, par four.")),
        *("> Wind's in our faces now.", "Driver again.", "It's gone left.", "In the heather."),
        *("Not a great one.", "The second, I should have said.", *FOUR[1:], *TAIL),
    ],
    "before its number told late in a sentence of its own": [
        *(GREETING, "", *hole("Hole one, par four.")),
        *("> Wind's in our faces now.", "Driver again.", "It's gone left.", "In the heather."),
        *("This is the second.", "I should have said.", *FOUR[1:], *TAIL),
    ],
    "where it is measured, not where it is planned": [
        *("Hello.", "Shotgun start, so they sent us out to the fourteenth.", "I like it here.", ""),
        *("> Our first one is a long one, 372 yards.", *FOUR),
        *hole("The fifteenth, a par three.", THREE),
        *hole("Sixteen, a par four."),
    ],
    "and is called the last": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:-1], "Par, level.", ""),
        *("> Last one before the kitchen shuts.", "I need a four.", "It's a four.", "", "344."),
        *FOUR,
    ],
    "and not where the speaker stands on its tee": [
        *("Okay, so I'm standing on the first tee and I'm already sweating.", "So today's about one thing."),
        *("Turn in 39 or better and I'm happy.", "", "> Number one, par 4, 388 on the sign.", *FOUR, *TAIL),
    ],
    "and not where another day's last one is spoken of": [
        *("Morning, all.", "Same course as always.", "", "Last one was a disaster, so let's do better."),
        *("", "> 341 yards to get us going.", "There's a ditch across it.", *FOUR, *TAIL),
    ],
    "before a pause and the first swing": [
        *(GREETING, "", "> 341 yards to get us going.", "There's a ditch across it.", ""),
        *("Bit of heel on that, but it's on the fairway.", *FOUR[1:]),
        *TAIL,
    ],
    "after a rest": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:-1]),
        *("> Flask break.", "Now then.", "Driver off to the right rough.", *FOUR[1:], *TAIL),
    ],
    "with small talk that another pause follows": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:-1], "Par, level.", ""),
        *(
            "> Hang on, somebody's out there.",
            "He's waving.",
            "",
            "He's off.",
            "Second, 340, driver, fairway.",
        ),
        *(*FOUR[1:], *TAIL),
    ],
    "with words for going on and somebody's score": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:-1], "Par, level.", ""),
        *("> Bob's up first now because he made a five back there.", "A five.", "Fair play.", ""),
        *("So this is a par four, and you aim at the barn.", *FOUR, *TAIL),
    ],
    "with a standing, and long before it is named": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:-1], "Par, level.", ""),
        *("> Level with two to play.", "So there's a stroke to spare.", "Don't say it.", "Why did I say it?"),
        *("I shouldn't look at it at all.", "It only makes me think.", "Hole two is a par four.", *FOUR),
        *TAIL,
    ],
    "with a word and words for going on": [
        *(GREETING, "", "Hole one, par four.", *FOUR[:2], "Missed it.", "Got the other one.", ""),
        *("> Righto.", "Next one.", "Down past the sheep dip.", "Driver on the fairway.", *FOUR[1:], *TAIL),
    ],
    "after a ball was looked for": [
        *(GREETING, "", "Hole one, par four.", *FOUR),
        *("> Hole two, par four.", "Driver into the heather.", "Provisional, 5 wood, fairway.", ""),
        *("Bob's got a thorn in his thumb.", "That's time, lads.", "It's lost.", *FOUR[1:], *TAIL),
    ],
}


@pytest.mark.parametrize("name", BEGUN)
def test_a_hole_begins_with_what_is_told_of_it(name: str) -> None:
    lines = [line.removeprefix("> ") for line in BEGUN[name]]
    marked = next(line for line in BEGUN[name] if line.startswith(">")).removeprefix("> ")
    begun = [span.start_s for span in spans(lines)]
    assert any(abs(start - starts(lines)[marked]) < 0.1 for start in begun), begun


def test_small_talk_is_counted_up_to_the_first_word_of_a_hole() -> None:
    lines = ["Four of us again.", "No gimmes.", "340 yards, a par four.", "Lovely morning.", "Driver."]
    assert Evidence(read_talk(transcript(lines), Plan())).idle == (2, 1, 0, 1, 0, 0)


def test_a_hole_that_is_not_named_says_so_and_lies_between_its_neighbours() -> None:
    lines, _ = TALES["one not announced"]
    _, second, _ = spans(lines)
    assert not second.told
    assert second.start_s == pytest.approx(starts(lines)["Right, a long walk to the next tee."], abs=3.0)


def test_the_planned_order_names_holes_that_the_talk_does_not() -> None:
    lines = [
        *(GREETING, ""),
        *hole("On the tee of a par four."),
        *hole("Next tee, a par three.", THREE),
        *hole("Next hole, a par four."),
    ]
    assert [span.hole for span in spans(lines, Plan(order=(10, 11, 12)))] == [10, 11, 12]
    assert [span.hole for span in spans(lines)] == [1, 2, 3]


def test_a_cut_in_the_silence_before_a_hole_is_its_start() -> None:
    second = starts(ANNOUNCED)["Hole two, a par three."]
    cut = second - 1.0
    assert [span.start_s for span in spans(ANNOUNCED, cuts=(cut,))][1] == cut
    far = second - 8.0
    assert [span.start_s for span in spans(ANNOUNCED, cuts=(far,))][1] == pytest.approx(second)


@pytest.mark.parametrize("tale", [FOUR, FOUR[:1] + FOUR[2:], THREE])
def test_a_round_without_a_greeting_begins_with_its_first_words(tale: Sequence[str]) -> None:
    # With silences between all lines, so that pauses tell.
    told = ["Hole one, a par four.", *tale, *ANNOUNCED[7:]]
    lines = [part for line in told if line for part in (line, "")]
    found = decode(read_talk(transcript(lines, 0.0), Plan()), Plan())
    assert found[0].start_s < 1.0 and found[0].told
    assert [span.hole for span in found] == [1, 2, 3]


@pytest.mark.parametrize(
    ("remark", "told"),
    [
        ("We are skipping the third.", False),
        ("I'm not going to film the third.", False),
        ("Lost the footage of three.", False),
        ("We've no footage from the third, sorry.", False),
        ("The camera died on the third.", False),
        ("I forgot to press record on three.", False),
        ("Skipped the third, there was a queue, so we're on to the fourth.", False),
        # A hole of which only the score is told has been played.
        ("I didn't film the third, made a five there.", True),
        ("The third is not on film, the battery died, but it was a bogey.", True),
        ("Lost the footage of the third, which I parred.", True),
        ("I'm not going to show the third. Made a six there.", True),
    ],
)
def test_a_hole_left_out_is_none_unless_its_score_is_told(remark: str, told: bool) -> None:
    lines = [
        *ANNOUNCED[:11],
        remark,
        "",
        *hole("Hole four, par four."),
        *hole("Hole five, par three.", THREE),
    ]
    assert [span.hole for span in spans(lines)] == [1, 2, *([3] if told else []), 4, 5]


@pytest.mark.parametrize(
    "greeting",
    [["Nine holes this morning, par 36."], ["We go from the first to the ninth, and it's a par of 36."]],
)
def test_a_hole_named_in_the_plan_of_the_round_does_not_begin_it(greeting: list[str]) -> None:
    lines = [*greeting, "", *hole("Hole one, a par four."), *hole("Hole two, a par three.", THREE)]
    assert spans(lines)[0].start_s == pytest.approx(starts(lines)["Hole one, a par four."])


@pytest.mark.parametrize(
    ("behind", "named"),
    [("The tenth, then, a par four.", 0), ("Driver, fairway.", 1)],
)
def test_where_the_round_begins_names_the_hole_only_where_it_is_not_named_again(
    behind: str, named: int
) -> None:
    lines = ["We're starting on the tenth.", *["That'll do nicely."] * 5, "", behind]
    found = Evidence(read_talk(transcript([GREETING, "", *lines]), Plan()))
    assert (found.number[1][10] > 0) is bool(named)


@pytest.mark.parametrize(
    "talk",
    ["I've got Ned with me. He's lost his hat.", "So this is Pecan Farm, they sent us off the front side."],
)
def test_talk_behind_the_greeting_and_a_pause_is_no_first_hole(talk: str) -> None:
    lines = [GREETING, "", talk, "", *hole("So, the first, par four."), *hole("Hole two, par four.")]
    begun = starts(lines)
    assert [span.start_s for span in spans(lines)] == [
        begun["So, the first, par four."],
        begun["Hole two, par four."],
    ]


@pytest.mark.parametrize("opening", [[], [GREETING, ""]])
def test_footage_of_one_hole_keeps_its_number(opening: list[str]) -> None:
    lines = [*opening, *(part for line in hole("Hole three, par four.") if line for part in (line, ""))]
    found = decode(read_talk(transcript(lines, 0.0), Plan()), Plan())
    assert [(span.hole, span.told) for span in found] == [(3, True)]


@pytest.mark.parametrize(
    ("line", "named"),
    [
        ("And it's in. Four.", False),
        ("Had a biscuit there. Four.", True),
        ("I come up four feet short. Four!", False),
        ("That's two points. Four now.", False),
        ("Four, so that's two points.", False),
        ("Four. There's no nice way of saying it. A four.", False),
        ("Four is 431, a par four, and I've made a four here.", True),
        ("Brushed it in, a three at the fourth and on we go.", False),
        ("The first, then, which is our fourth, 289 yards, par four.", False),
    ],
)
def test_a_number_in_one_breath_with_a_putt_or_points_counts_those(line: str, named: bool) -> None:
    found = Evidence(read_talk(transcript([GREETING, "", line]), Plan()))
    assert (max(row[4] for row in found.number) > 0) is named


@pytest.mark.parametrize(
    ("line", "tells"),
    [
        ("Knock it in, bogey on 12.", True),
        ("Nudged that one in. Birdie on the 12th.", True),
        ("I needed that after the double on 12.", False),
    ],
)
def test_a_score_told_as_the_ball_goes_in_tells_the_hole(line: str, tells: bool) -> None:
    inside = Evidence(read_talk(transcript([GREETING, "", line]), Plan())).inside
    assert bool(inside[12, -1] > inside[11, -1]) is tells


@pytest.mark.parametrize(
    ("line", "number", "named"),
    [
        ("Look at that. Four.", 4, False),
        ("148 to the flag. So eight. No, it's uphill.", 8, False),
        ("148 to the flag. So eight. No, it's uphill. Seven.", 7, False),
        ("Look at that. Four. Par five, 510.", 4, True),
        ("Look at that. Four.||510, all uphill.", 4, False),
        ("Look at that. Fourteen.", 14, True),
        ("168, par three. 8 is a max.", 8, False),
        ("I was going to hit hybrid. So, seven, yeah, seven iron.", 7, False),
        ("You go seven up to twelve.", 12, False),
    ],
)
def test_a_small_number_alone_without_a_pause_names_no_hole(line: str, number: int, named: bool) -> None:
    lines = [GREETING, "", "Well.", "", "Well.", "", *line.split("|")]
    found = Evidence(read_talk(transcript(lines), Plan()))
    assert (max(row[number] for row in found.number) > 0) is named


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("So this is a par four.", True),
        ("And in. Seven on a par four, still four over.", False),
        ("Made a two. On to the tenth, a par four.", True),
    ],
)
def test_a_par_that_a_score_was_made_on_opens_no_hole(line: str, told: bool) -> None:
    talk = read_talk(transcript([GREETING, "", line]), Plan())
    assert any(tells_par(said) for said in talk) is told


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("Over the big dip, 288, and it's a par four as well.", True),
        ("It's 130. Par three.", True),
        ("It's 130. Nine iron.", False),
        ("A six on that par four. 30 left.", False),
        ("Ninety-six metres, the shortest hole we've got, ringed with sand.", True),
        ("It's a little gadget, says 85.", False),
    ],
)
def test_a_yardage_beside_a_par_or_words_for_a_hole_is_a_holes_length(line: str, told: bool) -> None:
    talk = read_talk(transcript([GREETING, "", line]), Plan())
    assert any(tells_length(talk, at) for at in range(len(talk))) is told


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (["Bob's got a thorn.", "That's time, lads.", "It's lost."], True),
        (["Oh, that's rolled well.", "And in."], True),
        (["Bob's got a thorn.", "Par four.", "Driver.", "It's lost."], False),
        (["Driver into the trees.", "It's lost."], False),
    ],
)
def test_whoever_looks_for_a_ball_or_holes_out_is_amid_a_hole(lines: list[str], expected: bool) -> None:
    assert amid(read_talk(transcript(lines), Plan()), 0) is expected


@pytest.mark.parametrize(
    ("chat", "silence", "apart"),
    [
        (["What do you call a golfer who tells the truth?", "I don't know, I never met her."], 2, True),
        (["My aunt used to say, ring your sister."], 2, True),
        # A silence before a hole is named that is as long, or words on that hole or the one before.
        (["There's a greenkeeper out there. He's waving."], 1, False),
        (["I'm going to be very quiet for this one."], 2, False),
        (["That's me one under."], 2, False),
    ],
)
def test_small_talk_behind_the_longer_silence_stands_for_itself(
    chat: list[str], silence: int, apart: bool
) -> None:
    lines = ["Tapped in for par.", *[""] * silence, *chat, "", "Right, hole two, a par four."]
    talk = read_talk(transcript(lines), Plan())
    named = len(talk) - 1
    assert asides(talk, (0.0, *[1.0] * named))[named] == (1 if apart else named)


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        (["Hello, I can't count.", "I was one over, so that's level.", "", "Right, the fifth."], True),
        (["Hello, I can't count.", "I was one over, so that's level.", "Right, the fifth."], False),
        (["Hello from the kitchen.", "", "Right, the fifth.", "I was one over, so that's level."], False),
    ],
)
def test_talk_that_settles_a_score_is_of_the_hole_before(lines: list[str], expected: bool) -> None:
    assert settles(read_talk(transcript(lines), Plan()), 0) is expected


def test_torn_off_words_take_no_place_among_those_in_which_a_number_is_looked_for() -> None:
    lines = [GREETING, "", "Well.", "Well I never.", "Mate.", "Sorry.", "Mate.", "Okay.", "This is fifteen."]
    talk = read_talk(transcript(lines), Plan())
    opening = next(at for at, said in enumerate(talk) if said.text.startswith("well i"))
    assert Evidence(talk).number[opening][15] > 0


def test_the_number_alone_that_a_hole_begins_with_is_no_score_of_it() -> None:
    talk = read_talk(transcript(["Tapped that in.", "", "Seven.", "348 metres, a par four."]), Plan())
    assert {"hole", "strokes"} <= {mention.kind for mention in talk[1].mentions}
    evidence = Evidence(talk)
    from_there = evidence.contents.tell(np.array([1]), np.array([3]))
    without_it = evidence.contents.tell(np.array([2]), np.array([3]))
    assert from_there == pytest.approx(without_it, abs=1.0)


def test_no_talk_has_no_holes() -> None:
    assert decode((), Plan()) == ()


VOCABULARY = """hole par four five the third driver green putt holed birdie next tee . , 1 12 18 and water
    lost"""
WORDS = st.sampled_from(VOCABULARY.split())


@given(st.lists(st.lists(WORDS, min_size=1, max_size=12).map(" ".join), max_size=25))
def test_any_talk_gives_holes_once_each_in_order_of_time(lines: list[str]) -> None:
    found = spans(lines)
    numbers = [span.hole for span in found]
    assert len(set(numbers)) == len(numbers)
    assert all(before.last < after.first for before, after in itertools.pairwise(found))
    assert all(before.end_s <= after.start_s for before, after in itertools.pairwise(found))


@pytest.mark.parametrize(
    ("line", "here", "away"),
    [
        ("Right, off we go, the fourth, par four.", 1, 0),
        ("Tapped in for a bogey and on we go.", 0, 1),
        ("A six, nine over, moving on.", 0, 1),
        ("Bogey, moving on, the fourth is a par four.", 1, 0),
    ],
)
def test_words_for_going_on_behind_a_score_are_of_the_next_hole(line: str, here: int, away: int) -> None:
    said = max(read_talk(transcript([line]), Plan()), key=lambda utterance: len(utterance.mentions))
    assert (len(turns(said)), len(turns_away(said))) == (here, away)


def test_a_pause_unlike_those_before_holes_that_are_announced_parts_none() -> None:
    holes = [f"Hole {number}, a par four." for number in ("one", "two", "three", "four", "five", "six")]
    lines = [line for hole in holes for line in (hole, "Driver, fairway.", "And we wait for it.", "It's on.")]
    said = read_talk(transcript(lines), Plan())
    waits = next(at for at, utterance in enumerate(said) if utterance.text.startswith("and we wait"))

    def opens(before_holes_s: float) -> float:
        gaps = {"hole": before_holes_s, "and ": 3.0}
        talk = tuple(replace(u, gap_s=gaps.get(u.text[:4], 0.2)) for u in said)
        return Evidence(talk).opening[waits]

    assert opens(1.2) < opens(3.0) - 1.0

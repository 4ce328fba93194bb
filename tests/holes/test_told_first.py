"""Rounds whose holes are told by their result first, and then how it came about."""

from __future__ import annotations

from itertools import pairwise

import pytest

from reviewkit.holes import decode
from reviewkit.holes.told_first import told_first
from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from tests.support.narrations import GREETING, starts, transcript

FIRST = [
    *(GREETING, "Bob is with me.", ""),
    *("Opening par in the bag.", "Three wood, fairway.", "140, eight iron to the middle, two putts.", ""),
    *("Gave one back, bogey on two.", "Driver right, rough.", "Seven iron, short.", "Chip, two putts.", ""),
    *("Three.", "Just the one putt, for once.", "Eight iron, left bunker.", "Out to three feet.", ""),
    *("Double bogey, six.", "Driver into the gorse, so a drop.", "Six iron, green.", "Three putts.", ""),
    *("So a four, and that's a par.", "Driver, fairway.", "150, seven iron, on, two putts.", ""),
    *("One dropped at the sixth.", "Only 126.", "Pitching wedge, short.", "Chip, two putts.", ""),
    *("Eight.", "An eight, Bob, stop laughing.", "Driver out of bounds.", "Driver again, fairway."),
    *("Hybrid, green.", "Three putts.", ""),
    *("Two.", "Nine iron to a foot, tapped in.", ""),
    *("I've made a five on the ninth.", "Driver, hybrid, rough, short.", "Chip to eight feet, two putts."),
]
LAST = [
    *(GREETING, ""),
    *("Hole one, par four.", "Driver, fairway.", "Seven iron, green.", "Two putts.", "Par.", ""),
    *("A five here would do.", "Hole two, par five.", "Driver, fairway.", "Five wood, green.", ""),
    *("In.", "Eagle.", "On to the third, par three.", "Eight iron, green, two putts, three.", ""),
]


def told(lines: list[str]) -> list[str]:
    talk = read_talk(transcript(lines), Plan())
    said = {round(at, 2): line for line, at in starts(lines).items()}
    return [said[round(talk[at].start_s, 2)] for at in sorted(told_first(talk))]


def openings(lines: list[str]) -> list[str]:
    return [line for before, line in pairwise(lines) if not before]


def test_a_score_behind_a_pause_opens_its_hole_where_the_round_is_told_so() -> None:
    assert told(FIRST) == openings(FIRST)
    assert told(LAST) == []


def test_holes_told_by_their_result_first_begin_with_it_and_count_on() -> None:
    """ "Three." and "Eight." are scores there, no names of holes."""
    found = decode(read_talk(transcript(FIRST), Plan()), Plan())
    assert [span.hole for span in found] == list(range(1, 10))
    said = starts(FIRST)
    assert [span.start_s for span in found] == pytest.approx([said[line] for line in openings(FIRST)])

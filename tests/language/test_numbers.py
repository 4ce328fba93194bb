"""Spoken numbers as golfers say them, and as listeners write them down."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.language.lexicon import load
from reviewkit.language.number_words import nth
from reviewkit.language.repair import Lexicon
from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word


def read(text: str) -> str:
    words = tuple(Word(word, at * 0.3, at * 0.3 + 0.28) for at, word in enumerate(text.split()))
    bare = Lexicon(load().spelling, {})
    return " ".join(sentence.text for sentence in sentences(Transcript((Segment(words),)), bare))


YARDAGES = [  # measured cases of a general number-word library's slips (facts: number_words_cases.csv)
    ("I've got one fifty two to the pin", "i've got 152 to the pin"),
    ("one hundred and fifty two yards", "152 yards"),
    ("one-six-three to the pin", "163 to the pin"),
    ("hit the seven iron one sixty", "hit the 7 iron 160"),
    ("hole number three par four four hundred and ten yards", "hole number 3 par 4 410 yards"),
    ("one ten front one twenty back", "110 front 120 back"),
    ("three forty five to the hole", "345 to the hole"),
    ("twenty five feet", "25 feet"),
    ("two putts for a five", "2 putts for a 5"),
]
SPOKEN = [
    ("a buck forty left", "140 left"),
    ("buck fifty to the stick", "150 to the stick"),
    ("a buck five", "105"),
    ("hundred and thirty-two to the front", "132 to the front"),
    ("two thirty one to the flag", "231 to the flag"),
    ("one-oh-four", "104"),
    ("three oh six off the back tees", "306 off the back tees"),
    ("five-ten, par five", "510 , par 5"),
    ("par four, four ten", "par 4 , 410"),
    ("number seven one sixty five", "number 7 165"),
    ("four hundred and one", "401"),
    ("six thousand seven hundred and forty yards", "6740 yards"),
    ("a couple hundred yards out", "200 yards out"),
    ("two and a half metres", "2.5 metres"),
    ("a meter and a half above the hole", "1.5 metre above the hole"),
    ("a foot and a half", "1.5 foot"),
    ("one and a half metres", "1.5 metres"),
    ("a couple of feet", "2 feet"),
    ("half a dozen", "6"),
    ("a hundred and seventy's a silly number", "170 is a silly number"),
    ("one point two, in", "1.2 , in"),
    ("at one point two of us", "at one point 2 of us"),
    ("six to ten feet", "6 to 10 feet"),
    ("so that's six, seven", "so that's 6 , 7"),
    ("six and seven", "6 and 7"),
    ("four, five. Five's fine", "4 , 5 . 5 is fine"),
    ("the four-iron", "the 4 iron"),
    ("four, iron", "4 , iron"),
    ("plays one fifty seven iron", "plays 150 7 iron"),
    ("those par threes and par fives", "those par 3s and par 5s"),
    ("my third, then the eighteenth", "my 3rd , then the 18th"),
    ("three-quarters of a gap wedge", "three-quarters of a gap wedge"),
    ("a three quarter swing", "a three-quarter swing"),
    ("two's the one", "2 is the one"),
    ("at seven thirty in the morning", "at 7:30 in the morning"),
]
WRITTEN = [
    ("sneaky 362-yard par 4", "sneaky 362 yard par 4"),
    ("Par-5.", "par 5 ."),
    ("a 7i from 152, 12ft", "a 7 iron from 152 , 12 feet"),
    ("3m left, 10 m past", "3 metres left , 10 metres past"),
    ("2½ feet", "2.5 feet"),
    ("6,740 yards", "6740 yards"),
    ("5,05 yards", "505 yards"),
    ("-6 for the day, +3 through nine", "minus 6 for the day , plus 3 through 9"),
    ("4-6 feet", "4 to 6 feet"),
    ("1-40 to the pin", "140 to the pin"),
    ("1 52 to the flag", "152 to the flag"),
    ("I made 1 52 times", "i made 1 52 times"),
    ("1:43 to the middle, 10:30 tee time", "143 to the middle , 10:30 tee time"),
    ("500 and 5 yards", "505 yards"),
    ("par 4410 yards", "par 4 410 yards"),
    ("9365 back towards the clubhouse", "9 365 back towards the clubhouse"),
    ("1998 was the year", "1998 was the year"),
    ("396th par 4", "396 par 4"),
    ("hit 157 iron", "hit 150 7 iron"),
    ("6 ,740 yards", "6740 yards"),
    ("a 4 .7 average", "a 4.7 average"),
    ("160-1, so that's it", "161 , so that's it"),
    ("it's 3-7-7 and plays 1-0-4", "it's 377 and plays 104"),
    ("knocked it in, 5-3-8, with 2", "knocked it in , 5 to 3 to 8 , with 2"),
    ("1 .19 out, 1.25 left", "119 out , 1.25 left"),
    ("on to the 1 ,356 metres", "on to the 1 356 metres"),
    ("3 .34 metres, 2.5 metres", "334 metres , 2.5 metres"),
    ("on to the 3 -388 metres", "on to the 3 , 388 metres"),
    ("the 16468 metres, part 4410 off", "the 16 468 metres , part 4 410 off"),
    ("2 164 yards", "2 164 yards"),
    ("a 6-6-iron from 125 -9 iron", "a 6 , 6 iron from 125 , 9 iron"),
    ("7 -iron, par -4, 362 -yard", "7 iron , par 4 , 362 yard"),
    ("56° from hole #12", "56 degree from hole number 12"),
]
ONE = [
    ("one under through two", "1 under through 2"),
    ("hole one, par four", "hole 1 , par 4"),
    ("One, par four, 380", "1 , par 4 , 380"),
    ("the tenth's a brute, the 11th's worse", "the 10th is a brute , the 11th is worse"),
    ("two one-putts", "2 1 putts"),
    ("one more than I wanted", "1 more than i wanted"),
    ("with one to play", "with 1 to play"),
    ("hole in one", "hole in 1"),
    ("one of those days", "one of those days"),
    ("that one was good, no one saw it", "that one was good , no one saw it"),
    ("sliced one over the fence", "sliced one over the fence"),
    ("pulled one left", "pulled one left"),
    ("knocked that one twenty feet past", "knocked that one 20 feet past"),
    ("photographs like one. 143, wind helping", "photographs like one . 143 , wind helping"),
]


@pytest.mark.parametrize(("said", "wanted"), YARDAGES + SPOKEN + WRITTEN + ONE)
def test_numbers_become_digits(said: str, wanted: str) -> None:
    assert read(said) == wanted


UNITS = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]
TEENS = ["ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen"]
TENS = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]


def below_hundred(value: int) -> str:
    if value < 10:
        return UNITS[value]
    if value < 19:
        return TEENS[value - 10]
    return "nineteen" if value == 19 else f"{TENS[value // 10]} {UNITS[value % 10]}".strip()


@given(st.integers(min_value=101, max_value=699), st.sampled_from(["full", "and", "short", "hyphen"]))
def test_every_yardage_is_read_however_it_is_said(yards: int, manner: str) -> None:
    hundreds, rest = divmod(yards, 100)
    said = f"{UNITS[hundreds]} hundred {below_hundred(rest)}".strip()
    if manner == "and" and rest:
        said = f"{UNITS[hundreds]} hundred and {below_hundred(rest)}"
    elif manner == "short" and rest:
        said = f"{UNITS[hundreds]} {'oh ' if rest < 10 else ''}{below_hundred(rest)}"
    elif manner == "hyphen" and rest:
        said = f"{UNITS[hundreds]} hundred and {below_hundred(rest).replace(' ', '-')}"
    assert read(f"it's {said} yards to the flag") == f"it's {yards} yards to the flag"


@pytest.mark.parametrize("value", range(1, 30))
def test_ordinals_keep_their_ending_and_value(value: int) -> None:
    words = (Word("the", 0, 0.1), Word(f"{nth(value)},", 0.2, 0.4))
    token = sentences(Transcript((Segment(words),)))[0].tokens[1]
    assert (token.text, token.value) == (nth(value), value)

"""Spoken numbers to digits, as golfers say them: "one fifty two", "a buck forty", "hundred and two".

Works on pieces and never across a comma, so "six, seven" stays two numbers. "one" becomes a number only where
its neighbours say it counts something; elsewhere ("that one", "one of those") it stays the word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from reviewkit.language.counted import counts
from reviewkit.language.digits import settle
from reviewkit.language.number_words import (
    CLUB_NOUNS,
    COUPLED,
    LENGTHS,
    ORDINALS,
    PLURALS,
    SHORT_UNITS,
    TAILS,
    TENS,
    UNITS,
    YARDAGE_AFTER,
    YARDAGE_BEFORE,
    nth,
    shown,
    simple,
)
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, text_at

_PLURAL = re.compile(r"(\d+(?:\.\d+)?)'?s")
"""Digits with a plural's tail: "5s", "2's"."""
_MOST_HOLES = 99
_GOES_ON = ("hundred", "and", *TENS)
"""Words that a number goes on from."""
_LONGEST_SPELT = 299
"""Longer ones, digit by digit, are as often scores."""


def numbers(given: list[Piece]) -> list[Piece]:
    """The pieces with every number as digits and its value."""
    made: list[Piece] = []
    given = list(_without_tails(given))
    at = 0
    while at < len(given):
        phrase = _phrase(given, at)
        if phrase is None:
            phrase = _count(given, at)
        if phrase is None:
            phrase = [given[at]], at + 1
        made += phrase[0]
        at = phrase[1]
    return settle(made)


def _without_tails(given: list[Piece]) -> Iterator[Piece]:
    """ "A hundred and seventy's a silly number": the verb apart, where a number goes on to it."""
    for at, piece in enumerate(given):
        stem, mark, tail = piece.text.partition("'")
        number = mark and simple(stem) is not None and stem != "one" and text_at(given, at - 1) in _GOES_ON
        if number and f"'{tail}" in TAILS:
            yield replace(piece, text=stem)
            yield replace(piece, text=TAILS[f"'{tail}"], joined=False)
        else:
            yield piece


def _number(first: Piece, last: Piece, value: float) -> Piece:
    return first.to(last, shown(value), value)


def _phrase(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    """Set phrases that hold a number without naming it: "a foot and a half", "a couple of feet", a dozen."""
    words = [text_at(given, at + step) for step in range(5)]
    article = words[0] in ("a", "an", "one", "1")
    if article and words[1] in LENGTHS and words[2:5] == ["and", "a", "half"]:
        return [_number(given[at], given[at + 4], 1.5), given[at + 1]], at + 5
    if words[0] == "half" and words[1] in ("a", "an") and words[2] in LENGTHS:
        return [_number(given[at], given[at + 1], 0.5)], at + 2
    if words[0] == "half" and words[1] in ("foot", "metre"):
        return [_number(given[at], given[at], 0.5)], at + 1
    skip = 1 if words[0] == "a" else 0
    if words[skip] == "couple":
        of = 1 if words[skip + 1] == "of" else 0
        if words[skip + 1 + of] in COUPLED:
            return [_number(given[at], given[at + skip + of], 2)], at + skip + of + 1
        if words[skip + 1 + of] == "hundred":
            return [_number(given[at], given[at + skip + of + 1], 200)], at + skip + of + 2
    if words[0] in ("for", "fore") and words[1] == "hundred":
        # "For hundred and five yards" is four hundred: nobody leaves out the article otherwise.
        value, end = _below_hundred(given, at + 2, 400)
        return [_number(given[at], given[end - 1], value)], end
    if words[:3] == ["half", "a", "dozen"]:
        return [_number(given[at], given[at + 2], 6)], at + 3
    if words[:2] == ["a", "dozen"]:
        return [_number(given[at], given[at + 1], 12)], at + 2
    if words[0] in ("three", "3") and words[1] in ("quarter", "quarters"):
        return [given[at].to(given[at + 1], "three-quarter")], at + 2
    return None


def _count(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    """A cardinal, an ordinal, a plural ("fives") or a number with a verb's tail ("two's the one")."""
    piece = given[at]
    ordinal = _ordinal(given, at)
    if ordinal:
        return ordinal
    plural = _PLURAL.fullmatch(piece.text)
    if piece.text in PLURALS or plural:
        stem = float(plural.group(1)) if plural else PLURALS[piece.text]
        if piece.text.endswith("'s") and text_at(given, at - 1) != "par":
            return [replace(piece, text=shown(stem), value=stem), replace(piece, text="is")], at + 1
        return [replace(piece, text=f"{shown(stem)}s", value=stem)], at + 1
    for tail, verb in TAILS.items():
        stem_word = piece.text.removesuffix(tail)
        if stem_word != piece.text and (small := simple(stem_word)) is not None and stem_word != "one":
            return [replace(piece, text=shown(small), value=small), replace(piece, text=verb)], at + 1
    cardinal = _spelt(given, at) or _decimal(given, at) or _cardinal(given, at)
    if cardinal is None:
        return None
    value, end = cardinal
    if end == at + 1 and piece.text == "one" and not counts(given, at):
        return None
    if value < 100 and [text_at(given, end + step) for step in range(2)] == ["and", "a"]:
        part = {"half": 0.5, "quarter": 0.25}.get(text_at(given, end + 2))
        if part:
            value, end = value + part, end + 3
    elif text_at(given, end) in (".5", ".25", ".75"):
        value, end = value + float(given[end].text), end + 1
    return [_number(piece, given[end - 1], value)], end


def _ordinal(given: list[Piece], at: int) -> tuple[list[Piece], int] | None:
    """An ordinal; "the tenth's a brute" is "the 10th is a brute"."""
    text = given[at].text.removesuffix("'s")
    verb = [] if text == given[at].text else [replace(given[at], text="is")]
    if text in ORDINALS:
        return [replace(given[at], text=nth(ORDINALS[text]), value=ORDINALS[text]), *verb], at + 1
    count = simple(text[:-2]) if text[:1].isdigit() and text[-2:] in ("st", "nd", "rd", "th") else None
    if count is not None and count > _MOST_HOLES:
        # "The closer, 396th par 4": a length heard as an ordinal.
        return [_number(given[at], given[at], count), *verb], at + 1
    if count is not None:
        return [replace(given[at], text=text, value=count), *verb], at + 1
    following = ORDINALS.get(text_at(given, at + 1), 99)
    if text in TENS and following < 10 and given[at + 1].joined:
        value = TENS[text] + following
        return [given[at].to(given[at + 1], nth(value), value)], at + 2
    return None


def _small(given: list[Piece], at: int) -> tuple[float, int] | None:
    """A number under a hundred said in one breath, or one run of digits; and where it ends."""
    text = text_at(given, at)
    value = simple(text)
    if value is None:
        return None
    unit = UNITS.get(text_at(given, at + 1))
    if text in TENS and unit and not (text_at(given, at + 2) in CLUB_NOUNS and unit > 1):
        return value + unit, at + 2
    return value, at + 1


def _decimal(given: list[Piece], at: int) -> tuple[float, int] | None:
    """ "One point two", but not "at one point two of us"."""
    whole, part = simple(text_at(given, at)), simple(text_at(given, at + 2))
    if text_at(given, at + 1) != "point" or text_at(given, at - 1) == "at":
        return None
    if whole is None or part is None or part not in range(1, 10) or whole > _MOST_HOLES:
        return None
    return whole + part / 10, at + 3


def _small_ordinal(given: list[Piece], at: int) -> tuple[float, int] | None:
    """ "Five hundred eighth yards", "a hundred and thirty-eighth,": a number's end heard as an ordinal's."""
    tens = TENS.get(text_at(given, at), 0)
    begin = at + (tens > 0)
    rest = ORDINALS.get(text_at(given, begin), 0)
    told = text_at(given, begin + 1) in (*BREAKS, "yards", "yard", "metres") or (
        text_at(given, begin + 1) == "to" and text_at(given, begin + 2) in ("the", "go")
    )
    if not rest or not told or (tens and (rest > 9 or not given[begin].joined)):
        return None
    return tens + rest, begin + 1


def _cardinal(given: list[Piece], at: int) -> tuple[float, int] | None:
    article = text_at(given, at) == "a"
    begin = at + 1 if article else at
    if text_at(given, begin) == "buck" and (after := _small(given, begin + 1)) and after[0] < 100:
        return 100 + after[0], after[1]
    head = (1.0, begin) if text_at(given, begin) in ("hundred", "thousand") else _small(given, begin)
    if head is None or (article and head[1] != begin):
        return None
    value, end = head
    if text_at(given, end) == "thousand":
        rest = _cardinal(given, end + 1)
        return (value * 1000 + rest[0], rest[1]) if rest and rest[0] < 1000 else (value * 1000, end + 1)
    if text_at(given, end) == "hundred" and not (text_at(given, begin - 1) == "par" and 3 <= value <= 6):
        return _below_hundred(given, end + 1, value * 100)
    if end == begin + 1 and given[begin].text.isdigit() and 100 <= value <= 900 and value % 100 == 0:
        return _below_hundred(given, end, value)
    if 1 <= value <= 9 and end == begin + 1:
        return _yardage(given, begin, value) or (value, end)
    return value, end


def _below_hundred(given: list[Piece], at: int, hundreds: float) -> tuple[float, int]:
    """What follows "four hundred": "and ten", "ten", or nothing that belongs to it."""
    begin = at + 1 if text_at(given, at) == "and" else at
    if (text_at(given, at), text_at(given, at + 1)) == ("in", "minus") and given[at].joined:
        # "500 -in -3": a listener's own word pieces of "and three".
        begin = at + 2
    rest = _small_ordinal(given, begin) or _small(given, begin)
    if rest is None or not 1 <= rest[0] < 100 or text_at(given, rest[1]) in CLUB_NOUNS | {"hundred"}:
        return hundreds, at
    if text_at(given, begin) == "one" and begin > at and text_at(given, begin + 1) in ("of", "more"):
        return hundreds, at
    return hundreds + rest[0], rest[1]


def _yardage(given: list[Piece], at: int, head: float) -> tuple[float, int] | None:
    """ "one fifty two", "five-ten", "one oh four": a unit that stands for hundreds, or None."""
    before = text_at(given, at - 1)
    if before == "par":
        return None
    if text_at(given, at + 1) in ("oh", "o", "zero", "0") and (unit := simple(text_at(given, at + 2))):
        return (head * 100 + unit, at + 3) if unit < 10 else None
    rest = _small(given, at + 1)
    if rest is None:
        return None
    tail, end = rest
    after = text_at(given, end)
    digits = given[at].text.isdigit() and given[at + 1].text.isdigit()
    if (
        digits
        and _three(given, at)
        and (before in YARDAGE_BEFORE or text_at(given, end + 1) in YARDAGE_AFTER)
    ):
        return head * 100 + tail * 10 + (simple(given[end].text) or 0), end + 1
    if head >= 2 and tail < 10 and end == at + 2 and given[at].first != given[at + 1].first:
        # A listener drops the "-ty" of "thirty five feet" and keeps two digits.
        units = ("feet", "foot", "yards", "metres") if digits else ("yards", "metres")
        return (head * 10 + tail, end) if after in units else None
    if digits and 4 <= head < 8 and 100 <= tail < 1000 and after in ("yards", "metres") and before != "par":
        return head * 1000 + tail, end
    if not 10 <= tail < 100 or tail != int(tail) or after in SHORT_UNITS | CLUB_NOUNS | {"hundred"}:
        return None
    if digits:
        # A listener's own digits: "1 52" is a yardage only where the talk around it says so.
        alone = before in BREAKS and after in BREAKS and head <= 2
        # "par 3 1 65", "1 52 8 iron"
        tee = before in (COMMA, *ENDS) and "par" in [text_at(given, at - step) for step in (2, 3)]
        golf = tee or text_at(given, at - 2) == "par" or (head <= 2 and text_at(given, end + 1) in CLUB_NOUNS)
        told = alone or golf or given[at + 1].joined or before in YARDAGE_BEFORE or after in YARDAGE_AFTER
        if not told or head > 6:
            return None
    return head * 100 + tail, end


def _spelt(given: list[Piece], at: int) -> tuple[float, int] | None:
    """ "One-two-five.": a length given digit by digit, or None; "four-three-five for the turn" are scores."""
    if not _three(given, at) or given[at].text.isdigit():
        return None
    before, after = text_at(given, at - 1), text_at(given, at + 3)
    alone = before in BREAKS and after in BREAKS
    after_it = after in BREAKS and before in YARDAGE_BEFORE
    told = alone or after_it or (after in YARDAGE_AFTER and after != "for")
    value = sum((simple(given[at + step].text) or 0) * 10 ** (2 - step) for step in range(3))
    return (value, at + 3) if told and value <= _LONGEST_SPELT else None


def _three(given: list[Piece], at: int) -> bool:
    """Whether a number's digits stand there one by one, as in "3-7-7", and no list of scores."""
    digits = given[at : at + 3]
    values = [simple(piece.text) for piece in digits]
    if len(digits) < 3 or any(value is None or value > 9 for value in values):
        return False
    following = at + 3 < len(given) and given[at + 3].joined
    return [piece.joined for piece in digits] == [False, True, True] and not following

"""Numbers that a listener took apart, or heard half of as another word: "180, 8 left", "140 for to the flag".

A digit alone, or a word that sounds like one, is joined to the number before it where what follows wants a
length and the two make no sense apart: a range that does not rise ("5th to 5 feet"), or a length too long to
be left ("2408 to the hole").
"""

from __future__ import annotations

from dataclasses import replace

from reviewkit.language.digit_by_digit import spelt
from reviewkit.language.half_heard import halved, hundred_under, oh_between
from reviewkit.language.headed import BEFORE_LEFT, GOALS, OF_A_HOLE, TARGETS, headed
from reviewkit.language.number_words import shown, words_of
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, digit_at, text_at
from reviewkit.language.tens_apart import tens_apart

_SOUNDS = {"to": 2, "too": 2, "do": 2, "free": 3, "for": 4, "fore": 4, "ate": 8, "won": 1}
_SHORT = ("feet", "foot", "footer")
_UNITS = ("yards", "yard", "metres", "metre", *_SHORT)
_LEFT = ("left", "out", *_UNITS)
_GOES_ON = (*GOALS, *TARGETS, *words_of("my me it par birdie bogey that this your us be"))
_TOLD_OF_SCORES = ("shot", "of", "score")
_LONGEST_LEFT = 300
_CLUB_BEFORE = ("a", "an", "the", "my", "hit", "little", "smooth", "soft", "hard", "easy", "full", "punch")
"""Behind these "9 to 6 feet" is a club, and what it left."""


def whole(given: list[Piece]) -> list[Piece]:
    """The pieces with such numbers in one, each keeping what was heard."""
    made: list[Piece] = []
    at = 0
    while at < len(given):
        value, end = _number(given, at)
        if end:
            heard = " ".join(piece.text for piece in given[at:end])
            made.append(replace(given[at].to(given[end - 1], shown(value), value), heard=heard))
        else:
            made.append(given[at])
        at = max(end, at + 1)
    return made


def _number(given: list[Piece], at: int) -> tuple[float, int]:
    """The number that begins at `at` and where it ends; the end is 0 where none is in parts."""
    apart = tens_apart(given, at)
    if apart[1]:
        return apart
    value = given[at].value
    if value is None:
        found = spelt(given, at, 0) if given[at].text == "one" else headed(given, at)
        return found if found[1] else halved(given, at)
    for reading in (
        spelt,
        _hundreds_apart,
        _hole_apart,
        _too_short,
        _parted_by_a_par,
        _unit_apart,
        _false_range,
        _overlong,
        hundred_under,
        oh_between,
    ):
        found = reading(given, at, value)
        if found[1]:
            return found
    return 0.0, 0


def _hole_apart(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "5, 3, 31, it's a short par 4" and "par 4, 3 84": a hole's length, its hundreds and the rest apart."""
    hundreds = digit_at(given, at)
    begin = at + 1 + (text_at(given, at + 1) == COMMA)
    rest, end = _below_100(given, begin)
    before = [text_at(given, at - back) for back in (1, 2, 3)]
    named = before[1].isdigit() and int(before[1]) <= 18 and before[2] in (*BREAKS, "hole", "number", "par")
    named = named or (before[1] in ("one", "1") and before[2] in ("short", "long", "little", "last"))
    named = named or begin == at + 1
    directly = before[1] == "par" and before[0].isdigit()
    if not 1 <= hundreds <= 5 or not rest or not ((before[0] in BREAKS and named) or directly):
        return 0.0, 0
    after = [text_at(given, end + step) for step in (0, 1)]
    told = after[0] in OF_A_HOLE or (after[0] in (COMMA, *ENDS) and after[1] in OF_A_HOLE)
    return (hundreds * 100.0 + rest, end) if told or directly else (0.0, 0)


def _too_short(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "Par 5, 112": of "five twelve" a listener heard the par's own number and the rest."""
    back = 2 if text_at(given, at - 1) == COMMA else 1
    par = digit_at(given, at - back) if at > back else 0
    told = par in (4, 5) and text_at(given, at - back - 1) == "par" and text_at(given, at + 1) in BREAKS
    return (par * 100 + value - 100, at + 1) if told and 100 <= value < 200 else (0.0, 0)


def _parted_by_a_par(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "A par 4300 and 44 yards" is a hole of 344."""
    rest, end = _below_100(given, at + 2)
    behind_par = text_at(given, at - 1) in ("3", "4", "5") and text_at(given, at - 2) in ("par", "per")
    split = behind_par and value in range(100, 700, 100) and text_at(given, at + 1) == "and"
    return (value + rest, end) if split and rest else (0.0, 0)


def _below_100(given: list[Piece], at: int) -> tuple[float, int]:
    """A number of two figures and where it ends; "9 to 4" is ninety-four."""
    value = given[at].value if at < len(given) and given[at].text.isdigit() else None
    if value is not None and 10 <= value < 100:
        return value, at + 1
    if digit_at(given, at) and text_at(given, at + 1) == "to" and digit_at(given, at + 2):
        return digit_at(given, at) * 10.0 + digit_at(given, at + 2), at + 3
    return 0.0, 0


def _hundreds_apart(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "2, 15 to go"."""
    rest = given[at + 2].value if at + 2 < len(given) else None
    opens = value in (1, 2) and given[at].text.isdigit() and text_at(given, at - 1) in BREAKS
    if not opens or text_at(given, at + 1) != COMMA or rest is None or not 10 <= rest < 100:
        return 0.0, 0
    after, beyond = text_at(given, at + 3), text_at(given, at + 4)
    to_go = after in ("out", "left") or (after == "to" and beyond in GOALS)
    return (value * 100 + rest, at + 3) if to_go and given[at + 2].text.isdigit() else (0.0, 0)


def _unit_apart(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "180, 8 left", "140 for to the flag", "150 to. Left"."""
    if value % 10 or not 20 <= value <= 690 or not given[at].text.isdigit():
        return 0.0, 0
    apart = text_at(given, at + 1) == COMMA
    unit = digit_at(given, at + 1 + apart)
    sound = 0 if apart else _SOUNDS.get(text_at(given, at + 1), 0)
    end = at + 2 + apart
    if not (unit or sound):
        return 0.0, 0
    after, beyond = text_at(given, end), text_at(given, end + 1)
    if after in (COMMA, *ENDS) and sound:
        # What is chopped in mid-sentence goes on with its target: "150 to. The flag".
        lone = value >= 100 and beyond not in _GOES_ON and text_at(given, at - 1) not in _TOLD_OF_SCORES
        return (value + sound, end) if lone else (0.0, 0)
    left = after in ("left", "out") if apart else after in _LEFT and (value < 100 or after not in _SHORT)
    to_go = after == "to" and beyond in GOALS
    over = sound == 4 and after in ("over", "into", "from") and beyond in ("the", "a")
    more = beyond in ("to", "holes", "hand", "of", "putts") and after == "left"
    return (value + (unit or sound), end) if (left and not more) or to_go or over else (0.0, 0)


def _false_range(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "5th to 5 feet", "20 to 5 feet", "got 4 to 5 yards left": the tens, and a "ty" heard as "to"."""
    last = digit_at(given, at + 2)
    unit, beyond = text_at(given, at + 3), text_at(given, at + 4)
    left = unit in ("yards", "metres") and text_at(given, at - 1) in BEFORE_LEFT
    if text_at(given, at + 1) != "to" or not last or not (unit in _SHORT or left):
        return 0.0, 0
    if left and value in range(2, 10) and beyond in ("to", "with", "left", "out", "now"):
        # "4 to 5 yards to the pin": no swing is told so nearly.
        return value * 10 + last, at + 3
    ordinal, ten = not given[at].text.isdigit(), value in range(20, 100, 10)
    before = text_at(given, at - 1)
    if before in ("from", "between") or not (ten or value in range(2, 10)):
        return 0.0, 0
    if before in _CLUB_BEFORE and not (ten or ordinal):
        return 0.0, 0
    if ten or ordinal or last <= value:
        return (value if ten else value * 10) + last, at + 3
    return 0.0, 0


def _overlong(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "2408 to the hole" for "two forty-eight", "5105 left" for "a hundred and five left"."""
    after = text_at(given, at + 1)
    to_go = after == "left" or (after == "to" and text_at(given, at + 3) in TARGETS)
    digits = shown(value)
    if not to_go or len(digits) != 4 or not digits.isdigit():
        return 0.0, 0
    readings = [int(digits[:2] + digits[3])] if digits[2] == "0" != digits[3] else []
    readings += [int(digits[1:])] if digits[1] != "0" else []
    likely = [reading for reading in readings if reading <= _LONGEST_LEFT]
    return (float(likely[0]), at + 1) if likely else (0.0, 0)

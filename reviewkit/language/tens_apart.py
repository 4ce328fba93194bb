"""Numbers whose tens a listener took apart, or heard as other words: "one-third at five to the stick".

"-ty" is short, and is heard as "to", as an ordinal's ending, or with the unit behind it as a pause. What
follows says that a length was told: a goal, a unit, what is left.
"""

from __future__ import annotations

from reviewkit.language.number_words import CLUB_NOUNS, LIKE_PAR, words_of
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, digit_at, text_at

_SOUNDS = {"to": 2, "too": 2, "free": 3, "tree": 3, "for": 4, "fore": 4}
_TWENTY = ("went", "when", "want")
_OPENS = frozenset({"one", *_SOUNDS, *_TWENTY})
"""Words that are no numbers, and may begin one."""
_GOALS = words_of("the go pin flag stick hole green front middle cup centre")
_LEFT = words_of("left out in yards yard metres metre")
_FAR = (*_LEFT, *words_of("from over across downhill uphill into"))
_SHORT = words_of("feet foot footer footers inches")
_BESIDE = words_of("off away right left past short shy below above under behind beyond from")
_ACROSS = words_of("across over uphill downhill through")
_NOWHERE = words_of("not no and so but i i'm i've it it's that's with which")
"""Where nobody goes to."""
_MINE = ("my", "the", "his", "our")


def tens_apart(given: list[Piece], at: int) -> tuple[float, int]:
    """The number that begins at `at`, and where it ends; the end is 0 where none is taken apart like that."""
    if given[at].value is None and given[at].text not in _OPENS:
        return 0.0, 0
    for reading in (
        _ordinal_tens,
        _tens_to_unit,
        _fallen_range,
        _after_a_pause,
        _one_by_one,
        _ordinal_feet,
        _and_maybe,
        _noughts,
        _free,
        _went_to,
        _ty_two,
        _digits_to_unit,
    ):
        found = reading(given, at)
        if found[1]:
            return found
    return 0.0, 0


def _ordinal_tens(given: list[Piece], at: int) -> tuple[float, int]:
    """ "2 -fifth 5 to go", "one -third at 5 to the stick", "1 third 9." by itself."""
    hundreds = digit_at(given, at)
    tens = _ordinal(given, at + 1)
    begin = at + 2 + (text_at(given, at + 2) in ("at", "to", "and", "of"))
    unit = digit_at(given, begin)
    if not (1 <= hundreds <= 6 and tens and unit):
        return 0.0, 0
    alone = text_at(given, at - 1) in BREAKS and text_at(given, begin + 1) in BREAKS
    if not (given[at + 1].joined or alone):
        return 0.0, 0
    return (hundreds * 100.0 + tens * 10 + unit, begin + 1) if _told(given, begin + 1) else (0.0, 0)


def _tens_to_unit(given: list[Piece], at: int) -> tuple[float, int]:
    """ "A hundred and 7 to 4 across the gully": 174, but "from 107 to 4 feet" is a stroke."""
    value = given[at].value or 0
    hundreds, tens = divmod(value, 100)
    unit = digit_at(given, at + 2)
    if not (1 <= hundreds <= 6 and 2 <= tens <= 9 and unit) or text_at(given, at + 1) != "to":
        return 0.0, 0
    if text_at(given, at - 1) == "from" or not _told(given, at + 3):
        return 0.0, 0
    return hundreds * 100 + tens * 10 + unit, at + 3


def _fallen_range(given: list[Piece], at: int) -> tuple[float, int]:
    """ "9-5 to the stick", "7 to 1 left": no range falls."""
    tens, unit = digit_at(given, at), digit_at(given, at + 2)
    if text_at(given, at + 1) != "to" or tens < 3 or not 1 <= unit < tens:
        return 0.0, 0
    goal = text_at(given, at + 3) == "to" and text_at(given, at + 4) in _GOALS
    left = text_at(given, at + 3) in ("out", "yards", "metres")
    left = left or (text_at(given, at + 3) == "left" and text_at(given, at + 4) in BREAKS)
    return (tens * 10.0 + unit, at + 3) if goal or left else (0.0, 0)


def _after_a_pause(given: list[Piece], at: int) -> tuple[float, int]:
    """ "100, 18 for my third", "100, 18 from there"."""
    value = given[at].value
    rest = given[at + 2].value if at + 2 < len(given) else None
    if value not in (100, 200, 300, 400) or rest is None or not 10 <= rest < 100 or rest != int(rest):
        return 0.0, 0
    if text_at(given, at + 1) not in (COMMA, *ENDS) or not text_at(given, at + 2).isdigit():
        return 0.0, 0
    after, beyond, last = (text_at(given, at + step) for step in (3, 4, 5))
    turn = after == "for" and beyond in (*_MINE, "me")
    here = after == "from" and beyond in ("there", "here")
    goal = after == "to" and beyond in _GOALS and last not in ("front", "bunker", "water")
    left = after in ("yards", "metres") or (after in ("left", "out", "in") and beyond in BREAKS)
    return (value + rest, at + 3) if turn or here or goal or left else (0.0, 0)


def _one_by_one(given: list[Piece], at: int) -> tuple[float, int]:
    """ "1-6 to 5, a one-shotter" is 165, as "1, 50, 2." is 152, where nothing else is said."""
    if text_at(given, at - 1) not in BREAKS:
        return 0.0, 0
    between = text_at(given, at + 1), text_at(given, at + 3)
    hundreds, middle, unit = digit_at(given, at), _whole(given, at + 2), digit_at(given, at + 4)
    alone = text_at(given, at + 5) in BREAKS
    if not (1 <= hundreds <= 5 and middle and unit and alone) or between[0] != between[1]:
        return 0.0, 0
    if between[0] == "to" and middle < 10 and given[at + 2].joined and not given[at + 4].joined:
        return hundreds * 100.0 + middle * 10 + unit, at + 5
    ends = text_at(given, at - 1) in ("", *ENDS) and text_at(given, at + 5) in ("", *ENDS)
    if between[0] == COMMA and middle in range(20, 100, 10) and ends:
        return hundreds * 100.0 + middle + unit, at + 5
    return 0.0, 0


def _ordinal_feet(given: list[Piece], at: int) -> tuple[float, int]:
    """ "And third of 5 feet to the left", ", third 9 feet,": 35 and 39."""
    tens, of = _ordinal(given, at), text_at(given, at + 1) in ("of", "at")
    unit = digit_at(given, at + 1 + of)
    apart = of or given[at + 1].joined if unit else False
    before = text_at(given, at - 1)
    told = before in BREAKS or (apart and before in ("and", "about", "from", "a"))
    if not (tens and unit and told) or text_at(given, at + 2 + of) not in ("feet", "foot", "footer"):
        return 0.0, 0
    return tens * 10.0 + unit, at + 2 + of


def _and_maybe(given: list[Piece], at: int) -> tuple[float, int]:
    """ "A hundred and maybe 7": eighty is heard as "maybe"."""
    hundreds = given[at].value
    begin = at + 1 + (text_at(given, at + 1) == COMMA)
    unit = digit_at(given, begin + 2)
    maybe = [text_at(given, begin), text_at(given, begin + 1)] == ["and", "maybe"]
    if not maybe or not unit or hundreds not in (100, 200, 300, 400, 500):
        return 0.0, 0
    return hundreds + 80.0 + unit, begin + 3


def _noughts(given: list[Piece], at: int) -> tuple[float, int]:
    """ "1208 to go" is a hundred and twenty, and eight; so is "it's only 1206, par 3"."""
    text, after, beyond = (text_at(given, at + step) for step in range(3))
    if not (text.isdigit() and len(text) == 4 and text[2] == "0" != text[3]) or text[:2] in ("19", "20"):
        return 0.0, 0
    length = float(text[:2] + text[3])
    goal = (after == "to" and beyond in _GOALS) or (after in ("left", "out") and beyond in BREAKS)
    told = text_at(given, at - 1) in ("is", "it's", "only", "that's") and after in (*BREAKS, "and", "yards")
    return (length, at + 1) if (goal and length <= 300) or (told and length < 600) else (0.0, 0)


def _free(given: list[Piece], at: int) -> tuple[float, int]:
    """ "Free 6-5." is three sixty-five, where nothing else is said."""
    hundreds = _SOUNDS.get(text_at(given, at), 0)
    tens, unit = digit_at(given, at + 1), digit_at(given, at + 3)
    ranged = text_at(given, at + 2) == "to" and given[at + 3].joined if unit else False
    alone = text_at(given, at - 1) in BREAKS and text_at(given, at + 4) in BREAKS
    if not (hundreds and tens and ranged and alone):
        return 0.0, 0
    return hundreds * 100.0 + tens * 10 + unit, at + 4


def _went_to(given: list[Piece], at: int) -> tuple[float, int]:
    """ "It's on, went to 5 feet off to the right": so far off is no place to go to, but twenty-five."""
    unit = digit_at(given, at + 2)
    said = text_at(given, at) in _TWENTY and text_at(given, at + 1) == "to"
    if not said or not unit or text_at(given, at - 1) not in BREAKS:
        return 0.0, 0
    beside = text_at(given, at + 3) in _SHORT and text_at(given, at + 4) in _BESIDE
    return (20.0 + unit, at + 3) if beside else (0.0, 0)


def _ty_two(given: list[Piece], at: int) -> tuple[float, int]:
    """ "140 to across the quarry", "from 150 to not bad", "40 to 7 iron", "400 to, par four": two is heard as
    "to"; four as "for", as in "130 for yards".
    """
    value, text = given[at].value, text_at(given, at + 1)
    if value is None or not given[at].text.isdigit() or not 20 <= value < 650 or value % 10 or value == 100:
        return 0.0, 0
    after, beyond = text_at(given, at + 2), text_at(given, at + 3)
    if text == "for":
        return (value + 4, at + 2) if after in ("yards", "metres") else (0.0, 0)
    club = digit_at(given, at + 2) and beyond in CLUB_NOUNS
    ends = value > 100 and after == COMMA and beyond in LIKE_PAR
    told = text == "to" and (club or ends or (value > 100 and after in (*_ACROSS, *_NOWHERE)))
    return (value + 2, at + 2) if told else (0.0, 0)


def _digits_to_unit(given: list[Piece], at: int) -> tuple[float, int]:
    """ "1 7 to 5 left": digit by digit, and the "-ty" as "to"."""
    hundreds, tens, unit = digit_at(given, at), digit_at(given, at + 1), digit_at(given, at + 3)
    apart = text_at(given, at + 2) == "to" and 1 <= hundreds <= 2 and tens >= 2 and unit
    if not apart or not (text_at(given, at + 4) in _LEFT and _told(given, at + 4)):
        return 0.0, 0
    return hundreds * 100.0 + tens * 10 + unit, at + 4


def _told(given: list[Piece], at: int) -> bool:
    """Whether what stands there follows a length of the fairway."""
    after, beyond = text_at(given, at), text_at(given, at + 1)
    return after in BREAKS or after in _FAR or (after == "to" and beyond in _GOALS)


def _ordinal(given: list[Piece], at: int) -> int:
    text = text_at(given, at)
    value = given[at].value if at < len(given) else None
    ordinal = text[:-2].isdigit() and text[-2:] in ("th", "rd", "nd")
    return int(value) if ordinal and value is not None and 3 <= value <= 9 else 0


def _whole(given: list[Piece], at: int) -> int:
    value = given[at].value if at < len(given) and given[at].text.isdigit() else None
    return int(value) if value is not None and value < 100 else 0

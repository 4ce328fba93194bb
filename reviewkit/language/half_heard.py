"""Numbers of which one word was heard as another that sounds like it: "1 under 40 to the pin" for 140.

Each reading is sure of itself by what stands around it: a hole's introduction, a unit, a target.
"""

from __future__ import annotations

from collections.abc import Collection

from reviewkit.language.number_words import LIKE_PAR, words_of
from reviewkit.language.pieces import BREAKS, COMMA, Piece, text_at

_SOUNDS = {"to": 2, "too": 2, "free": 3, "tree": 3, "for": 4, "fore": 4, "fife": 5, "ate": 8}
_UNITS = ("feet", "foot", "footer", "yards", "metres")
_TO_GO = ("left", "out", "yards", "metres")
_TARGETS = ("pin", "flag", "stick", "hole", "green", "front", "middle", "cup", "centre")
_AIMS = words_of(
    "need needs needed want wants par birdie bogey double eagle putt putts make makes made get gets does do "
    "would will shoot shot total card round i'd i'll i've"
)
_SIGNS = ("sign", "board", "card", "plate", "scorecard", "whites", "yellows", "reds", "blues", "tips")
_LIES = ("downhill", "uphill", "downwind", "dogleg")
_HALF_PAR = ("tar", "car", "pair", "bark")
"""How "par" is heard besides, where a length before it says that it is one."""
_PAR_NEAR = 10
"""Words behind "par 4" within which the hole's length is told."""


def halved(given: list[Piece], at: int) -> tuple[float, int]:
    """ "Stopped too and a half feet away" is two and a half; the value, and where it ends or 0."""
    unit = _SOUNDS.get(given[at].text, 0)
    half = [text_at(given, at + step) for step in (1, 2, 3)] == ["and", "a", "half"]
    if not unit or not half or text_at(given, at + 4) not in _UNITS or text_at(given, at - 1).isdigit():
        return 0.0, 0
    return unit + 0.5, at + 4


def four_hundred(given: list[Piece], at: int) -> tuple[float, int]:
    """ "A par 5 that runs back down to the beach for 78 and" is a length, "a bogey does for 78" a total.

    So are "the hardest one for 30, driver", "for 55 downhill" and "it says for 198 on the sign".
    """
    rest = given[at + 1].value if at + 1 < len(given) else None
    if _SOUNDS.get(given[at].text) != 4 or rest is None or rest != int(rest):
        return 0.0, 0
    length = rest + 400 if 10 <= rest < 100 else rest + 300 if 101 <= rest < 200 else 0.0
    after = text_at(given, at + 2)
    behind = at + 2 + (after in ("yards", "metres"))
    told = after in _LIES or _to_be_driven(given, behind) or _on_a_sign(given, behind)
    if not told and after in (*BREAKS, "and", "yards", "metres"):
        told = _described(given, at) or _before_a_par(given, at)
    return (length, at + 2) if length and told else (0.0, 0)


def hundred_under(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "1 under 40 to the pin", "I've 1 under and 18 left": a hundred heard as "under"."""
    begin = at + 2 + (text_at(given, at + 2) == "and")
    rest = given[begin].value if begin < len(given) else None
    if value not in (1, 2, 3) or text_at(given, at + 1) != "under" or rest is None or not 1 <= rest < 100:
        return 0.0, 0
    after = [text_at(given, begin + step) for step in (1, 2, 3)]
    to_go = after[0] in _TO_GO or after[:2] in (["to", "go"], ["for", "me"])
    to_go = to_go or (after[:2] == ["to", "the"] and after[2] in _TARGETS)
    return (value * 100 + rest, begin + 1) if to_go and rest == int(rest) else (0.0, 0)


def oh_between(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "Par 4 with the woods, 4 of 5." is a hole of four-oh-five."""
    unit = given[at + 2].value if at + 2 < len(given) else None
    alone = text_at(given, at - 1) in BREAKS and text_at(given, at + 3) in BREAKS
    if text_at(given, at + 1) != "of" or unit is None or not alone:
        return 0.0, 0
    hole = value in range(1, 6) and unit in range(1, 10) and _behind_a_par(given, at)
    return (value * 100 + unit, at + 3) if hole else (0.0, 0)


def _described(given: list[Piece], at: int) -> bool:
    """Whether a par stands before, and how the hole looks behind it, not what somebody needs there."""
    least = 2 if text_at(given, at - 1) == COMMA else 3
    back = next((back for back in range(least, 3 + _PAR_NEAR) if _par(given, at - back)), 0)
    between = [text_at(given, place) for place in range(at - back + 1, at)]
    return back > 0 and not any(word.isdigit() or word in _AIMS for word in between)


def _to_be_driven(given: list[Piece], at: int) -> bool:
    """Whether a driver is named at `at`, right behind a length."""
    return text_at(given, at) in BREAKS and text_at(given, at + 1) == "driver"


def _on_a_sign(given: list[Piece], at: int) -> bool:
    return text_at(given, at) in ("on", "off") and text_at(given, at + 2) in _SIGNS


def _before_a_par(given: list[Piece], at: int) -> bool:
    """Whether a par is told right behind the number that follows `at`: "the last for 168 yards, a par 5".

    "13 for 102, par 4" is another entry's.
    """
    words = (*LIKE_PAR, *_HALF_PAR)
    return not text_at(given, at - 1).isdigit() and any(_par(given, at + step, words) for step in range(3, 7))


def _behind_a_par(given: list[Piece], at: int) -> bool:
    return any(_par(given, at - back) for back in range(2, 2 + _PAR_NEAR))


def _par(given: list[Piece], at: int, words: Collection[str] = LIKE_PAR) -> bool:
    """Whether the number of a par stands at `at`, behind one of these words for "par"."""
    return text_at(given, at) in ("3", "4", "5") and text_at(given, at - 1) in words

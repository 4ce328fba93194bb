"""Numbers of which one word was heard as another that sounds like it: "1 under 40 to the pin" for 140.

Each reading is sure of itself by what stands around it: a hole's introduction, a unit, a target.
"""

from __future__ import annotations

from reviewkit.language.headed import TARGETS, par_at
from reviewkit.language.pieces import BREAKS, Piece, text_at

_SOUNDS = {"to": 2, "too": 2, "free": 3, "tree": 3, "for": 4, "fore": 4, "fife": 5, "ate": 8}
_UNITS = ("feet", "foot", "footer", "yards", "metres")
_TO_GO = ("left", "out", "yards", "metres")
_PAR_NEAR = 10
"""Words behind "par 4" within which the hole's length is told."""


def halved(given: list[Piece], at: int) -> tuple[float, int]:
    """ "Stopped too and a half feet away" is two and a half; the value, and where it ends or 0."""
    unit = _SOUNDS.get(given[at].text, 0)
    half = [text_at(given, at + step) for step in (1, 2, 3)] == ["and", "a", "half"]
    if not unit or not half or text_at(given, at + 4) not in _UNITS or text_at(given, at - 1).isdigit():
        return 0.0, 0
    return unit + 0.5, at + 4


def hundred_under(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "1 under 40 to the pin", "I've 1 under and 18 left": a hundred heard as "under"."""
    begin = at + 2 + (text_at(given, at + 2) == "and")
    rest = given[begin].value if begin < len(given) else None
    if value not in (1, 2, 3) or text_at(given, at + 1) != "under" or rest is None or not 1 <= rest < 100:
        return 0.0, 0
    after = [text_at(given, begin + step) for step in (1, 2, 3)]
    to_go = after[0] in _TO_GO or after[:2] in (["to", "go"], ["for", "me"])
    to_go = to_go or (after[:2] == ["to", "the"] and after[2] in TARGETS)
    return (value * 100 + rest, begin + 1) if to_go and rest == int(rest) else (0.0, 0)


def oh_between(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "Par 4 with the woods, 4 of 5." is a hole of four-oh-five."""
    unit = given[at + 2].value if at + 2 < len(given) else None
    alone = text_at(given, at - 1) in BREAKS and text_at(given, at + 3) in BREAKS
    if text_at(given, at + 1) != "of" or unit is None or not alone:
        return 0.0, 0
    hole = value in range(1, 6) and unit in range(1, 10) and _behind_a_par(given, at)
    return (value * 100 + unit, at + 3) if hole else (0.0, 0)


def _behind_a_par(given: list[Piece], at: int) -> bool:
    return any(par_at(given, at - back) for back in range(2, 2 + _PAR_NEAR))

"""Yardages told digit by digit: "3, 7, 6 yards", "1, 2, 5, no wind"."""

from __future__ import annotations

from reviewkit.language.number_words import LIKE_PAR
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, digit_at, text_at

_AFTER_SPELT = (COMMA, *ENDS, "yards", "metres", "to", "out", "left", "in", "uphill", "downhill", "par")
_LONGEST_HOLE = 6
"""Its hundreds of yards."""


def spelt(given: list[Piece], at: int, value: float) -> tuple[float, int]:
    """ "3, 7, 6 yards", "3 4 4, bends left", "1, 2, 5.": a yardage told digit by digit."""
    for step, end, after in ((2, at + 5, ("yards", "metres")), (1, at + 3, _AFTER_SPELT)):
        digits = [digit_at(given, at + step * place) for place in range(3)]
        apart = step == 1 or text_at(given, at + 1) == COMMA == text_at(given, at + 3)
        opens = step == 2 or (digits[0] < 6 and text_at(given, at - 1) in BREAKS)
        told = text_at(given, end) in after or (step == 2 and _one_by_one(given, at, digits))
        if all(digits) and apart and opens and told:
            return digits[0] * 100.0 + digits[1] * 10 + digits[2], end
    return 0.0, 0


def _one_by_one(given: list[Piece], at: int, digits: list[int]) -> bool:
    """ "1, 2, 5, no wind" opens the talk with what is left; "1, 2, 3" and "1, 4, 5, 4" count.

    "3, 8, 1 driver" and "3, 7, 6, par 4" tell a hole's length.
    """
    after = [text_at(given, at + step) for step in (5, 6)]
    hole = "driver" in after or (after[0] in BREAKS and after[1] in LIKE_PAR and digit_at(given, at + 7) > 0)
    if hole and digits[0] <= _LONGEST_HOLE and digits[2] != digits[1] + 1:
        return True
    alone = text_at(given, at - 1) in ("", *ENDS) and after[0] in (COMMA, *ENDS) and not after[1].isdigit()
    return alone and digits[0] == 1 and digits[1] + 1 != digits[2]

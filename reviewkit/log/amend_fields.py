"""Which columns a person may correct, and how a correction's text becomes a value and back."""

from __future__ import annotations

import re

from reviewkit.errors import ValueRuleError
from reviewkit.log.folder import cell
from reviewkit.model import HoleScore, Shot, values

Value = str | int | float | bool | None

HOLE_FIELDS: dict[str, str] = {
    "hole": "whole",
    "start_s": "seconds",
    "par": "whole",
    "strokes": "whole",
    "putts": "whole",
    "penalty_strokes": "whole",
    "fairway_hit": "yes",
    "green_in_regulation": "yes",
}
SHOT_FIELDS: dict[str, str] = {
    "kind": "word",
    "club": "word",
    "lie": "word",
    "distance_yd": "length",
    "result": "word",
    "miss": "word",
    "contact": "word",
    "penalty_strokes": "whole",
    "holed": "yes",
    "start_s": "seconds",
}
CHOICES: dict[str, tuple[str, ...]] = {
    "kind": values.KINDS,
    "club": values.CLUBS,
    "lie": values.LIES,
    "result": values.RESULTS,
    "miss": values.MISSES,
    "contact": values.CONTACTS,
}
LIMITS = {
    "hole": (1, values.MAX_HOLE),
    "par": (3, 6),
    "strokes": (1, 30),
    "putts": (0, 15),
    "penalty_strokes": (0, 9),
}
STROKE_PENALTIES = (0, 4)
NEEDED = ("hole", "start_s", "kind", "result", "penalty_strokes", "holed")
YARDS = {"": 1.0, "yd": 1.0, "m": values.YARDS_PER_METRE, "ft": 1 / values.FEET_PER_YARD}
LENGTH = re.compile(r"(\d+(?:\.\d+)?)\s*(yd|m|ft|)")
YES = {"true": True, "yes": True, "1": True, "false": False, "no": False, "0": False}


def correctable(field: str, of_shot: bool) -> dict[str, str]:
    """The table that a column is in; ValueRuleError when it may not be corrected."""
    fields = SHOT_FIELDS if of_shot else HOLE_FIELDS
    if field not in fields:
        what = "a stroke" if of_shot else "a hole"
        raise ValueRuleError(f"'{field}' of {what} cannot be corrected.", f"Use one of {', '.join(fields)}.")
    return fields


def parse(field: str, text: str, of_shot: bool) -> Value:
    """The value that `text` means for a column; empty is not known (None, or empty for words).

    A length may carry yd, m or ft (`12ft` is 4.0). Raises ValueRuleError that says what is allowed.
    """
    fields = correctable(field, of_shot)
    text = text.strip()
    if not text:
        return _unknown(field, of_shot)
    match fields[field]:
        case "word":
            values.one_of(field, text, CHOICES[field])
            return text
        case "yes":
            return _yes(field, text)
        case "whole":
            return _whole(field, text, of_shot)
        case "length":
            return _length(text)
        case _:
            return _seconds(field, text)


def _unknown(field: str, of_shot: bool) -> Value:
    if of_shot and field == "result":
        return "unknown"
    if field in NEEDED and not (field == "penalty_strokes" and not of_shot):
        raise ValueRuleError(f"{field} cannot be left empty.")
    return "" if field in CHOICES else None


def _yes(field: str, text: str) -> bool:
    if text.lower() not in YES:
        raise ValueRuleError(f"{field} '{text}' is not true or false.")
    return YES[text.lower()]


def _whole(field: str, text: str, of_shot: bool) -> int:
    low, high = STROKE_PENALTIES if of_shot else LIMITS[field]
    if not text.isdecimal() or not low <= int(text) <= high:
        raise ValueRuleError(f"{field} '{text}' is not a whole number from {low} to {high}.")
    return int(text)


def _length(text: str) -> float:
    found = LENGTH.fullmatch(text.lower())
    yards = float(found[1]) * YARDS[found[2]] if found else -1.0
    if not 0 <= yards <= 1000:
        raise ValueRuleError(f"distance '{text}' is not a length.", "Write yards (130), 119m or 12ft.")
    return round(yards, 3)


def _seconds(field: str, text: str) -> float:
    try:
        seconds = float(text)
    except ValueError:
        seconds = -1.0
    if not 0 <= seconds < 1e6:
        raise ValueRuleError(f"{field} '{text}' is not a time in seconds.")
    return seconds


def text_of(row: HoleScore | Shot, field: str) -> str:
    """A row's value as the folder writes it, which is how amendments.csv keeps it."""
    value = getattr(row, field)
    return "" if value == "unknown" else cell(value)


def same(field: str, one: str, other: str, of_shot: bool) -> bool:
    """Whether two texts mean the same value (`4` and `4.0` do)."""
    try:
        return parse(field, one, of_shot) == parse(field, other, of_shot)
    except ValueRuleError:
        return one == other

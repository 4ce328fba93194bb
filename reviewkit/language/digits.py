"""What digits still need once words are digits: units, clock times, hyphens, and numbers run together."""

from __future__ import annotations

from dataclasses import replace

from reviewkit.language.number_words import (
    ABBREVIATED,
    CLUB_NOUNS,
    LIKE_PAR,
    LONG_UNITS,
    YARDAGE_AFTER,
    YARDAGE_BEFORE,
    shown,
)
from reviewkit.language.pieces import BREAKS, COMMA, ENDS, Piece, text_at

_MOST_OVER = 36
_AFTER_STANDING = (*BREAKS, "so", "and", "but", "now", "then", "after", "par", "through")
_SMALL = ("feet", "foot", "inches", "percent")


def settle(given: list[Piece]) -> list[Piece]:
    """ "7i" and "10m" spelt out, "157 iron" as "150 7 iron", "1:43" read, "10-15" a range."""
    made: list[Piece] = []
    for at, piece in enumerate(given):
        before, after = text_at(given, at - 1), text_at(given, at + 1)
        value = piece.value or 0
        if before[:1].isdigit() and piece.text in ABBREVIATED and (piece.joined or piece.text == "m"):
            made.append(replace(piece, text=ABBREVIATED[piece.text], joined=False))
        elif ":" in piece.text and len(piece.text) > 1:
            made.append(_clock(piece, before, after))
        elif 99 < value < 1300 and _is_time(given, at):
            made.append(replace(piece, text=f"{int(value) // 100}:{int(value) % 100:02}", value=None))
        elif 1000 < value < 2600 and value % 10 > 1 and after in CLUB_NOUNS:
            # "1507 iron" is one of 150, with a 7.
            made += _apart(piece, value // 10, value % 10)
        elif _hole_and_length(value, before, after):
            made += _apart(piece, value // 1000, value % 1000)
        elif value > 9 and after in CLUB_NOUNS and value % 10 > 1:
            made += _apart(piece, value - value % 10, value % 10)
        elif (told := _score_and_total(value)) and _is_standing(given, at):
            made += _with_comma(*_apart(piece, *told))
        elif 1 <= value < 100 and (parts := _full_stop_within(piece, after)):
            made += parts
        elif piece.text[:4] in ("100.", "110.") and len(piece.text) == 6:
            # "110 .72" is a hundred and 72.
            made.append(replace(piece, text=f"1{piece.text[4:]}", value=100 + float(piece.text[4:])))
        elif _is_hundredth(piece.text, value, after):
            made.append(replace(piece, text=shown(round(value * 100)), value=round(value * 100)))
        elif _spelt_out(given, at):
            made[-3:] = [_in_one(given[at - 2 : at + 1])]
        elif piece.joined and value and given[at - 1].value and before.isdigit() and piece.text.isdigit():
            made[-1:] = _hyphened(given[at - 1], piece, "club" if _club_behind(given, at) else after)
        else:
            made.append(piece)
    return made


def _spelt_out(given: list[Piece], at: int) -> bool:
    """ "1-4-9", a length told figure by figure, but not "4-5-4", three scores."""
    figures = given[max(0, at - 2) : at + 1]
    if len(figures) < 3 or not all(len(one.text) == 1 and one.text.isdigit() for one in figures):
        return False
    joined = [one.joined for one in given[max(0, at - 2) : at + 2]]
    if not all(joined[1:3]) or (joined[3:] == [True] and text_at(given, at + 1).isdigit()):
        return False
    first, second, third = (one.value or 0 for one in figures)
    return 1 <= first <= 4 and (first < 3 or max(second, third) > 6 or 0 in (second, third))


def _in_one(figures: list[Piece]) -> Piece:
    text = "".join(one.text for one in figures)
    return figures[0].to(figures[-1], text, float(text))


def _full_stop_within(piece: Piece, after: str) -> list[Piece]:
    """ "4 .81" for 481, "par 3 .196" and "88 .54 degree": a stop that a listener put within numbers."""
    whole, _, rest = piece.text.partition(".")
    if len(rest) == 3 or (len(rest) == 2 and after in ("degree", *CLUB_NOUNS)):
        return _with_comma(*(replace(piece, text=part, value=float(part)) for part in (whole, rest)))
    if len(rest) == 2 and rest not in ("25", "50", "75") and 1 <= int(whole) <= 6 and after not in _SMALL:
        return [replace(piece, text=whole + rest, value=float(whole + rest))]
    return []


def _is_hundredth(text: str, value: float, after: str) -> bool:
    """ "3.34 metres" and "it's on .25 feet": hundreds, or feet, with a stop before the last two figures."""
    if value < 1:
        return value >= 0.1 and after in ("feet", "foot") and len(text.partition(".")[2]) == 2
    return 1 < value < 7 and value * 4 % 1 > 0 and after in LONG_UNITS | {"out", "left", "to"}


def _hole_and_length(value: float, before: str, after: str) -> bool:
    """ "par 4410", "18341" and "the 16468 metres": a course of 6,740 yards is no such number."""
    if 10_000 < value < 18_700 and 90 < value % 1000 < 700:
        return True
    if before in ("", *ENDS) and after not in (*LONG_UNITS, *_SMALL):
        # "9365 back towards the clubhouse", but "1998 was the year"
        return 1100 < value < 9700 and 110 <= value % 1000 <= 600 and not 1900 <= value < 2100
    if after in LONG_UNITS and before != "par":
        return 7600 < value < 18700 or 1000 < value < 1700
    if (after == "par" or after in CLUB_NOUNS) and 1000 < value < 9700:
        return 100 <= value % 1000 < 600
    return before in LIKE_PAR and 3000 < value < 6700


def _score_and_total(value: float) -> tuple[float, float] | None:
    """ "75 over" is a seven, and five over; "610 over" a six, and ten over."""
    score, total = divmod(value, 10 if value < 100 else 100)
    told = value > _MOST_OVER and 3 <= score < 10 and 0 < total <= _MOST_OVER
    return (score, total) if told else None


def _hyphened(first: Piece, second: Piece, after: str) -> list[Piece]:
    """ "10-15" is a range; "160-1" was one number; "6-6 iron" and "3-388 yards" are two."""
    tens, unit = first.value or 0, second.value or 0
    if (after in CLUB_NOUNS and (tens == unit or tens > 20)) or (tens < 19 and unit >= 100):
        return [first, replace(second, text=COMMA, value=None), second]
    if after == "club" and 5 <= tens < 10 and 1 <= unit < 10:
        # "9-5, 9 iron" is 95: a listener drops the "-ty".
        return [first.to(second, shown(10 * tens + unit), 10 * tens + unit)]
    if tens >= 20 and tens % 10 == 0 and unit < 10 and after not in ("over", "under"):
        return [first.to(second, shown(tens + unit), tens + unit)]
    return [first, replace(second, text="to", value=None), second]


def _club_behind(given: list[Piece], at: int) -> bool:
    """Whether a club follows behind a comma: ", 9 iron", ", gap wedge"."""
    return text_at(given, at + 1) == COMMA and text_at(given, at + 3) in (*CLUB_NOUNS, "wedge")


def _apart(piece: Piece, first: float, second: float) -> list[Piece]:
    return [replace(piece, text=shown(value), value=value) for value in (first, second)]


def _with_comma(first: Piece, second: Piece) -> list[Piece]:
    return [first, replace(first, text=COMMA, value=None), second]


def _clock(piece: Piece, before: str, after: str) -> Piece:
    """ "1:43" is a yardage where the talk around it says so, else a time of day, which is no number."""
    hours, minutes = piece.text.split(":")
    yards = int(hours) * 100 + int(minutes)
    if 1 <= int(hours) <= 6 and (before in YARDAGE_BEFORE or after in YARDAGE_AFTER):
        return replace(piece, text=str(yards), value=yards)
    return piece


def _is_standing(given: list[Piece], at: int) -> bool:
    """ "75 over", but not "54 over the back"."""
    return text_at(given, at + 1) in ("over", "under") and text_at(given, at + 2) in _AFTER_STANDING


def _is_time(given: list[Piece], at: int) -> bool:
    after = [text_at(given, at + step) for step in (1, 2, 3)]
    return after[0] in ("am", "pm", "tonight") or after in (
        ["in", "the", "morning"],
        ["in", "the", "evening"],
    )

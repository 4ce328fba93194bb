"""What digits still need once words are digits: units, clock times, ranges, and numbers run together."""

from __future__ import annotations

from dataclasses import replace

from reviewkit.language.number_words import ABBREVIATED, CLUB_NOUNS, YARDAGE_AFTER, YARDAGE_BEFORE, shown
from reviewkit.language.pieces import Piece, text_at


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
        elif value > 9 and after in CLUB_NOUNS and value % 10 > 1:
            made += _apart(piece, value - value % 10, value % 10)
        elif before == "par" and 3000 < value < 6700:
            made += _apart(piece, value // 1000, value % 1000)
        elif piece.joined and value and given[at - 1].value and before.isdigit() and piece.text.isdigit():
            made += [replace(piece, text="to", value=None), piece]
        else:
            made.append(piece)
    return made


def _apart(piece: Piece, first: float, second: float) -> list[Piece]:
    return [replace(piece, text=shown(value), value=value) for value in (first, second)]


def _clock(piece: Piece, before: str, after: str) -> Piece:
    """ "1:43" is a yardage where the talk around it says so, else a time of day, which is no number."""
    hours, minutes = piece.text.split(":")
    yards = int(hours) * 100 + int(minutes)
    if 1 <= int(hours) <= 6 and (before in YARDAGE_BEFORE or after in YARDAGE_AFTER):
        return replace(piece, text=str(yards), value=yards)
    return piece


def _is_time(given: list[Piece], at: int) -> bool:
    after = [text_at(given, at + step) for step in (1, 2, 3)]
    return after[0] in ("am", "pm", "tonight") or after in (
        ["in", "the", "morning"],
        ["in", "the", "evening"],
    )

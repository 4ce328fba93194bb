"""The words and marks in which the report names scores, strokes and figures."""

from __future__ import annotations

import unicodedata

from reviewkit.model import HoleScore, Shot
from reviewkit.model.values import FEET_PER_YARD

NAMES = {
    -3: "albatross",
    -2: "eagle",
    -1: "birdie",
    0: "par",
    1: "bogey",
    2: "double bogey",
    3: "triple bogey",
}
MARKS = {-2: "rings", -1: "ring", 0: "plain", 1: "box", 2: "boxes"}
"""The trade's notation: one ring a birdie, two an eagle or better; one box a bogey, two a double or worse."""
CLUBS = {"D": "driver", "PW": "pitching wedge", "GW": "gap wedge", "SW": "sand wedge", "LW": "lob wedge"}
SUFFIXES = {"W": "wood", "H": "hybrid", "I": "iron"}
RESULTS = {
    "penalty": "penalty area",
    "ob": "out of bounds",
    "lost": "lost ball",
    "sand": "bunker",
    "unknown": "",
}


def said(words: object) -> str:
    """Talk as it may be shown: control and direction marks become a visible sign, never an effect."""
    text = "" if words is None else str(words)
    shown = (" " if mark in "\n\r\t" else mark for mark in text)
    return "".join("\ufffd" if unicodedata.category(mark) in ("Cc", "Cf", "Cs") else mark for mark in shown)


def to_par(value: int | None) -> str:
    """`+3`, `−1`, `E`; a dash where it is not known."""
    if value is None:
        return "–"
    if value == 0:
        return "E"
    return f"+{value}" if value > 0 else f"\u2212{-value}"


def signed(value: float | None, digits: int = 2) -> str:
    """A number with its sign and a true minus."""
    if value is None:
        return "–"
    return f"{value:+.{digits}f}".replace("-", "\u2212")


def score_name(score: HoleScore) -> str:
    """`birdie`, `+4`; empty where it is not known."""
    if score.strokes == 1:
        return "hole in one"
    if score.to_par is None:
        return ""
    return NAMES.get(score.to_par, to_par(score.to_par))


def score_mark(score: HoleScore) -> str:
    """The class of the ring or box round a score."""
    return "plain" if score.to_par is None else MARKS[max(-2, min(2, score.to_par))]


def club_name(club: str) -> str:
    """`7 iron`, `56 degree wedge`."""
    if club in CLUBS or not club:
        return CLUBS.get(club, "")
    return f"{club} degree wedge" if club.isdigit() else f"{club[:-1]} {SUFFIXES[club[-1]]}"


def distance(shot: Shot) -> str:
    """Yards, or feet on and about the green; empty when not known."""
    if shot.distance_yd is None:
        return ""
    if shot.kind == "putt":
        return f"{shot.distance_yd * FEET_PER_YARD:.0f} ft"
    return f"{shot.distance_yd:.0f} yd"


def result_name(result: str) -> str:
    return RESULTS.get(result, result)


def stroke_name(shot: Shot) -> str:
    """One line that says a stroke: `approach, 9 iron, 141 yd, fringe, long`."""
    parts = [
        shot.kind,
        club_name(shot.club),
        distance(shot),
        result_name(shot.result),
        shot.miss,
        shot.contact,
    ]
    if shot.penalty_strokes:
        parts.append(f"{shot.penalty_strokes} penalty")
    return ", ".join(part for part in parts if part)

"""Finding the row that a correction was made for, in a reading that may number and time it otherwise."""

from __future__ import annotations

import math
import re

from reviewkit.log.amend_draft import Draft, Hole, Stroke
from reviewkit.log.amend_fields import SHOT_FIELDS, text_of
from reviewkit.model import Amendment, Shot

NEAR_S = 3.0
"""Two readings of one utterance begin within this many seconds of each other."""
SAME_NUMBER_S = 20.0
"""How far a stroke of the same hole and number may have moved and still be taken for the same."""
WORDS_S = 60.0
"""How far the same words may have moved."""
ENOUGH_WORDS = 0.6
TOKEN = re.compile(r"[\w']+")


def likeness(one: str, other: str) -> float:
    """Share of the shorter text's words that the other has too, 0 to 1; 0 when either is empty."""
    first, second = (set(TOKEN.findall(text.lower())) for text in (one, other))
    if not first or not second:
        return 0.0
    return len(first & second) / min(len(first), len(second))


def find_hole(draft: Draft, row: Amendment) -> tuple[Hole | None, str]:
    """The hole a correction is for, and a note when the reading now calls it otherwise.

    The number counts while that hole begins at the moment, holds it or lies beside it; but where another
    hole begins at that very moment, it was numbered anew and the moment counts.
    """
    named = draft.numbered(row.hole)
    if row.at_s is None:
        return named, ""
    begun = _beginning(draft, row.at_s) if row.stroke is None else None
    holding = draft.holding(row.at_s)
    if named and (named in (begun, holding) or (begun is None and _beside(draft, named, holding))):
        return named, ""
    found = begun or holding
    if found:
        return found, f"was made for hole {row.hole}, which the reading now calls {found.score.hole}"
    return named, ""


def _beginning(draft: Draft, at_s: float) -> Hole | None:
    """The hole that begins at a moment, give or take NEAR_S."""
    nearest = min(draft.holes, key=lambda hole: abs(hole.score.start_s - at_s), default=None)
    return nearest if nearest and abs(nearest.score.start_s - at_s) <= NEAR_S else None


def _beside(draft: Draft, one: Hole, other: Hole | None) -> bool:
    return other is not None and abs(draft.holes.index(one) - draft.holes.index(other)) == 1


def find_stroke(draft: Draft, row: Amendment) -> tuple[Hole, Stroke] | None:
    """The stroke a correction is for and its hole, by words, time and number; None if it is gone."""
    best: tuple[float, Hole, Stroke] | None = None
    for hole in draft.holes:
        for stroke in hole.strokes:
            closeness = _closeness(row, stroke.shot)
            if closeness is not None and (best is None or closeness > best[0]):
                best = (closeness, hole, stroke)
    return None if best is None else (best[1], best[2])


def _closeness(row: Amendment, shot: Shot) -> float | None:
    """How well a stroke fits a correction, or None when it cannot be the one."""
    same_hole = shot.hole == row.hole
    numbered = same_hole and shot.stroke == row.stroke
    if row.at_s is None:
        return 1.0 if numbered else None
    apart = abs(shot.start_s - row.at_s)
    alike = likeness(row.words, shot.evidence)
    if not (
        apart <= NEAR_S
        or (numbered and apart <= SAME_NUMBER_S)
        or (alike >= ENOUGH_WORDS and apart <= WORDS_S)
    ):
        return None
    before = row.action == "set" and row.field in SHOT_FIELDS and text_of(shot, row.field) == row.was
    return 2 * alike + math.exp(-apart / 4) + 0.6 * numbered + 0.3 * same_hole + 0.4 * before

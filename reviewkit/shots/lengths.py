"""A told length in yards, whatever it was told in."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model.values import FEET_PER_YARD, SMALL_UNITS, YARDS_PER_METRE
from reviewkit.shots.cue import Cue

_FEWEST_BARE_YD = 38.0
"""What was left is in feet below so many, where the unit goes without saying."""

_SOON, _NEARLY = 30, 0.7
"""Words within which a length is put right, and how near the two are to each other."""

_FEWEST_INCHES = 12
"""Nobody takes the trouble to tell a putt of fewer."""


def yards(cue: Cue, units: str) -> float:
    """A told length in yards. `units` is what a bare number of the fairway means, "yd" or "m"."""
    value, unit = float(cue.value), unit_of(cue, units)
    if unit == "pace":
        # As long as what else the player measures in.
        unit = units
    if unit in ("m", "cm"):
        return round(value * YARDS_PER_METRE / (100 if unit == "cm" else 1), 3)
    if unit == "ft":
        return round(value / FEET_PER_YARD, 3)
    return round(value / 36.0, 3) if unit == "in" else value


def unit_of(cue: Cue, units: str) -> str:
    """The unit told, else the fairway's, but feet for what a putt left where that is yards."""
    short = units != "m" and (
        cue.mention.mood == "from" or (cue.mention.mood == "left" and _by_the_hole(cue))
    )
    return cue.mention.unit or ("ft" if short else units)


def _by_the_hole(cue: Cue) -> bool:
    return float(cue.value) < _FEWEST_BARE_YD


def putt_long(cue: Cue) -> bool:
    """Whether a told length is one that only a putt, or what it left, has."""
    return cue.mention.unit in SMALL_UNITS or (cue.mention.unit == "m" and float(cue.value) <= 12)


def put_right(cues: Sequence[Cue], lengths: Sequence[int]) -> bool:
    """ "Twelve foot. He says fourteen. So fourteen foot": told anew, and nothing has happened since."""
    if len(lengths) < 2:
        return False
    told, anew = (cues[at].mention for at in lengths)
    still = all(cue.kind in ("distance", "strike", "putt") for cue in cues[lengths[0] : lengths[1]])
    near = told.value != anew.value and told.unit == anew.unit != ""
    ratio = float(str(anew.value)) / float(str(told.value)) if near and told.value else 0.0
    return still and anew.first - told.last < _SOON and _NEARLY < ratio < 1 / _NEARLY


def told_twice(cues: Sequence[Cue], lengths: Sequence[int], at: int) -> bool:
    """ "162 remaining, and I haven't got a 162, I've got a 150": told anew with nothing struck between."""
    same = (other for other in lengths if other != at and cues[other].value == cues[at].value)
    between = (cues[min(at, other) : max(at, other)] for other in same)
    return any(all(cue.kind in ("distance", "lie") for cue in run) for run in between)


def hair(cue: Cue) -> bool:
    """Whether a length is so small that it tells by how much a ball missed, not what was left."""
    unit = cue.mention.unit
    if cue.mention.mood == "left":
        return unit == "in" and float(cue.value) < _FEWEST_INCHES
    return unit in ("in", "cm")

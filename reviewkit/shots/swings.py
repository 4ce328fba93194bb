"""How well a told length goes with a swing by itself.

The weights are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model.values import WEDGES
from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.lengths import unit_of, yards
from reviewkit.shots.moments import Moment

_SHORTEST_SWING_YD, _SHORTEST_CHIP_YD = 12.0, 4.0
_LONGEST_CHIP_YD = 65.0
LEAVES = re.compile(r"^(?:leav|left|down to|to )|\bmyself\b|\bshort of\b")
_STILL = re.compile(r"\b(?:still|left|out|remaining)\b| in$")
_STILL_TO_GO = 0.8
"""Behind a club, "still 130 out" is what it left more likely than what it was hit from."""
# By the zone it is told in and its mood; what is not listed does not go with a swing.
_SWING = {
    "own": {"togo": 1.25, "length": 0.6, "": 0.6, "bare": 0.6, "plan": 0.6, "said": 0.6, "from": 0.7},
    "between": {"togo": 1.2, "": 0.5, "left": 0.8, "plan": 0.4, "said": 0.4},
    "landed": {"togo": 1.1, "left": 0.9, "": 0.4},
    "trail": {"togo": 0.8, "left": 0.9, "": 0.3},
    "struck": {"togo": 0.4, "left": 0.8},
}
_BEFORE_ITS_CLUB = 1.0
_BESIDE_ITS_CLUB = 0.9
"""Where both are told last, how the ball ended before them: "It's on! 8 iron, from 147"."""
_BARE_BEFORE = 0.5
"""A number alone, told last before a stroke's own words."""
NOTHING = 0.2
"""What a length must be worth more than to be given at all."""


def to_swing(cues: Sequence[Cue], own: Moment, at: int, place: str, units: str, shape: str) -> float | None:
    """What the length at `at` is worth to a swing that has `own` words, None where it is none of its."""
    cue, mood, long = cues[at], cues[at].mention.mood, yards(cues[at], units)
    club = cues[own.swung].value if own.swung < len(cues) and cues[own.swung].kind == "club" else ""
    near = mood in ("togo", "from") or shape in SHORT or club.isdigit() or club in (*WEDGES, "same")
    if unit_of(cue, units) == "ft" or long < (_SHORTEST_CHIP_YD if near else _SHORTEST_SWING_YD):
        return None
    if shape == "chip" and long > _LONGEST_CHIP_YD and place != "own":
        return None
    if shape in SHORT and place == "own" and at > own.first and _from_the_hole(cue, long):
        return None
    behind_club = place == "own" and at > own.swung and cues[own.swung].kind == "club"
    if mood == "togo" and behind_club and LEAVES.search(cue.mention.text):
        return None
    if mood == "togo" and _STILL.search(cue.mention.text):
        if behind_club:
            return _STILL_TO_GO
        if place in ("struck", "trail"):
            return _STILL_TO_GO + NOTHING
    if place in ("between", "landed", "trail") and mood == "bare" and at == own.first - 1:
        # Heard in one with how the ball before ended: "there you go, fairway, 92, I'll use the gap wedge".
        return _BARE_BEFORE
    if place == "between" and mood == "bare" and not own.told:
        # "Eight flurb, 152, on the flurb at 18 feet": of a stroke whose words were lost.
        return _BARE_BEFORE
    if place == "own" and mood in ("bare", "") and _up_to_club(cues, at, own.swung):
        return _BEFORE_ITS_CLUB
    if (
        place == "after"
        and cues[own.swung].kind == "club"
        and abs(at - own.swung) == 1
        and mood in ("togo", "bare")
    ):
        return _BESIDE_ITS_CLUB if cues[at].utterance == cues[own.swung].utterance else None
    if place == "after" and shape in SHORT and mood == "" and long >= _SHORTEST_SWING_YD:
        return _BARE_BEFORE
    if place == "own" and cue.mention.text.startswith("to leave "):
        return None
    if place == "own" and mood == "left" and at < own.swung:
        # "Laid up to 85. Gap wedge": told before the club, it is what that one has.
        return _BARE_BEFORE
    if place == "between" and mood == "" and not cue.mention.unit:
        return None
    return _SWING.get(place, {}).get(mood)


def _from_the_hole(cue: Cue, long: float) -> bool:
    """ "Got out of the sand. About six metres from the stick": where it came to rest."""
    return long < _SHORTEST_SWING_YD and " from the " in cue.mention.text


def _up_to_club(cues: Sequence[Cue], at: int, swung: int) -> bool:
    """ "118, wedge, the pitching wedge": nothing but words for the club between a length and the club."""
    between = cues[at + 1 : swung]
    return at < swung and cues[swung].kind == "club" and all(cue.kind == "strike" for cue in between)

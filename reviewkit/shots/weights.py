"""What a run of cues is worth as one stroke, and what leaving cues unexplained costs, in log odds.

The numbers are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.holing import feet

_REWARD = {
    "club": 1.5,
    "putter": 1.2,
    "place": 1.4,
    "holed": 1.5,
    "tap": 1.6,
    "stayed_out": 1.2,
    "putts": 2.0,
    "updown": 1.2,
    "putt": 0.6,
    "strike": 0.5,
    "reload": 1.0,
    "drop": 0.2,
    "again": 0.4,
    "contact": 0.4,
    "miss": 0.4,
    "lie": 0.3,
    "distance": 0.1,
    "found": 0.0,
}
_SKIP = {
    "club": 0.9,
    "putter": 0.6,
    "place": 0.9,
    "holed": 0.9,
    "tap": 1.1,
    "stayed_out": 0.7,
    "putts": 1.6,
    "updown": 0.5,
    "putt": 0.15,
    "strike": 0.15,
    "reload": 0.6,
    "drop": 0.1,
    "again": 0.2,
    "contact": 0.2,
    "miss": 0.15,
    "lie": 0.05,
    "distance": 0.02,
    "found": 0.0,
}
_HOLED_OUT = re.compile(r"(?:chip|chipped|chips|pitched) in|hol(?:e|ed|es) out|hops?\b|bounces?\b")
_NO_PUTT = 1.5
"""What words say for a stroke holed from off the green, which is rare and seldom told so by mistake."""
_LAGGED, _ROLLED = 0.7, 1.6
"""What it says for a putt or a chip that what it left is told with it; that both a putt's lengths are."""
STROKE = -1.2
"""Cost of claiming a stroke, so that one weak cue is not enough."""
SHAPED = {*SHORT, "punch", "layup", "tee"}
_AFTERTHOUGHTS = {"miss", "distance", "contact", "putt", "lie", "drop"}


def skip_cost(cue: Cue) -> float:
    """What leaving a cue unexplained costs."""
    return _SKIP[cue.kind] * (0.5 + 0.3 * cue.mention.weight) * (0.3 if cue.meant else 1.0)


def rewards(run: Sequence[Cue], family: str) -> float:
    """Each kind once, at its heaviest cue; words that name the stroke count more than bare hitting."""
    best: dict[str, float] = {}
    for cue in run:
        worth = _REWARD[cue.kind] * (0.4 + 0.35 * min(cue.mention.weight, 2.0))
        if cue.kind == "strike" and cue.value in SHAPED:
            worth = 1.0
        if cue.kind == "distance" and cue.mention.mood == "togo":
            worth = 0.4
        if cue.meant and cue.kind in ("club", "strike"):
            worth *= 0.5
        if cue.kind == "stayed_out" and family == "swing":
            worth = 0.0
        if cue.kind == "place" and cue.value == "green" and family == "putt":
            worth *= 0.4
        best[cue.kind] = max(best.get(cue.kind, 0.0), worth)
    lagged = family == "putt" and any(_left_behind(cue, after) for cue, after in pairwise(run))
    rolled = family in ("putt", "putt_or_swing") and _from_and_left(run)
    no_putt = family == "swing" and any(c.kind == "holed" and _HOLED_OUT.match(c.mention.text) for c in run)
    chipped = family == "swing" and any(_chipped_to(cue, after) for cue, after in pairwise(run))
    odds = (_ROLLED if rolled else _LAGGED if lagged or chipped else 0.0) + (_NO_PUTT if no_putt else 0.0)
    return sum(best.values()) + odds


def _left_behind(putt: Cue, length: Cue) -> bool:
    """ "Rolled it up to a metre": a putt told with what it left."""
    left = length.kind == "distance" and length.mention.mood == "left"
    return left and putt.kind == "putt" and length.mention.first <= putt.mention.last + 1


def _chipped_to(chip: Cue, length: Cue) -> bool:
    """ "Chip down to three feet": a short stroke told with what it left."""
    left = length.kind == "distance" and length.mention.mood == "left" and not chip.meant
    short = chip.kind == "strike" and chip.value in SHORT
    at_once = length.utterance == chip.utterance and length.mention.first <= chip.mention.last + 3
    return left and short and at_once


def _from_and_left(run: Sequence[Cue]) -> bool:
    """ "30 feet, and I went 4 feet beyond": what a putt was played from, and what it left."""
    lengths = [cue for cue in run if cue.kind == "distance" and cue.mention.unit in SMALL_UNITS]
    if len(lengths) < 2 or lengths[0].mention.mood == "left" or lengths[1].mention.mood != "left":
        return False
    before, behind = feet(lengths[0]), feet(lengths[1])
    return before is not None and behind is not None and behind < before


def crossings(run: Sequence[Cue], clubs_last: bool) -> float:
    """A stroke told over several utterances is likelier the longer its end stays open."""
    cost, landed = 0.0, False
    for before, cue in pairwise(run):
        landed = landed or before.kind in ("place", "holed", "tap", "stayed_out")
        steps = cue.utterance - before.utterance
        if not steps:
            continue
        pause = 0.3 if cue.pause_s > 1.5 and landed else 0.0
        named = cue.kind == "club" and (clubs_last or cue.after)
        fate = cue.value in ("lost", "unplayable")
        loose = landed and not (named or cue.kind in _AFTERTHOUGHTS or fate)
        cost += 0.2 * steps + pause + (0.8 if loose else 0.25 if landed and not fate else 0.0)
    return cost

"""A side put right as soon as it was told: "on the left, excuse me, on the right", "past. No. Short"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue

_OPPOSITE = {"left": "right", "right": "left", "short": "long", "long": "short"}
_WITHIN = 7
"""Words from a side to the one that takes its place, at most."""
_SOON = 2
"""Utterances between the two, at most."""


def without_sides_taken_back(found: Sequence[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """The cues without each side that words which take it back, and the opposite side, follow at once."""
    mends = [m for said in talk for m in said.mentions if m.kind == "mend?"]
    sides = [at for at, cue in enumerate(found) if cue.kind == "miss"] if mends else []
    gone = {
        at
        for at, then in pairwise(sides)
        if _put_right(found[at], found[then], mends)
        and all(cue.kind in ("distance", "lie", "stayed_out") for cue in found[at + 1 : then])
    }
    return [cue for at, cue in enumerate(found) if at not in gone]


def _put_right(before: Cue, cue: Cue, mends: Sequence[Mention]) -> bool:
    opposite = _OPPOSITE.get(before.value) == cue.value and cue.utterance <= before.utterance + _SOON
    first, last = before.mention.last, cue.mention.first
    return opposite and last - first <= _WITHIN and any(first < mend.first <= last for mend in mends)

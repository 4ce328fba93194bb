"""What a person has said of the holes, as weight on the decoder's paths."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from reviewkit.holes.contents import Array, Indices
from reviewkit.model import Talk
from reviewkit.model.fact import HoleFact
from reviewkit.model.values import MAX_HOLE

_CERTAIN = 40.0
"""Log odds that no amount of talk makes up for."""


@dataclass(frozen=True)
class Confirmed:
    """`facts` about where holes start, which they are, and which were not played."""

    talk: Talk
    facts: tuple[HoleFact, ...]

    @cached_property
    def starts(self) -> dict[int, int]:
        """Hole number -> the utterance nearest to its confirmed start."""
        return {fact.hole: self._nearest(fact.value) for fact in self.facts if fact.field == "start_s"}

    def _nearest(self, at_s: float) -> int:
        return min(range(len(self.talk)), key=lambda at: abs(self.talk[at].start_s - at_s))

    def enter(self, at: int, number: int) -> float:
        """Weight of hole `number` starting with utterance `at`."""
        if any(fact.field == "absent" and fact.hole == number for fact in self.facts):
            return -_CERTAIN
        if number in self.starts:
            return _CERTAIN if self.starts[number] == at else -_CERTAIN
        return 0.0

    def tell(self, starts: Indices, ends: Indices) -> Array:
        """Weight of utterances start..end-1 telling each hole: (stretches, holes from 0 to the last)."""
        weight = np.zeros((len(starts), MAX_HOLE + 1))
        begun = np.array([self.talk[at].start_s for at in starts])
        ended = np.array([self.talk[at - 1].end_s for at in ends])
        for fact in self.facts:
            if fact.field == "hole":
                other = np.full(MAX_HOLE + 1, -_CERTAIN)
                other[int(fact.value)] = _CERTAIN
                weight[(begun <= fact.at_s) & (fact.at_s <= ended)] += other
        return weight

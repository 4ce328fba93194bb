"""Strokes counted aloud on the way: "lying three", "that's my fourth", "two" after the second stroke."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue

_WORTH = 0.7
"""Log odds that a count adds to a reading that agrees with it; checked on invented rounds, no source."""


@dataclass(frozen=True, slots=True)
class Count:
    """`strokes` are those that have counted when it is said; `coming` when it may be the next one's number.

    `place` is the number of cues told before it.
    """

    place: int
    strokes: int
    coming: bool
    worth: float

    def fits(self, taken: int) -> bool:
        return self.strokes == taken or (self.coming and self.strokes == taken + 1)


def counts(talk: Sequence[Utterance], cues: Sequence[Cue]) -> tuple[Count, ...]:
    """The counts said within a hole, before its last cue, in order."""
    said = [m for utterance in talk for m in utterance.mentions if m.kind == "count" and not m.mood]
    made = []
    for mention in said:
        place = sum(cue.mention.first < mention.first for cue in cues)
        if place and isinstance(mention.value, int | float):
            made.append(Count(place, int(mention.value), mention.unit == "hitting", _WORTH * _trust(mention)))
    return tuple(made)


def _trust(mention: Mention) -> float:
    return min(1.0, mention.weight + 0.2)


def agreement(said: Sequence[Count], before: tuple[int, int], after: tuple[int, int]) -> float:
    """What counts are worth to a step of a reading from (cues, strokes) `before` it to those `after` it."""
    worth = 0.0
    for count in said:
        if before[0] < count.place <= after[0]:
            within = count.place < after[0] and count.fits(before[1])
            worth += count.worth * (within or count.fits(after[1]))
    return worth

"""Strokes counted aloud on the way: "lying three", "that's my fourth", "two" after the second stroke."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue

_COUNTS = ("count", "putt_for")
_WORTH = 0.7
"""Log odds that a count adds to a reading that agrees with it; checked on invented rounds, no source."""
_PLAIN_WORTH = 2.5
"""The same for "on in three" and "green in regulation", which tell of all strokes so far."""
_ON, _REGULATION, _PUTTS_IN_PAR = "on", "in reg", 2
_PLAINLY = 0.55


@dataclass(frozen=True, slots=True)
class Count:
    """`strokes` are those that have counted when it is said; `coming` when it may be the next one's number.

    `place` is the number of cues told before it. `onto`: it counts what reached the green, "on in three".
    """

    place: int
    strokes: int
    coming: bool
    worth: float
    onto: bool = False

    def fits(self, taken: int) -> bool:
        return self.strokes == taken or (self.coming and self.strokes == taken + 1)


def counts(talk: Sequence[Utterance], cues: Sequence[Cue], par: int | None = None) -> tuple[Count, ...]:
    """The counts said within a hole, before its last cue, in order."""
    said = [m for utterance in talk for m in utterance.mentions if _counts(m) and not m.mood]
    made = []
    for mention in said:
        onto = mention.unit == _ON or mention.kind == "place"
        # "On in three" counts the stroke that it ends.
        place = sum(cue.mention.first < mention.first + onto for cue in cues)
        strokes = _taken(mention, par)
        if place and strokes is not None:
            worth = _PLAIN_WORTH if onto else _WORTH
            made.append(Count(place, strokes, mention.unit == "hitting", worth * _trust(mention), onto))
    return tuple(made)


def _counts(mention: Mention) -> bool:
    return mention.kind in _COUNTS or (mention.kind == "place" and _REGULATION in mention.text)


def _taken(mention: Mention, par: int | None) -> int | None:
    """The strokes that have counted: "lying three", or one fewer than a putt "for par" makes.

    A green in regulation is reached in two fewer than par.
    """
    if mention.kind == "place":
        return None if par is None else par - _PUTTS_IN_PAR
    if not isinstance(mention.value, int | float):
        return None
    if mention.kind == "count":
        return int(mention.value)
    if mention.unit == "strokes":
        return int(mention.value) - 1
    return None if par is None else par + int(mention.value) - 1


def _trust(mention: Mention) -> float:
    return min(1.0, mention.weight + 0.2)


def coming(said: Sequence[Count]) -> tuple[Count, ...]:
    """Those that are plainly the next stroke's number, or may be."""
    return tuple(count for count in said if count.coming and count.worth >= _PLAINLY)


def a_stroke_more(numbered: Sequence[Count], since: int, until: int, taken: int) -> bool:
    """ "Sorry! Nobody's home. This'll be three": after one stroke, so that one cost another.

    The next stroke's number, `coming`, said between cues `since` and `until` with `taken` strokes so far.
    """
    return any(since < count.place <= until and count.strokes == taken + 2 for count in numbered)


def agreement(said: Sequence[Count], before: tuple[int, int], after: tuple[int, int]) -> float:
    """What counts are worth to a step of a reading from (cues, strokes) `before` it to those `after` it."""
    worth = 0.0
    for count in said:
        if before[0] < count.place <= after[0]:
            within = count.place < after[0] and count.fits(before[1])
            ends = count.place == after[0]
            worth += count.worth * (within or (count.fits(after[1]) if ends else count.strokes == after[1]))
    return worth

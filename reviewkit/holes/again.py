"""What is done but once on a hole: whoever was on the green and is far off, or was done and swings, is on the
next one.

"That's on the green, 20 feet. Up beside the hole, he says take it away. | 512, over the left shoulder": where
the end was told in other words and the next hole was not announced, nobody is 20 feet off and then 512.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from reviewkit.holes.signs import HOLED, NOT_MINE, on_the_green, plain, plain_of, tee
from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import HYBRIDS, IRONS, WOODS

_SWUNG, _FAR = -1.2, -1.8
"""Log odds of one hole where a ball is struck behind its end, or from afar behind its green; a bit less
than counted on invented rounds, over single holes and over pairs of them, for other signs tell the same."""
_OVER = {*HOLED, "score_word", "running"}
THERE = "there"
"""Where a ball still lies that was not moved: no stroke's place."""
_LONG_CLUBS = {*WOODS, *HYBRIDS, *IRONS[:7]}
_AFAR = 100
"""Yards or metres; nobody who was on the green has so much left."""
_BEHIND = re.compile(r"(?:that|it|this) was(?= ?[.,]|$)")


@dataclass(frozen=True)
class Again:
    """Running counts over utterances: of what was begun anew, and of the strokes that were done before it.

    Who tells the end of a hole first, or begins it with the score of the one before, has not played yet.
    """

    anew: npt.NDArray[np.float64]
    played: npt.NDArray[np.float64]
    odds: float

    def tell(self, start: npt.NDArray[np.intp], end: npt.NDArray[np.intp]) -> npt.NDArray[np.float64]:
        """Log odds of utterances start..end-1 being one hole."""
        times: npt.NDArray[np.float64] = np.maximum(0.0, self.anew[end] - self.played[start])
        return self.odds * times


def agains(talk: Talk) -> tuple[Again, ...]:
    """What may begin anew: a swing behind the hole's end, a long one behind its green."""
    swung = [*map(swings, talk)]
    over, on = map(_over, talk), map(_on_green, talk)
    afar = [_from_afar(talk, at) for at in range(len(talk))]
    return _again(swung, [*over], swung, _SWUNG), _again(swung, [*on], afar, _FAR)


def swings(utterance: Utterance) -> bool:
    return any(
        m.kind in ("club", "place") and m.mood != "other" and m.value != THERE for m in utterance.mentions
    )


def _again(swung: Sequence[bool], done: Sequence[bool], anew: Sequence[bool], odds: float) -> Again:
    begun, played = np.zeros(len(done) + 1), np.zeros(len(done) + 1)
    last = before = -1
    for at, is_anew in enumerate(anew):
        if is_anew and before >= 0:
            begun[at + 1] += 1
            played[before + 1] += 1
            before = -1
        last = at if swung[at] else last
        before = last if done[at] else before
    return Again(begun.cumsum(), played.cumsum(), odds)


def _over(utterance: Utterance) -> bool:
    return any(plain_of(m, _OVER) for m in utterance.mentions)


def _on_green(utterance: Utterance) -> bool:
    return any(
        on_the_green(m) or plain_of(m, {"putt", "putter"}) or (plain(m, "place") and m.value == "green")
        for m in utterance.mentions
    )


def _from_afar(talk: Talk, at: int) -> bool:
    """Whether a ball is struck from afar there; "127, that was" is told behind its stroke."""
    if any(tee(m) or (plain(m, "club") and m.value in _LONG_CLUBS) for m in talk[at].mentions):
        return True
    told = any(map(_afar, talk[at].mentions))
    return told and not any(_BEHIND.search(said.text) for said in talk[at : at + 2])


def _afar(mention: Mention) -> bool:
    """A length that no ball on a green has left."""
    told = mention.kind == "distance" and mention.mood not in NOT_MINE and mention.unit in ("yd", "m", "")
    return told and isinstance(mention.value, int | float) and mention.value >= _AFAR

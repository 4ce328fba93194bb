"""How much of one hole a stretch of talk tells: its strokes, one par, one finish. In natural log odds.

Weights are common sense put in numbers and checked on invented rounds; no source.
"""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from reviewkit.holes.again import THERE, Again, agains, swings
from reviewkit.holes.signs import (
    HOLED,
    on_the_green,
    only_its_number,
    plain,
    plain_of,
    tells_length,
    tells_par,
    yardage,
)
from reviewkit.model import Talk
from reviewkit.model.values import PARS

Array = npt.NDArray[np.float64]
Indices = npt.NDArray[np.intp]

_HURRIES = ((8.0, -3.0), (14.0, -1.6), (18.0, -0.6))
"""(fewer seconds than this for a whole hole, log odds)."""
_MANY_WORDS, _WORDY = 200, 0.0065
"""Words that the talk of one hole seldom exceeds, and what each more speaks against it."""
TOLD_OF_IT = {"score_word", "strokes", "points"}
_LONGER, _LEAST_LEFT, _LONG, _MORE = 1.0, 40, 100, 1.2
"""Against a stretch in which more is left than before: lengths that tell, and how much more it must be."""
_INTRODUCED, _UNDER_WAY = 2.0, 3
"""Against a stretch in which a hole's par and length are told behind so many strokes."""
_SUMS = ("over", "score", "played", "hinted", "swung", "untold")
_TO_THE_HOLE = ("", "togo", "bare", "length")
_PLAYED = {"place", *HOLED}
_HINTS = {"miss", "contact", "stayed_out"}
"""A ball in play, where a listener has lost the words for club and place."""


@dataclass(frozen=True)
class Contents:
    """Running sums over one round's talk, and what they say of any stretch of it; computed once.

    `told_first` are utterances that open a hole with its score.
    """

    talk: Talk
    told_first: Collection[int] = ()

    @cached_property
    def counts(self) -> dict[str, tuple[float, ...]]:
        """Running sums over the utterances: pars told, holes said to be over, strokes told."""
        sums: dict[str, list[float]] = {key: [0.0] for key in (*map(str, PARS), *_SUMS)}
        for utterance in self.talk:
            for row in sums.values():
                row.append(row[-1])
            for m in utterance.mentions:
                if plain(m, "par") and str(m.value) in sums:
                    sums[str(m.value)][-1] += m.weight
                if on_the_green(m) or (not m.mood and m.kind in _PLAYED and m.value != THERE):
                    sums["played"][-1] += 1.0
            sums["over"][-1] += any(plain_of(m, HOLED) for m in utterance.mentions)
            sums["score"][-1] += any(plain_of(m, TOLD_OF_IT) for m in utterance.mentions)
            sums["untold"][-1] += any(m.kind == "untold" for m in utterance.mentions)
            sums["hinted"][-1] += any(m.kind in _HINTS and not m.mood for m in utterance.mentions)
            sums["swung"][-1] += swings(utterance)
        return {key: tuple(row) for key, row in sums.items()}

    @cached_property
    def _alone(self) -> Array:
        """1 for each utterance whose number is no score where a hole begins with it, else 0."""
        named = (at not in self.told_first and only_its_number(said) for at, said in enumerate(self.talk))
        return np.array([*named], dtype=float)

    @cached_property
    def _summed(self) -> Indices:
        """The last swing before each utterance that a total was told of; "2 over. Par 5" sums up nothing."""
        swung, summed, row = -1, -1, [-1]
        for at, utterance in enumerate(self.talk):
            swung = at if swings(utterance) else swung
            summed = swung if any(plain(m, "running") for m in utterance.mentions) else summed
            row.append(summed)
        return np.array(row, dtype=np.intp)

    @cached_property
    def _longer(self) -> tuple[Array, Indices]:
        """How often more was left than before, up to each utterance; the first from it that tells a length.

        "92 metres, 52 degree. Par. Moving on. 154, over the gully": a ball comes nearer, so the hole is new.
        """
        longer, before, told = [0.0], math.inf, []
        for at, utterance in enumerate(self.talk):
            lengths = [m.value for m in utterance.mentions if yardage(m) and m.mood in _TO_THE_HOLE]
            left = [length for length in lengths if isinstance(length, int | float) and length >= _LEAST_LEFT]
            longer.append(longer[-1] + (bool(left) and left[0] >= max(_LONG, _MORE * before)))
            if left:
                before = left[-1]
                told.append(at)
        following = np.searchsorted(told, np.arange(len(self.talk) + 1))
        return np.array(longer), np.append(told, len(self.talk))[following].astype(np.intp)

    @cached_property
    def _introduced(self) -> tuple[Array, Indices]:
        """How often a par was told with its length before each utterance; the first behind so many swings.

        "In the left half. So this par 3 is 142": by then nobody introduces the hole that is being told.
        """
        told = [tells_par(said) and tells_length(self.talk, at) for at, said in enumerate(self.talk)]
        swung = np.array(self.counts["swung"])
        return np.cumsum([0, *told], dtype=float), np.searchsorted(swung, swung + _UNDER_WAY).astype(np.intp)

    @cached_property
    def _sums(self) -> dict[str, Array]:
        return {key: np.array(row) for key, row in self.counts.items()}

    @cached_property
    def _agains(self) -> tuple[Again, ...]:
        return agains(self.talk)

    @cached_property
    def _words(self) -> Array:
        """Words before each utterance: how often a listener stops says nothing of a hole's length."""
        return np.array([*(u.first for u in self.talk), self.talk[-1].last + 1], dtype=float)

    @cached_property
    def _times(self) -> tuple[Array, Array]:
        """Starts and ends of the utterances in seconds."""
        return np.array([u.start_s for u in self.talk]), np.array([u.end_s for u in self.talk])

    def tell(self, start: Indices, end: Indices) -> Array:
        """Log odds that utterances start..end-1 tell one hole: its strokes, one par, one finish.

        `start` and `end` are arrays of utterance indices that fit each other; the answer has their shape.
        """
        sums = {key: row[end] - row[start] for key, row in self._sums.items()}
        pars = np.stack([sums[str(par)] for par in PARS])
        over, score = sums["over"], sums["score"] - self._alone[start]
        hinted = sums["hinted"] > 0
        little = np.where(sums["played"] > 0, 0.0, np.where(hinted, -1.0, -2.0))
        little += np.array((-2.0, -0.5, 0.0))[np.minimum(2, np.maximum(sums["swung"], hinted)).astype(int)]
        told = -1.2 * (pars.sum(axis=0) - pars.max(axis=0))
        # Some tell a hole's end by the total only: "and that's still 1 over".
        told += np.where((over + score > 0) | (self._summed[end] >= start), 1.0, -1.0)
        told -= 0.8 * np.maximum(0.0, over - 3.0)
        told += sum(again.tell(start, end) for again in self._agains)
        longer, next_length = self._longer
        told -= _LONGER * (longer[end] - longer[np.minimum(next_length[start] + 1, end)])
        introduced, behind = self._introduced
        told -= _INTRODUCED * (introduced[end] - introduced[np.minimum(behind[start], end)])
        seconds = self._times[1][end - 1] - self._times[0][start]
        hurry = np.select([seconds < least for least, _ in _HURRIES], [cost for _, cost in _HURRIES], 0.0)
        # Little is told, and soon, of a hole that was not filmed.
        told += np.where(sums["untold"] > 0, 0.0, little + hurry)
        sums["words"] = self._words[end] - self._words[start]
        whole: Array = told - _WORDY * np.maximum(0, sums["words"] - _MANY_WORDS)
        return whole

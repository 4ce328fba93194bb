"""Points told ("five, two points"): what they say of a hole, and how many strokes the player is given.

A player off eighteen has a stroke on every hole, and then two points are a bogey all day; one off scratch has
none. So the points of each hole are read by what the other holes told of the handicap.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from reviewkit.scoring.counting import stableford
from reviewkit.scoring.slips import said_of
from reviewkit.scoring.table import TO_PARS, Array, Table, at_to_par

Given = Mapping[int, float]
"""Handicap strokes on a hole -> probability."""

_HANDICAPS = range(37)
"""Strokes given on eighteen holes, from scratch to the most that many competitions allow; a guess."""

GIVEN = range(3)
"""Strokes given on one hole that are told apart; two stand for more."""


def _rates() -> Array:
    """Shape (handicaps, given): share of holes on which a handicap gives so many strokes."""
    rates = np.zeros((len(_HANDICAPS), len(GIVEN) + 1))
    for handicap in _HANDICAPS:
        every, more = divmod(handicap, 18)
        rates[handicap, every] = 1.0 - more / 18
        rates[handicap, every + 1] = more / 18
    rates[:, GIVEN[-1]] += rates[:, -1]
    return rates[:, :-1]


_RATES = _rates()
_PRIOR: Array = np.array([1.0 / (6.0 + handicap) for handicap in _HANDICAPS])
"""How common a handicap is among players who keep points aloud; a guess that leans to few strokes."""


def given_before() -> Given:
    """The strokes given on a hole before a point is told."""
    return _shares(_PRIOR)


def given_each(fits: Sequence[Sequence[float]]) -> list[Given]:
    """The strokes given on each hole, by what the points of all the others say of the handicap.

    `fits` are, hole by hole, how well its points go with each of GIVEN.
    """
    of_each = [_RATES @ np.array(fit) for fit in fits]
    return [_shares(_PRIOR * _product(of_each[:at] + of_each[at + 1 :])) for at in range(len(of_each))]


def of_points(value: int, right: float, given: Given) -> Table:
    """Likelihood of the points `value`, strokes given as in `given`."""
    return at_to_par({to_par: _likelihood(value, to_par, right, given) for to_par in TO_PARS}, 1e-4)


def _likelihood(value: int, to_par: int, right: float, given: Given) -> float:
    return sum(share * said_of(stableford(to_par, strokes), value, right) for strokes, share in given.items())


def _product(rows: Sequence[Array]) -> Array:
    return np.prod(rows, axis=0) if rows else np.ones(len(_HANDICAPS))


def _shares(handicaps: Array) -> Given:
    each = handicaps @ _RATES / handicaps.sum()
    return {strokes: float(share) for strokes, share in enumerate(each)}

"""Orders of play worth weighing: which hole the round begins with, and what course it goes around.

Where "they stuck us out on seven" was misheard, the holes named later tell where the round began: each opener
is weighed by the best reading of the whole talk that begins with it, on a ring of eighteen holes.
Arrays: `n` candidate starts, `h` holes from 0, which is none, `k` orders, `s` states of each.
"""

from __future__ import annotations

import itertools
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from reviewkit.holes.contents import Array, Indices
from reviewkit.holes.signs import COURSE
from reviewkit.holes.steps import LEAP, SKIP, WRAP

_RING = slice(1, COURSE + 1)
_WORTH = 6.0
"""An opener is weighed where it lies no more than this below the best."""


@dataclass(frozen=True)
class Orders:
    """The hole's number in each state, (k, s); zeros stand for no hole. Log odds of each order, (k,)."""

    numbers: Indices
    odds: Array


def given(order: Sequence[int]) -> Orders:
    """The plan's own order."""
    return Orders(np.array([order], dtype=np.intp), np.zeros(1))


def around(openers: Sequence[int], sizes: Mapping[int, float]) -> Orders:
    """Eighteen holes on from each opener; whoever begins amid a nine, or a course of twelve, may go round it.

    `sizes` are numbers of holes of such courses with their log odds.
    """
    counted = np.arange(COURSE, dtype=np.intp)
    orders = [((opener - 1 + counted) % COURSE + 1, 0.0) for opener in openers]
    for opener, (size, odds) in itertools.product(openers, sizes.items()):
        first = opener - (opener - 1) % size
        if first < opener < first + size <= COURSE + 1:
            ring = first + (opener - first + counted) % size
            orders.append((np.where(counted < size, ring, 0), odds))
    return Orders(np.array([numbers for numbers, _ in orders]), np.array([odds for _, odds in orders]))


def openers(first: Array, enter: Array, told: Sequence[Array], final: Array, trust: float) -> list[int]:
    """The holes that the round may well begin with.

    `first`, `enter` and `final` are (n, h), `told[at]` (starts within reach of start `at`, h): log odds times
    `trust`.
    """
    after = final[:, _RING].copy()
    on = np.where(np.arange(COURSE) == COURSE - 1, WRAP, 0.0)
    for at in range(len(enter) - 1, 0, -1):
        entered = enter[at, _RING] + after[at]
        onward = np.maximum(np.roll(entered, -1) + trust * on, np.roll(entered, -2) + trust * SKIP)
        onward = np.maximum(onward, entered.max() + trust * LEAP)
        reach = slice(at - len(told[at]), at)
        after[reach] = np.maximum(after[reach], told[at][:, _RING] + onward)
    best = (first[:, _RING] + after).max(axis=0)
    return [hole + 1 for hole in np.flatnonzero(best >= best.max() - trust * _WORTH).tolist()]

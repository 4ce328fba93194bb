"""Steps from hole to hole in an order of play: to the next one, over one that was left out, or a leap.

"The front nine, then across to eighteen" leaps. Arrays: `k` orders of play, `s` states of each.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from reviewkit.holes.contents import Array, Indices

SKIP, LEAP = -7.0, -8.5
"""Log odds of leaving out one hole, and several."""
WRAP = -1.0
"""Log odds of going on with a lower number."""
LEAST_LEAP = 3
"""States that a leap goes on by, at least."""
_Number = TypeVar("_Number", bound=np.generic)


@dataclass(frozen=True)
class Steps:
    """`odds` are those of going on to the next state and the one after it, (2, k, s), `leap` any farther."""

    odds: Array
    leap: float

    def best(self, ended: Array) -> tuple[Array, Indices]:
        """The best way into each state from `ended`, (k, s), and the state that it comes from."""
        states = np.broadcast_to(np.arange(ended.shape[1]), ended.shape)
        got, came = _ahead(ended + self.odds[0], 1), states - 1
        farthest = np.maximum.accumulate(ended, axis=1)
        before = np.maximum.accumulate(np.where(ended == farthest, states, 0), axis=1)
        for by, score, origin in (
            (2, ended + self.odds[1], states),
            (LEAST_LEAP, farthest + self.leap, before),
        ):
            moved = _ahead(score, by)
            better = moved > got
            got = np.where(better, moved, got)
            came = np.where(better, _ahead(origin, by), came)
        return got, came

    def into(self, ended: Array) -> Array:
        """Log weight of all ways into each state from `ended`, (k, s)."""
        near = np.logaddexp(_ahead(ended + self.odds[0], 1), _ahead(ended + self.odds[1], 2))
        leapt = np.logaddexp.accumulate(ended, axis=1) + self.leap
        summed: Array = np.logaddexp(near, _ahead(leapt, LEAST_LEAP))
        return summed

    def out_of(self, entered: Array) -> Array:
        """Log weight of all ways out of each state to `entered`, (k, s)."""
        near = np.logaddexp(_behind(entered, 1) + self.odds[0], _behind(entered, 2) + self.odds[1])
        leapt = np.logaddexp.accumulate(entered[:, ::-1], axis=1)[:, ::-1] + self.leap
        summed: Array = np.logaddexp(near, _behind(leapt, LEAST_LEAP))
        return summed


def _ahead(states: npt.NDArray[_Number], by: int) -> npt.NDArray[_Number]:
    """What each state gets from the one `by` before it; the first ones get nothing."""
    moved = np.full_like(states, -np.inf if states.dtype.kind == "f" else -1)
    moved[:, by:] = states[:, :-by]
    return moved


def _behind(states: Array, by: int) -> Array:
    """What each state gets from the one `by` after it; the last ones get nothing."""
    moved = np.full_like(states, -np.inf)
    moved[:, :-by] = states[:, by:]
    return moved

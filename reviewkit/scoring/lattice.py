"""Exact sums over every score a round could have: forward and backward over the holes.

The state after a hole is (running score to par, par sum above four a hole). A hole is a table over
(par, strokes); what is said of the standing is a `Standing` factor. All arrays are probabilities or
likelihoods, never logarithms: a round is short, and each step is scaled to sum to 1.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from reviewkit.scoring.table import PARS, STROKES, Array, Table

NEGLIGIBLE = 1e-9
"""Cells of a hole's table below this share of its largest are left out of the sums."""


@dataclass(frozen=True, slots=True)
class Grid:
    """The states: running score `low`..`high`, par sum less four a hole `-width`..`width`."""

    low: int
    high: int
    width: int

    @property
    def shape(self) -> tuple[int, int]:
        return self.high - self.low + 1, 2 * self.width + 1

    @property
    def running(self) -> Array:
        """Running score to par of each state, a column."""
        return np.arange(self.low, self.high + 1, dtype=np.float64)[:, None]

    @property
    def par_sum(self) -> Array:
        """Par sum less four a hole of each state, a row."""
        return np.arange(-self.width, self.width + 1, dtype=np.float64)[None, :]


@dataclass(frozen=True, slots=True)
class Standing:
    """A claim on the standing, as likelihoods of the states before and after a hole.

    A claim in a hole's talk may mean the standing on the tee or after holing out; the two arrays carry
    the weight of either sense, and their sum is the claim's likelihood. Both have the grid's shape.
    """

    before: Array
    after: Array


@dataclass(frozen=True, slots=True)
class _Step:
    """One way through a hole: its weight and the states it leads from and to, as slices."""

    cell: tuple[int, int]
    weight: float
    source: tuple[slice, slice]
    target: tuple[slice, slice]


def _slices(shift: int, size: int) -> tuple[slice, slice]:
    if shift >= 0:
        return slice(0, size - shift), slice(shift, size)
    return slice(-shift, size), slice(0, size + shift)


def _steps(table: Table, grid: Grid) -> list[_Step]:
    steps = []
    rows, columns = grid.shape
    for i, j in np.argwhere(table > table.max() * NEGLIGIBLE):
        par, strokes = PARS[i], STROKES[j]
        if abs(strokes - par) >= rows:
            continue
        source_row, target_row = _slices(strokes - par, rows)
        source_column, target_column = _slices(par - 4, columns)
        steps.append(
            _Step(
                (int(i), int(j)),
                float(table[i, j]),
                (source_row, source_column),
                (target_row, target_column),
            )
        )
    return steps


def _scaled(array: Array) -> Array:
    total = float(array.sum())
    return array / total if total > 0 else np.full_like(array, 1.0 / array.size)


def _start(grid: Grid) -> Array:
    start = np.zeros(grid.shape)
    start[-grid.low, grid.width] = 1.0
    return start


def _passages(
    tables: Sequence[Table], standings: Sequence[Sequence[Standing]], grid: Grid
) -> list[list[tuple[_Step, Array | float]]]:
    """For each hole, the ways through it and how likely each is in every state that it leads from."""
    return [
        [(step, _passage(step, claims)) for step in _steps(table, grid)]
        for table, claims in zip(tables, standings, strict=True)
    ]


def _passage(step: _Step, standings: Sequence[Standing]) -> Array | float:
    """Likelihood of the claims made in a hole's talk, for each state the step leads from."""
    factor: Array | float = step.weight
    for claim in standings:
        factor = factor * (claim.before[step.source] + claim.after[step.target])
    return factor


def marginals(
    tables: Sequence[Table], standings: Sequence[Sequence[Standing]], grid: Grid
) -> tuple[Table, ...]:
    """Every hole's probabilities over all rounds, given its table and the claims in its talk."""
    passages = _passages(tables, standings, grid)
    forward = [_start(grid)]
    for hole in passages:
        reached = np.zeros(grid.shape)
        for step, factor in hole:
            reached[step.target] += forward[-1][step.source] * factor
        forward.append(_scaled(reached))
    backward = np.ones(grid.shape)
    found: list[Table] = []
    for index in range(len(tables) - 1, -1, -1):
        table = np.zeros_like(tables[index])
        earlier = np.zeros(grid.shape)
        for step, factor in passages[index]:
            flow = backward[step.target] * factor
            table[step.cell] = float((forward[index][step.source] * flow).sum())
            earlier[step.source] += flow
        found.append(_scaled(table))
        backward = _scaled(earlier)
    return tuple(reversed(found))


def likeliest(
    tables: Sequence[Table], standings: Sequence[Sequence[Standing]], grid: Grid
) -> tuple[tuple[int, int], ...]:
    """(par, strokes) of each hole of the most probable round (max-product, traced back).

    Its arithmetic holds by itself.
    """
    passages = _passages(tables, standings, grid)
    best = _start(grid)
    choices: list[npt.NDArray[np.int64]] = []
    for hole in passages:
        reached = np.zeros(grid.shape)
        choice = np.full(grid.shape, -1, dtype=np.int64)
        for number, (step, factor) in enumerate(hole):
            value = best[step.source] * factor
            better = value > reached[step.target]
            reached[step.target][better] = value[better]
            choice[step.target][better] = number
        best = _scaled(reached)
        choices.append(choice)
    row, column = (int(k) for k in np.unravel_index(int(best.argmax()), grid.shape))
    path: list[tuple[int, int]] = []
    for hole, choice in zip(reversed(passages), reversed(choices), strict=True):
        step = hole[max(int(choice[row, column]), 0)][0]
        par, strokes = PARS[step.cell[0]], STROKES[step.cell[1]]
        path.append((par, strokes))
        row, column = row - (strokes - par), column - (par - 4)
    return tuple(reversed(path))

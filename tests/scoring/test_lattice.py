"""The sums over all rounds against the same sums done one round at a time."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from reviewkit.scoring.lattice import Grid, Standing, likeliest, marginals
from reviewkit.scoring.table import PARS, STROKES, Table


def by_hand(
    tables: list[np.ndarray], standings: list[list[Standing]], grid: Grid
) -> tuple[list[np.ndarray], tuple]:
    """Every round there can be, weighed on its own."""
    cells = [[(i, j) for i, j in np.argwhere(table > 0)] for table in tables]
    sums = [np.zeros_like(table) for table in tables]
    best, best_weight = (), -1.0
    for path in itertools.product(*cells):
        weight, running, pars = 1.0, 0, 0
        for (i, j), table, claims in zip(path, tables, standings, strict=True):
            before = (running - grid.low, pars + grid.width)
            running += STROKES[j] - PARS[i]
            pars += PARS[i] - 4
            after = (running - grid.low, pars + grid.width)
            weight *= table[i, j]
            for claim in claims:
                weight *= claim.before[before] + claim.after[after]
        for total, cell in zip(sums, path, strict=True):
            total[tuple(cell)] += weight
        if weight > best_weight:
            best, best_weight = tuple((PARS[i], STROKES[j]) for i, j in path), weight
    return [total / total.sum() for total in sums], best


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_forward_and_backward_agree_with_every_round_counted(seed: int) -> None:
    random = np.random.default_rng(seed)
    grid = Grid(-15, 30, 4)
    tables = []
    for _ in range(3):
        table = np.zeros((len(PARS), len(STROKES)))
        table[:3, 2:6] = random.random((3, 4))
        tables.append(table)
    standings = [
        [Standing(random.random(grid.shape), random.random(grid.shape))],
        [],
        [Standing(np.zeros(grid.shape), random.random(grid.shape)) for _ in range(2)],
    ]
    expected, best = by_hand(tables, standings, grid)
    for mine, theirs in zip(marginals(tables, standings, grid), expected, strict=True):
        np.testing.assert_allclose(mine, theirs, atol=1e-9)
    assert likeliest(tables, standings, grid) == best


def test_a_long_round_does_not_underflow() -> None:
    grid = Grid(-30, 110, 10)
    table = np.full((len(PARS), len(STROKES)), 1e-6)
    table[1, 3] = 1.0
    tables: list[Table] = [table] * 36
    unsaid: list[list[Standing]] = [[] for _ in tables]
    assert likeliest(tables, unsaid, grid) == ((4, 4),) * 36
    assert all(abs(mine.sum() - 1.0) < 1e-9 for mine in marginals(tables, unsaid, grid))

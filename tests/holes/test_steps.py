"""Steps between states against plain enumeration of every pair of states."""

from __future__ import annotations

import numpy as np
import pytest

from reviewkit.holes.evidence import Array
from reviewkit.holes.steps import LEAST_LEAP, Steps

ORDERS, STATES = 2, 7


@pytest.fixture
def drawn() -> tuple[Steps, Array, Array]:
    """Steps, the weight of having ended in each state, and every pair's log odds, (k, from, to)."""
    draw = np.random.default_rng(7)
    steps = Steps(draw.normal(size=(2, ORDERS, STATES)), -1.3)
    pairs = np.full((ORDERS, STATES, STATES), -np.inf)
    for start in range(STATES):
        for by in range(1, STATES - start):
            pairs[:, start, start + by] = steps.leap if by >= LEAST_LEAP else steps.odds[by - 1, :, start]
    return steps, draw.normal(scale=3.0, size=(ORDERS, STATES)), pairs


def test_the_best_way_into_each_state(drawn: tuple[Steps, Array, Array]) -> None:
    steps, ended, pairs = drawn
    got, came = steps.best(ended)
    ways = ended[:, :, None] + pairs
    assert got == pytest.approx(ways.max(axis=1))
    assert (came[:, 1:] == ways.argmax(axis=1)[:, 1:]).all()


def test_all_ways_into_and_out_of_each_state(drawn: tuple[Steps, Array, Array]) -> None:
    steps, weights, pairs = drawn
    into = np.logaddexp.reduce(weights[:, :, None] + pairs, axis=1)
    assert steps.into(weights) == pytest.approx(into)
    assert steps.out_of(weights) == pytest.approx(np.logaddexp.reduce(weights[:, None, :] + pairs, axis=2))

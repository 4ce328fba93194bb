"""The lattice against plain enumeration of every reading of a short talk."""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from collections.abc import Iterator

import numpy as np
import pytest

from reviewkit.holes.confirmed import Confirmed
from reviewkit.holes.evidence import Evidence
from reviewkit.holes.lattice import Lattice, Segment
from reviewkit.language.talk import read_talk
from reviewkit.model import Plan
from reviewkit.model.fact import HoleFact
from tests.support.narrations import GREETING, transcript

TALK = [
    *(GREETING, ""),
    *("Hole one, a par four.", "Driver down the middle.", "8 iron on.", "Two putts for par.", ""),
    *("Right, the next.", "7 iron onto the green.", "Three putts, bogey.", ""),
    *("The third, par five.", "Driver left.", "Wedge on, one putt.", ""),
]
PLANS = {"counted": Plan(), "ordered": Plan(order=(7, 8, 9, 1))}
Path = tuple[tuple[int, int], ...]
"""(place among the starts, state) of each hole."""


def lattice(plan: Plan, facts: tuple[HoleFact, ...] = ()) -> Lattice:
    talk = read_talk(transcript(TALK), plan)
    return Lattice(Evidence(talk), plan, Confirmed(talk, facts))


def readings(of: Lattice) -> Iterator[tuple[int, Path]]:
    """Every play and path through its states; steps of one or two; leaps weigh next to nothing here."""
    plays, states = of.numbers.shape
    places = range(len(of.starts))
    for play in range(plays):
        for count in range(1, min(len(places), 4) + 1):
            for chosen in itertools.combinations(places, count):
                for opener in range(3 if of.plan.order else 1):
                    for steps in itertools.product((1, 2), repeat=count - 1):
                        path = tuple(zip(chosen, np.cumsum((opener, *steps)), strict=True))
                        if path[-1][1] < states:
                            yield play, path


def weight(of: Lattice, play: int, path: Path) -> float:
    score = of.first[path[0][0], play, path[0][1]]
    for (place, state), (after, following) in itertools.pairwise(path):
        told = of.tell(of.starts[[place]], of.starts[[after]])[0, of.numbers[play, state]]
        step = of.steps.odds[following - state - 1, play, state]
        score += told + step + of.enter[after, play, following]
    place, state = path[-1]
    return float(score + of.final[place, play, state])


@pytest.mark.parametrize("plan", PLANS.values(), ids=PLANS)
@pytest.mark.parametrize("facts", [(), (HoleFact(3, 12.0, "start_s", 12.0),)], ids=["talk", "confirmed"])
def test_sums_and_the_best_equal_enumeration(plan: Plan, facts: tuple[HoleFact, ...]) -> None:
    found = lattice(plan, facts)
    weights = {(play, path): weight(found, play, path) for play, path in readings(found)}
    play, path = max(weights, key=weights.__getitem__)
    numbers = found.numbers
    assert found.best() == [(found.starts[place], numbers[play, state]) for place, state in path]
    total = np.logaddexp.reduce(list(weights.values()))
    expected: dict[tuple[int, Segment], float] = defaultdict(float)
    for (play, path), score in weights.items():
        ends = [*(int(found.starts[place]) for place, _ in path[1:]), found.end]
        for (place, state), end in zip(path, ends, strict=True):
            expected[int(numbers[play, state]), (int(found.starts[place]), end)] += math.exp(score - total)
    got = {(hole, segment): p for hole, row in found.segments().items() for segment, p in row.items()}
    assert len(found.starts) >= 4
    for key, share in expected.items():
        # Readings of more than four holes are not enumerated; in so short a talk they weigh next to nothing.
        assert got.get(key, 0.0) == pytest.approx(share, abs=2e-3), key

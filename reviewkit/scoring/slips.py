"""How claims go wrong: right with the probability that the witness has, else most often off by one."""

from __future__ import annotations

from collections.abc import Iterable

SLIP = {-2: 0.1, -1: 0.25, 1: 0.25, 2: 0.1, 3: 0.04, -3: 0.04}
"""How far a claim that is wrong is off; the rest is spread evenly."""

SPREAD = 0.22 / 12


def slip(off: int) -> float:
    """Likelihood of a wrong claim being `off` from the truth."""
    return SLIP.get(off, SPREAD)


def said_of(truth: int, value: int, right: float) -> float:
    """Likelihood of the claim `value` where `truth` is true."""
    return right if truth == value else (1.0 - right) * slip(value - truth)


def claimed(value: int, right: float, reach: Iterable[int]) -> dict[int, float]:
    """Likelihood of the claim `value` for each truth in `reach`."""
    return {truth: said_of(truth, value, right) for truth in reach}

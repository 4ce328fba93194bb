"""How much better a skill must get to double the chance of the target.

A skill that gains strokes lowers the average score of the holes on which it is used: tee shots on par 4 and
longer, the others on all holes alike. Each hole's scores are tilted (weighed by exp(-a x score)) until their
mean has fallen by its share, and convolved again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from reviewkit.stats.odds import NOTHING, Scores, Spread, hole_spread

MOST = 9.0
"""Strokes a round; an improvement beyond it is no plan."""


@dataclass(frozen=True, slots=True)
class Doubling:
    """Strokes a round that `category` must gain to double the chance, and as a share of what it loses.

    `strokes` is None when even MOST would not do, `share` None when the skill loses nothing.
    """

    category: str
    strokes: float | None
    share: float | None
    chance: float


def doublings(
    pars: Sequence[int | None], scores: Scores, tilt: float, target: int, lost: Mapping[str, float]
) -> tuple[Doubling, ...]:
    """One line a skill of `lost` (strokes on eighteen holes), the smallest share of its loss first."""
    spreads = {par: hole_spread(par, scores, tilt) for par in set(pars)}
    now = _chance(pars, spreads, target)
    lines = []
    for category, loss in lost.items():
        used = [par for par in pars if category != "off the tee" or (par or 4) >= 4]
        strokes = _needed(partial(improved, pars, spreads, used, target), 2 * now)
        own = loss * len(pars) / 18
        share = strokes / own if strokes is not None and own > 0 else None
        reached = improved(pars, spreads, used, target, strokes or 0.0)
        lines.append(Doubling(category, strokes, share, reached))
    return tuple(sorted(lines, key=lambda line: np.inf if line.share is None else line.share))


def improved(
    pars: Sequence[int | None],
    spreads: Mapping[int | None, Spread],
    used: Sequence[int | None],
    target: int,
    gain: float,
) -> float:
    """The chance with `gain` strokes a round less on the holes `used`, spread evenly over them."""
    if not used:
        return _chance(pars, spreads, target)
    better = {par: lowered(spreads[par], gain / len(used)) for par in set(used)}
    return _chance(pars, {**spreads, **better}, target)


def lowered(spread: Spread, strokes: float) -> Spread:
    """The spread tilted until its mean is `strokes` less, or as low as it goes."""
    aim, offsets = spread.mean - strokes, np.arange(len(spread.chances))

    def at(tilt: float) -> Spread:
        weights = spread.chances * np.exp(-tilt * offsets)
        return Spread(spread.low, weights / weights.sum())

    low, high = 0.0, 12.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if at(middle).mean > aim else (low, middle)
    return at((low + high) / 2)


def _needed(chance: Callable[[float], float], wanted: float) -> float | None:
    if wanted >= 1 or chance(MOST) < wanted:
        return None
    low, high = 0.0, MOST
    for _ in range(25):
        middle = (low + high) / 2
        low, high = (low, middle) if chance(middle) >= wanted else (middle, high)
    return high


def _chance(pars: Sequence[int | None], spreads: Mapping[int | None, Spread], target: int) -> float:
    total = NOTHING
    for par in pars:
        total = total.plus(spreads[par])
    return total.at_most(target)

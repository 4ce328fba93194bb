"""The chance of reaching the target, hole by hole.

Scores to par on the holes to come are independent draws from the player's own scores on holes of that par,
Dirichlet-smoothed: PRIOR_HOLES holes of a prior are added to what the player scored in other rounds and so
far in this one. Their sum is convolved exactly. The prior is an assumption: tables/score_prior.csv, tilted
so that it averages OUT_OF_REACH strokes over the target on eighteen holes; nobody chases what is easy.
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np

from reviewkit.log import RoundFolder
from reviewkit.stats.benchmark import Array, table_rows
from reviewkit.stats.play import Hole, Play, play_of

PRIOR_HOLES = 10.0
OUT_OF_REACH = 3.0
PAR_MIX = {3: 4 / 18, 4: 10 / 18, 5: 4 / 18}
"""Pars of eighteen holes of a common layout, for a hole whose par is not known."""
Scores = Mapping[tuple[int, int], int]
"""How often each (par, score to par) was made."""


@dataclass(frozen=True, slots=True)
class Spread:
    """Chances of consecutive whole numbers, the first of them `low`."""

    low: int
    chances: Array

    def plus(self, other: Spread) -> Spread:
        """The sum of two independent draws."""
        return Spread(self.low + other.low, np.convolve(self.chances, other.chances))

    def at_most(self, limit: int) -> float:
        """The chance of `limit` or less."""
        return float(min(self.chances[: max(limit - self.low + 1, 0)].sum(), 1.0))

    @property
    def mean(self) -> float:
        return float((self.chances * (self.low + np.arange(len(self.chances)))).sum())


@dataclass(frozen=True, slots=True)
class HoleOdds:
    """The chance of the target after `hole`, None before the first; `to_par` is the score so far."""

    hole: int | None
    play_order: int
    probability: float
    to_par: int | None


NOTHING = Spread(0, np.ones(1))


def target_odds(folder: RoundFolder, past: Iterable[RoundFolder] = ()) -> tuple[HoleOdds, ...]:
    """The odds as the round went, first row before the first stroke; empty when there is no target.

    `past` are the player's other rounds, from which the chances are learnt.
    """
    scores: Counter[tuple[int, int]] = Counter()
    for other in past:
        scores.update(scores_of(play_of(other).holes))
    return odds_of(play_of(folder), scores)


def odds_of(play: Play, scores: Scores) -> tuple[HoleOdds, ...]:
    """The odds after each planned hole played, learning from `scores` and from the holes so far."""
    target = play.plan.target
    if target is None:
        return ()
    counts, to_come = Counter(scores), planned_pars(play)
    tilt = prior_tilt(to_come.values(), target)
    rows = [HoleOdds(None, 0, round_spread(to_come.values(), counts, tilt).at_most(target), 0)]
    done, known = NOTHING, True
    for hole in play.holes:
        if hole.number not in to_come:
            continue
        par = to_come.pop(hole.number)
        known = known and hole.to_par is not None
        done = done.plus(hole_spread(par, counts, tilt) if hole.to_par is None else certain(hole.to_par))
        counts.update(scores_of([hole]))
        chance = done.plus(round_spread(to_come.values(), counts, tilt)).at_most(target)
        rows.append(HoleOdds(hole.number, len(rows), chance, done.low if known else None))
    return tuple(rows)


def planned_pars(play: Play) -> dict[int, int | None]:
    """Hole -> par of the holes the target counts: the planned order, else the holes in the log."""
    pars: dict[int, int | None] = {line.hole: line.par for line in play.plan.card.holes}
    pars.update({hole.number: hole.par for hole in play.holes if hole.par is not None})
    order = play.plan.order or tuple(hole.number for hole in play.holes)
    return {number: pars.get(number) for number in order}


def scores_of(holes: Iterable[Hole]) -> Counter[tuple[int, int]]:
    """Known scores to par by par."""
    return Counter(
        (hole.par, hole.to_par) for hole in holes if hole.par is not None and hole.to_par is not None
    )


def certain(number: int) -> Spread:
    """No spread at all."""
    return Spread(number, np.ones(1))


def hole_spread(par: int | None, scores: Scores, tilt: float = 0.0) -> Spread:
    """Scores to par on a hole of `par` (None: of any); `tilt` as of `prior_tilt`."""
    if par is None:
        mixed = [(share, hole_spread(one, scores, tilt)) for one, share in PAR_MIX.items()]
        low = min(spread.low for _, spread in mixed)
        chances = np.zeros(max(spread.low + len(spread.chances) for _, spread in mixed) - low)
        for share, spread in mixed:
            start = spread.low - low
            chances[start : start + len(spread.chances)] += share * spread.chances
        return Spread(low, chances)
    weights = {over: PRIOR_HOLES * share for over, share in tilted(prior(par), tilt).items()}
    for (own_par, over), times in scores.items():
        if own_par == par:
            weights[over] = weights.get(over, 0.0) + times
    low = min(weights)
    counts = np.array([weights.get(over, 0.0) for over in range(low, max(weights) + 1)])
    return Spread(low, counts / counts.sum())


def round_spread(pars: Iterable[int | None], scores: Scores, tilt: float = 0.0) -> Spread:
    """Scores to par over holes of `pars`."""
    every = list(pars)
    spreads = {par: hole_spread(par, scores, tilt) for par in set(every)}
    total = NOTHING
    for par in every:
        total = total.plus(spreads[par])
    return total


def prior_tilt(pars: Iterable[int | None], target: int) -> float:
    """The tilt at which the prior alone averages OUT_OF_REACH a round over `target` on holes of `pars`."""
    every = list(pars)
    aim = target + OUT_OF_REACH * len(every) / 18
    low, high = -4.0, 4.0
    while high - low > 1e-6:
        middle = (low + high) / 2
        if round_spread(every, {}, middle).mean > aim:
            high = middle
        else:
            low = middle
    return (low + high) / 2


def tilted(shares: Mapping[int, float], tilt: float) -> dict[int, float]:
    """Shares weighed by exp(tilt x score): the same spread of scores for a better or a lesser player."""
    weights = {over: share * math.exp(tilt * over) for over, share in shares.items()}
    total = sum(weights.values())
    return {over: weight / total for over, weight in weights.items()}


@cache
def prior(par: int) -> dict[int, float]:
    """Score to par -> share that the prior gives it; par 6 counts as par 5."""
    rows = [row for row in table_rows("score_prior.csv") if int(row["par"]) == min(par, 5)]
    return {int(row["to_par"]): float(row["share"]) for row in rows}


def turning_points(rows: Sequence[HoleOdds], most: int = 3) -> tuple[tuple[HoleOdds, float], ...]:
    """The holes that changed the odds most, with the change, biggest first."""
    changes = [(after, after.probability - before.probability) for before, after in itertools.pairwise(rows)]
    return tuple(sorted(changes, key=lambda pair: -abs(pair[1]))[:most])

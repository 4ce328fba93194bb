"""Distances that the talk leaves out, drawn from what bounds them.

Each stroke's distance is a told number or, untold, a spread of likely ones (tables/unknown_distances.csv by
situation, tables/clubs.csv by club). Along a hole the candidates are weighed against each other: a stroke
advances the ball by about what its club does and rarely leaves it farther away. Draws come from the whole
hole's joint distribution (forward weights, backward draws), so the next stroke's told start bounds this one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from statistics import NormalDist

import numpy as np
import numpy.typing as npt

from reviewkit.model import Shot
from reviewkit.model.values import FEET_PER_YARD
from reviewkit.stats.benchmark import Array, table_rows
from reviewkit.stats.play import Play

Places = npt.NDArray[np.intp]
CANDIDATES = 64
QUANTILES = np.array([NormalDist().inv_cdf((place + 0.5) / CANDIDATES) for place in range(CANDIDATES)])
FARTHER_AWAY = 0.03
"""Weight of a stroke that leaves the ball farther from the hole, against one that brings it nearer."""
SHORT = ("pitch", "chip", "bunker")
POOR = ("topped", "shank", "fat")


@dataclass(frozen=True, slots=True)
class Spread:
    """A log-normal spread of yards."""

    median_yd: float
    log_sd: float

    def candidates(self) -> Array:
        """CANDIDATES equally likely distances."""
        return np.asarray(self.median_yd * np.exp(self.log_sd * QUANTILES), dtype=np.float64)

    def weight(self, yards: Array) -> Array:
        """Density of log yards up to a factor; what is not positive weighs next to nothing."""
        distance = np.log(np.maximum(yards, 1e-3) / self.median_yd) / self.log_sd
        return np.asarray(np.exp(-0.5 * distance**2) + 1e-9, dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Step:
    """One stroke on its way: the `spot` it is played from (strokes from one spot share it)."""

    shot: Shot
    spot: int
    yards: float | None


@cache
def spreads() -> dict[str, Spread]:
    """Spread by situation."""
    return {
        row["situation"]: Spread(
            float(row["median"]) / (FEET_PER_YARD if row["unit"] == "ft" else 1.0), float(row["log_sd"])
        )
        for row in table_rows("unknown_distances.csv")
    }


@cache
def clubs() -> dict[str, float]:
    """Yards that a middling amateur plays each club for."""
    return {row["club"]: float(row["played_yd"]) for row in table_rows("clubs.csv")}


def reach(play: Play) -> float:
    """How far this player's clubs go as a multiple of tables/clubs.csv, from told approaches; 1 for none."""
    ratios = [
        np.log(shot.distance_yd / clubs()[shot.club])
        for hole, shot in play.strokes
        if shot.distance_yd and shot.club in clubs()
        if shot.kind == "approach" or (shot.kind == "tee" and hole.par == 3)
    ]
    # Two strokes' worth of belief in the table keeps one odd club from speaking for the bag.
    return float(np.exp(sum(ratios) / (len(ratios) + 2.0)))


def draw(steps: Sequence[Step], par: int | None, scale: float, rng: np.random.Generator, n: int) -> Array:
    """Yards before each step, steps x n, drawn jointly. Told distances are the same in every draw."""
    spots: list[Step] = []
    for step in steps:
        if step.spot == len(spots):
            spots.append(step)
    leaving = [max((s for s in steps if s.spot == spot.spot), key=lambda s: s.shot.stroke) for spot in spots]
    points = [
        np.array([step.yards]) if step.yards is not None else _prior(steps, step, par, scale).candidates()
        for step in spots
    ]
    links = [
        _link(leaving[place].shot, par, scale, points[place], points[place + 1], spots[place + 1].shot)
        for place in range(len(spots) - 1)
    ]
    chosen = _joint(points, links, rng, n)
    by_spot = np.stack([values[picks] for values, picks in zip(points, chosen, strict=True)])
    return np.asarray(by_spot[[step.spot for step in steps]], dtype=np.float64)


def _joint(points: Sequence[Array], links: Sequence[Array], rng: np.random.Generator, n: int) -> list[Places]:
    """Indices into each of `points`, n joint draws of a chain with pairwise weights `links`."""
    forward = [np.full(len(points[0]), 1.0)]
    for link in links:
        weights = forward[-1] @ link
        forward.append(weights / weights.sum())
    picks = [_pick(forward[-1][None, :].repeat(n, axis=0), rng)]
    for weights, link in zip(reversed(forward[:-1]), reversed(links), strict=True):
        picks.append(_pick(weights[None, :] * link[:, picks[-1]].T, rng))
    return list(reversed(picks))


def _pick(weights: Array, rng: np.random.Generator) -> Places:
    """One column index a row, by weight."""
    if weights.shape[1] == 1:
        return np.zeros(len(weights), dtype=np.intp)
    sums = weights.cumsum(axis=1)
    draws = rng.random(len(weights)) * sums[:, -1]
    return np.asarray((sums < draws[:, None]).sum(axis=1).clip(max=weights.shape[1] - 1))


def _link(shot: Shot, par: int | None, scale: float, before: Array, after: Array, following: Shot) -> Array:
    """Weight of each pair of distances before and after `shot`."""
    advance = before[:, None] - after[None, :]
    weight = np.where(advance > 0, 1.0, FARTHER_AWAY)
    spread = _advance(shot, par, scale, following)
    return weight if spread is None else weight * spread.weight(advance)


def _advance(shot: Shot, par: int | None, scale: float, following: Shot) -> Spread | None:
    """How far a stroke that was not meant to reach the green goes; None for the others."""
    drive = shot.kind == "tee" and (par or 4) > 3
    if not drive and shot.kind not in ("layup", "recovery"):
        return None
    if following.lie in ("green", "fringe") or following.kind in SHORT:
        return None
    table = spreads()
    if shot.contact in POOR:
        return table["advance of a poor strike"]
    if shot.result in ("penalty", "unplayable"):
        return table["advance into trouble"]
    if shot.kind == "recovery":
        return table["advance of a recovery"]
    if shot.club in clubs():
        longer = 1.0 if shot.kind == "layup" or shot.club == "D" else 1.1
        return Spread(clubs()[shot.club] * scale * longer, table["advance of a club"].log_sd)
    plain = table["advance from the tee" if drive else "advance of a layup"]
    return Spread(plain.median_yd * scale, plain.log_sd)


def _prior(steps: Sequence[Step], step: Step, par: int | None, scale: float) -> Spread:
    """What an untold distance is like before its neighbours are heard."""
    shot, table = step.shot, spreads()
    full = shot.kind == "approach" or (shot.kind == "tee" and par == 3)
    if full and shot.club in clubs():
        return Spread(clubs()[shot.club] * scale, table["advance of a club"].log_sd)
    if shot.kind == "tee":
        return table.get(f"tee par {par}", table["tee"])
    if shot.kind == "putt":
        return table[_putt(steps, shot)]
    return table.get(shot.kind, table["not told"])


def _putt(steps: Sequence[Step], shot: Shot) -> str:
    if shot.lie not in ("green", ""):
        return "putt off the green"
    ending = "holed" if shot.holed else "missed"
    earlier = [step.shot for step in steps if step.shot.stroke < shot.stroke]
    if any(other.lie == "green" for other in earlier):
        return f"later putt {ending}"
    short = bool(earlier) and (earlier[-1].kind in SHORT or earlier[-1].kind == "putt")
    return f"first putt {ending} after a short stroke" if short else f"first putt {ending}"

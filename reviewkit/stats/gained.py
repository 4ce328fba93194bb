"""Strokes gained against the published benchmark, with the uncertainty of what was not told.

A stroke gains what the benchmark expects before it, less what it expects after it, less what the stroke and
its penalties cost. Over a hole this telescopes to benchmark(tee) minus score, whatever is missing, because
each stroke is charged once: strokes the log lacks are filled in as untold ones.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from reviewkit.log import RoundFolder
from reviewkit.model import CardHole, Shot
from reviewkit.stats.benchmark import Array, expected
from reviewkit.stats.play import Hole, Play, play_of
from reviewkit.stats.unknown import Step, draw, reach

CATEGORIES = ("off the tee", "approach", "around the green", "putting", "not told")
DRAWS = 512
LEVEL = (10.0, 90.0)
"""Percentiles of the 80 % interval."""
NEAR_GREEN_YD = 45.0
"""30 yards from the green's edge, taken as 15 yards from the hole."""
UNTOLD_LIES: dict[str, tuple[tuple[str, float], ...]] = {
    "approach": (("fairway", 0.6), ("rough", 0.4)),
    "layup": (("fairway", 0.6), ("rough", 0.4)),
    "recovery": (("trees", 0.8), ("rough", 0.2)),
    "pitch": (("rough", 0.6), ("fairway", 0.4)),
    "chip": (("rough", 0.6), ("fairway", 0.4)),
    "bunker": (("sand", 1.0),),
    "putt": (("green", 1.0),),
    "tee": (("tee", 1.0),),
    "": (("fairway", 0.4), ("rough", 0.4), ("green", 0.2)),
}
"""Where a ball lay when the talk does not say, an assumption of this program's."""


@dataclass(frozen=True, slots=True)
class StrokeGain:
    """One stroke's value; `exact` when the distances and lies before and after it are told."""

    hole: int
    stroke: int
    category: str
    mean: float
    low: float
    high: float
    exact: bool


@dataclass(frozen=True, slots=True)
class SkillGain:
    """A sum over strokes; `exact` says how many of the `strokes` rest on told distances alone."""

    category: str
    mean: float
    low: float
    high: float
    strokes: int
    exact: int


@dataclass(frozen=True, slots=True)
class HoleGain:
    """A hole's sum: `mean` is `benchmark` minus `score`."""

    hole: int
    benchmark: float
    benchmark_low: float
    benchmark_high: float
    score: int
    mean: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class StrokesGained:
    """A round's strokes gained. `left_out` are holes without a known score, which are not counted."""

    strokes: tuple[StrokeGain, ...]
    categories: tuple[SkillGain, ...]
    holes: tuple[HoleGain, ...]
    total: SkillGain
    left_out: tuple[int, ...]

    @property
    def rests_on(self) -> str:
        """How much is told, empty when all of it is."""
        if self.total.exact == self.total.strokes and not self.left_out:
            return ""
        note = f"{self.total.exact} of {self.total.strokes} strokes with told distances"
        return f"{note}, {len(self.left_out)} holes left out" if self.left_out else note


def strokes_gained(folder: RoundFolder) -> StrokesGained:
    """Strokes gained of the round in `folder`."""
    return gained_of(play_of(folder))


def gained_of(play: Play, seed: int = 1) -> StrokesGained:
    """Strokes gained of a round. The draws are the same for the same round and `seed`."""
    scale = reach(play)
    rng = np.random.default_rng(seed)
    strokes: list[StrokeGain] = []
    holes: list[HoleGain] = []
    draws: list[Array] = []
    left_out: list[int] = []
    for hole in play.holes:
        shots = told_and_filled(hole)
        if not shots:
            left_out.append(hole.number)
            continue
        spots = _expectations(hole, shots, play.plan.card.hole(hole.number), scale, rng)
        charges = _charges(shots, score_of(hole))
        gains = spots.values[:-1] - spots.values[1:] - charges[:, None]
        draws.append(gains)
        ends = np.percentile(gains, LEVEL, axis=1)
        strokes += [
            StrokeGain(
                hole=hole.number,
                stroke=shot.stroke,
                category=category(hole, shot),
                mean=float(gains[place].mean()),
                low=float(ends[0, place]),
                high=float(ends[1, place]),
                exact=spots.exact[place],
            )
            for place, shot in enumerate(shots)
        ]
        start, total = bounds(spots.values[0]), bounds(gains.sum(axis=0))
        holes.append(HoleGain(hole.number, *start, int(charges.sum()), *total))
    every = np.concatenate(draws) if draws else np.zeros((0, DRAWS))
    sums = tuple(
        skill for name in CATEGORIES if (skill := _sum(name, every, strokes)).strokes or name != "not told"
    )
    return StrokesGained(tuple(strokes), sums, tuple(holes), _sum("", every, strokes), tuple(left_out))


def score_of(hole: Hole) -> int | None:
    """The hole's score, from its strokes when the row has none but the ball was holed."""
    if hole.score.strokes is not None:
        return hole.score.strokes
    return hole.shots[-1].stroke if hole.shots and hole.shots[-1].holed else None


def told_and_filled(hole: Hole) -> tuple[Shot, ...]:
    """The hole's strokes with an untold one for each that the score counts and the log lacks."""
    score = score_of(hole)
    if score is None:
        return ()
    filled: list[Shot] = []
    expected_stroke = 1
    for shot in hole.shots:
        filled += (_untold(hole, number, filled) for number in range(expected_stroke, shot.stroke))
        filled.append(shot)
        expected_stroke = shot.stroke + 1 + shot.penalty_strokes
    filled += (_untold(hole, number, filled) for number in range(expected_stroke, score + 1))
    return tuple(filled)


def _untold(hole: Hole, stroke: int, before: Sequence[Shot]) -> Shot:
    """A stroke of which only the number is known; a putt when the ball lay on the green before it."""
    kind = "tee" if stroke == 1 else ""
    if before and (before[-1].result == "green" or before[-1].lie == "green"):
        kind = "putt"
    putts, score = hole.score.putts, score_of(hole)
    if putts is not None and score is not None and stroke > score - putts:
        kind = "putt"
    lie = {"tee": "tee", "putt": "green"}.get(kind, "")
    return Shot(hole.number, stroke, 0.0, 0.0, kind, lie=lie, holed=stroke == score, told=False)


def _charges(shots: Sequence[Shot], score: int | None) -> Array:
    """What each stroke costs: strokes up to the next one's number, so that they sum to the score."""
    assert score is not None
    numbers = [shot.stroke for shot in shots]
    return np.diff(np.array([*numbers, score + 1], dtype=np.float64))


@dataclass(frozen=True, slots=True)
class _Spots:
    """Expected strokes before each stroke and 0 at the end, strokes + 1 rows of draws."""

    values: Array
    exact: tuple[bool, ...]


def _expectations(
    hole: Hole, shots: Sequence[Shot], card: CardHole | None, scale: float, rng: np.random.Generator
) -> _Spots:
    steps = _steps(shots, card.yards if card else None)
    yards = draw(steps, hole.par, scale, rng, DRAWS)
    lies: dict[int, tuple[str, ...]] = {}
    rows = []
    for step, distances in zip(steps, yards, strict=True):
        if step.spot not in lies:
            lies[step.spot] = _lies(step.shot, rng)
        rows.append(_expected_at(lies[step.spot], distances))
    known = [step.yards is not None and step.shot.lie != "" for step in steps] + [True]
    spots = [*(step.spot for step in steps), -1]
    exact = tuple(
        (known[place] and known[place + 1]) or spots[place] == spots[place + 1] for place in range(len(steps))
    )
    return _Spots(np.vstack([*rows, np.zeros((1, DRAWS))]), exact)


def _steps(shots: Sequence[Shot], card_yards: float | None) -> list[Step]:
    """Spots and their told distances; a replayed stroke shares the spot of the one it replaces."""
    steps: list[Step] = []
    for shot in shots:
        yards = shot.distance_yd
        before = steps[-1] if steps else None
        again = before is not None and _same_spot(before.shot, shot)
        if again and before is not None and (yards is None or yards == before.yards):
            steps.append(Step(shot, before.spot, before.yards))
            continue
        if before is None and yards is None:
            yards = card_yards
        steps.append(Step(shot, 0 if before is None else before.spot + 1, yards))
    return steps


def _same_spot(before: Shot, shot: Shot) -> bool:
    """Stroke and distance: another stroke from the tee, or from where a lost ball was played."""
    replayed = before.result in ("ob", "lost") and before.penalty_strokes > 0
    return (shot.kind == "tee" and before.kind == "tee") or (replayed and shot.lie in ("", before.lie))


def _lies(shot: Shot, rng: np.random.Generator) -> tuple[str, ...]:
    """One lie for all draws where it is told, else one a draw."""
    if shot.lie:
        return (shot.lie,)
    options = UNTOLD_LIES[shot.kind]
    names, weights = zip(*options, strict=True)
    return tuple(rng.choice(names, size=DRAWS, p=weights).tolist())


def _expected_at(lies: tuple[str, ...], yards: Array) -> Array:
    if len(lies) == 1:
        return expected(lies[0], yards)
    values = np.empty(len(yards))
    every = np.array(lies)
    for name in set(lies):
        values[every == name] = expected(name, yards[every == name])
    return values


def category(hole: Hole, shot: Shot) -> str:
    """The skill a stroke belongs to (PGA TOUR's four, from memory; the green's edge is estimated)."""
    if shot.kind == "tee" and (hole.par or 4) >= 4:
        return "off the tee"
    if shot.kind == "putt" and shot.lie in ("green", ""):
        return "putting"
    if shot.kind in ("pitch", "chip", "bunker", "putt"):
        return "around the green"
    if not shot.kind:
        return "not told"
    near = shot.kind != "tee" and shot.distance_yd is not None and shot.distance_yd <= NEAR_GREEN_YD
    return "around the green" if near else "approach"


def bounds(values: Array) -> tuple[float, float, float]:
    """Mean and 80 % interval of draws."""
    low, high = np.percentile(values, LEVEL)
    return float(values.mean()), float(low), float(high)


def _sum(name: str, draws: Array, strokes: Sequence[StrokeGain]) -> SkillGain:
    """The sum over one category, over all strokes for an empty name."""
    places = [place for place, gain in enumerate(strokes) if not name or gain.category == name]
    mean, low, high = bounds(draws[places].sum(axis=0)) if places else (0.0, 0.0, 0.0)
    told = sum(strokes[place].exact for place in places)
    return SkillGain(name or "total", mean, low, high, len(places), told)

"""One round in a few numbers: what a series needs of it, small enough to keep a thousand of them."""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass

from reviewkit.log import RoundFolder
from reviewkit.stats.gained import gained_of
from reviewkit.stats.odds import planned_pars, scores_of
from reviewkit.stats.play import Play
from reviewkit.stats.registry import STATISTICS

VERSION = 1
"""Raised whenever a summary comes to mean something else, so that no stored one is mistaken for it."""
FOLLOWED = ("to_par", "fairways", "greens", "putts_a_hole", "up_and_downs", "three_putts", "penalties")
"""Statistics whose first figure is followed over a series."""
FAULTY_CONTACT = ("thin", "fat", "topped", "shank", "heel", "toe", "sky")


@dataclass(frozen=True, slots=True)
class Skill:
    """Strokes gained in one category over a round."""

    category: str
    mean: float
    low: float
    high: float
    strokes: int


@dataclass(frozen=True, slots=True)
class Fault:
    """A miss or strike with one club (or kind of stroke where no club is told); `cost` in strokes lost."""

    club: str
    fault: str
    times: int
    cost: float


@dataclass(frozen=True, slots=True)
class Made:
    """How often a score to par was made on holes of one par."""

    par: int
    to_par: int
    times: int


@dataclass(frozen=True, slots=True)
class Value:
    """A followed statistic's first figure; None when not known."""

    name: str
    value: float | None


@dataclass(frozen=True, slots=True)
class RoundSummary:
    """A round. `planned` are the pars of the planned holes, 0 for a par not known; None is not known.

    `played_at` is when the first clip was recorded, ISO 8601, empty when no clip says.
    """

    name: str
    played_at: str
    holes: int
    score: int | None
    to_par: int | None
    target: int | None
    gained_holes: int
    planned: tuple[int, ...]
    made: tuple[Made, ...]
    skills: tuple[Skill, ...]
    faults: tuple[Fault, ...]
    values: tuple[Value, ...]

    @property
    def finished(self) -> bool:
        """Every planned hole has a score."""
        return bool(self.planned) and sum(made.times for made in self.made) >= len(self.planned)

    @property
    def reached(self) -> bool | None:
        """Whether a finished round made its target."""
        if self.target is None or self.to_par is None or not self.finished:
            return None
        return self.to_par <= self.target

    def value(self, name: str) -> float | None:
        return next((item.value for item in self.values if item.name == name), None)


def played_at(folder: RoundFolder) -> str:
    """When the first of the folder's clips was recorded, ISO 8601; empty when none says."""
    sources = folder.meta.get("sources") or ()
    times = [str(source["recorded_at"]) for source in sources if source.get("recorded_at")]
    return min(times, default="")


def summary_of(play: Play, recorded: str = "") -> RoundSummary:
    """The round in a few numbers."""
    gained = gained_of(play)
    scores = [hole.score.strokes for hole in play.holes if hole.score.strokes is not None]
    overs = [hole.to_par for hole in play.holes if hole.to_par is not None]
    lost = {(gain.hole, gain.stroke): -gain.mean for gain in gained.strokes}
    figures = {name: STATISTICS[name].compute(play)[0].value for name in FOLLOWED}
    return RoundSummary(
        name=play.name,
        played_at=recorded,
        holes=len(play.holes),
        score=sum(scores) if scores else None,
        to_par=sum(overs) if overs else None,
        target=play.plan.target,
        gained_holes=len(gained.holes),
        planned=tuple(par or 0 for par in planned_pars(play).values()),
        made=tuple(Made(par, over, times) for (par, over), times in sorted(scores_of(play.holes).items())),
        skills=tuple(Skill(s.category, s.mean, s.low, s.high, s.strokes) for s in gained.categories),
        faults=_faults(play, lost),
        values=tuple(Value(name, value) for name, value in figures.items()),
    )


def _faults(play: Play, lost: dict[tuple[int, int], float]) -> tuple[Fault, ...]:
    times: Counter[tuple[str, str]] = Counter()
    costs: dict[tuple[str, str], float] = defaultdict(float)
    for _, shot in play.strokes:
        struck = shot.contact if shot.contact in FAULTY_CONTACT else ""
        for fault in filter(None, (shot.miss, struck)):
            key = (shot.club or shot.kind, fault)
            times[key] += 1
            costs[key] += lost.get((shot.hole, shot.stroke), 0.0)
    return tuple(Fault(club, fault, count, costs[club, fault]) for (club, fault), count in times.items())

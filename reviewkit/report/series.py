"""What the report shows of several rounds: how they went, what keeps recurring, what to practise."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from reviewkit.report.misses import ClubMisses, by_club
from reviewkit.report.view import RoundView, StrokeView
from reviewkit.report.words import club_name
from reviewkit.stats.gained import CATEGORIES

TOLD = CATEGORIES[:4]
RECURRING = 2
"""In how many rounds a fault must come up to be called recurring."""
LONGEST_LIST = 8


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that goes wrong: how often, in how many rounds, and what it cost a round in strokes.

    The cost is the strokes gained lost on those very strokes, whatever else was wrong with them.
    """

    name: str
    times: int
    rounds: int
    cost: float


@dataclass(frozen=True, slots=True)
class Skill:
    """A part of the game over the series: mean strokes gained an eighteen holes, and its spread by round."""

    category: str
    mean: float
    worst: float
    best: float


@dataclass(frozen=True, slots=True)
class SeriesView:
    """A series in the order its rounds were given."""

    rounds: tuple[RoundView, ...]
    clubs: tuple[ClubMisses, ...]
    faults: tuple[Fault, ...]
    skills: tuple[Skill, ...]

    @property
    def reached(self) -> int:
        return sum(reached(view) is True for view in self.rounds)

    @property
    def aimed(self) -> int:
        return sum(view.plan.target is not None for view in self.rounds)

    @property
    def best(self) -> int | None:
        return min((view.to_par for view in self.rounds if view.to_par is not None), default=None)


def reached(view: RoundView) -> bool | None:
    """Whether the round made its target; None without a target or a whole score."""
    if view.plan.target is None or view.to_par is None:
        return None
    return view.to_par <= view.plan.target


def series_of(rounds: Sequence[RoundView]) -> SeriesView:
    """Gather a series from its rounds."""
    strokes = [stroke.shot for view in rounds for stroke in view.strokes]
    return SeriesView(
        rounds=tuple(rounds),
        clubs=tuple(club for club in by_club(strokes) if club.missed >= RECURRING),
        faults=tuple(_faults(rounds)),
        skills=tuple(_skills(rounds)),
    )


def share(cases: Iterable[bool | None]) -> str:
    """`5 of 9`, of the cases that are known; a dash for none."""
    known = [case for case in cases if case is not None]
    return f"{sum(known)} of {len(known)}" if known else "–"


def _faults(rounds: Sequence[RoundView]) -> list[Fault]:
    """Faults of at least RECURRING rounds, the dearest first."""
    costs: dict[str, list[float]] = defaultdict(list)
    where: dict[str, set[int]] = defaultdict(set)
    for number, view in enumerate(rounds):
        for stroke in view.strokes:
            for name in _names(stroke):
                costs[name].append(-stroke.gain.mean if stroke.gain else 0.0)
                where[name].add(number)
    found = [
        Fault(name, len(lost), len(where[name]), sum(lost) / len(rounds))
        for name, lost in costs.items()
        if len(where[name]) >= RECURRING
    ]
    return sorted(found, key=lambda fault: -fault.cost)[:LONGEST_LIST]


def _names(stroke: StrokeView) -> Iterator[str]:
    """The faults that one stroke shows."""
    shot = stroke.shot
    club = "putt" if shot.kind == "putt" else club_name(shot.club) or shot.kind
    if shot.miss:
        yield f"{club} {shot.miss}"
    if shot.contact and shot.contact != "pure":
        yield f"{club} {shot.contact}"
    if shot.penalty_strokes:
        yield f"penalty off the {club}" if shot.kind == "tee" else f"penalty with the {club}"


def _skills(rounds: Sequence[RoundView]) -> Iterator[Skill]:
    """Parts of the game scaled to eighteen holes, the costliest first."""
    found = []
    for category in TOLD:
        values = [
            skill.mean * 18 / len(view.gained.holes)
            for view in rounds
            for skill in view.gained.categories
            if skill.category == category and view.gained.holes
        ]
        if values:
            found.append(Skill(category, sum(values) / len(values), min(values), max(values)))
    yield from sorted(found, key=lambda skill: skill.mean)

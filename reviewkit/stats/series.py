"""Several rounds together: trends, what recurs, what to practise, and the next round's chance."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

import numpy as np

from reviewkit.log import RoundFolder
from reviewkit.stats.gained import CATEGORIES
from reviewkit.stats.improve import Doubling, doublings
from reviewkit.stats.odds import prior_tilt, round_spread
from reviewkit.stats.play import play_of
from reviewkit.stats.summary import FOLLOWED, Fault, RoundSummary, Skill, played_at, summary_of

SKILLS = CATEGORIES[:4]
CONFIDENCE = 0.8
RECURRING = 2
"""In how many rounds a fault must come up to be called recurring."""


@dataclass(frozen=True, slots=True)
class Trend:
    """Change a round of one statistic, by least squares in order of play, with its 80 % interval."""

    name: str
    rounds: int
    mean: float
    slope: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Recurring:
    """The same fault with the same club in `rounds` of `of` rounds; `cost`: strokes lost on those strokes."""

    club: str
    fault: str
    rounds: int
    of: int
    times: int
    cost: float


@dataclass(frozen=True, slots=True)
class Practice:
    """Strokes lost to the benchmark by a skill on eighteen holes, with the 80 % interval of the mean.

    `latest` is the newest round's loss less the mean of the rounds before it: the player against their own
    past, None without a past.
    """

    category: str
    lost: float
    low: float
    high: float
    rounds: int
    latest: float | None


@dataclass(frozen=True, slots=True)
class NextRound:
    """The chance that a round like the newest one planned reaches its target, and what would double it."""

    target: int
    holes: int
    chance: float
    doublings: tuple[Doubling, ...]


@dataclass(frozen=True, slots=True)
class Series:
    """Rounds, oldest first."""

    rounds: tuple[RoundSummary, ...]
    trends: tuple[Trend, ...]
    recurring: tuple[Recurring, ...]
    practice: tuple[Practice, ...]
    next_round: NextRound | None


def series(folders: Iterable[RoundFolder]) -> Series:
    """The series of `folders`: by when they were recorded if all say so, else in the order given."""
    return series_of(summary_of(play_of(folder), played_at(folder)) for folder in folders)


def series_of(rounds: Iterable[RoundSummary]) -> Series:
    """The series of summaries: by when they were recorded if all say so, else in the order given."""
    every = tuple(rounds)
    if all(summary.played_at for summary in every):
        every = tuple(sorted(every, key=lambda summary: summary.played_at))
    practice = _practice(every)
    return Series(
        rounds=every,
        trends=tuple(trend for name in FOLLOWED if (trend := _trend(name, every)) is not None),
        recurring=_recurring(every),
        practice=practice,
        next_round=_next_round(every, {line.category: line.lost for line in practice}),
    )


def _trend(name: str, rounds: Sequence[RoundSummary]) -> Trend | None:
    points = [
        (place, value)
        for place, summary in enumerate(rounds)
        if (value := summary.value(name)) is not None and (name != "to_par" or summary.finished)
    ]
    if len(points) < 3:
        return None
    from scipy import stats as scipy_stats

    places, values = zip(*points, strict=True)
    fit = scipy_stats.linregress(places, values)
    reach = float(scipy_stats.t.ppf(0.5 + CONFIDENCE / 2, len(points) - 2) * fit.stderr)
    slope = float(fit.slope)
    return Trend(name, len(points), fmean(values), slope, slope - reach, slope + reach)


def _recurring(rounds: Sequence[RoundSummary]) -> tuple[Recurring, ...]:
    """Faults of at least RECURRING rounds, the dearest first."""
    by_fault: dict[tuple[str, str], list[Fault]] = defaultdict(list)
    for summary in rounds:
        for fault in summary.faults:
            by_fault[fault.club, fault.fault].append(fault)
    found = [
        Recurring(
            club=club,
            fault=fault,
            rounds=len(cases),
            of=len(rounds),
            times=sum(case.times for case in cases),
            cost=sum(case.cost for case in cases),
        )
        for (club, fault), cases in by_fault.items()
        if len(cases) >= RECURRING
    ]
    return tuple(sorted(found, key=lambda line: -line.cost))


def _practice(rounds: Sequence[RoundSummary]) -> tuple[Practice, ...]:
    """Skills by strokes lost, most first; rounds without a scored hole say nothing."""
    lines = []
    for category in SKILLS:
        skills = [
            (skill, 18 / summary.gained_holes)
            for summary in rounds
            for skill in summary.skills
            if skill.category == category and summary.gained_holes
        ]
        if skills:
            lines.append(_practice_line(category, skills))
    return tuple(sorted(lines, key=lambda line: -line.lost))


def _practice_line(category: str, skills: Sequence[tuple[Skill, float]]) -> Practice:
    losses = [-skill.mean * scale for skill, scale in skills]
    lost = fmean(losses)
    if len(losses) == 1:
        (skill, scale) = skills[0]
        return Practice(category, lost, -skill.high * scale, -skill.low * scale, 1, None)
    from scipy import stats as scipy_stats

    # What differs from round to round already holds what each round's untold distances blur.
    error = stdev(losses) / np.sqrt(len(losses))
    reach = float(scipy_stats.t.ppf(0.5 + CONFIDENCE / 2, len(losses) - 1) * error)
    latest = losses[-1] - fmean(losses[:-1])
    return Practice(category, lost, lost - reach, lost + reach, len(losses), latest)


def _next_round(rounds: Sequence[RoundSummary], lost: Mapping[str, float]) -> NextRound | None:
    planned = next((r for r in reversed(rounds) if r.target is not None and r.planned), None)
    if planned is None or planned.target is None:
        return None
    scores: Counter[tuple[int, int]] = Counter()
    for summary in rounds:
        scores.update({(made.par, made.to_par): made.times for made in summary.made})
    pars = [par or None for par in planned.planned]
    tilt = prior_tilt(pars, planned.target)
    chance = round_spread(pars, scores, tilt).at_most(planned.target)
    doubled = doublings(pars, scores, tilt, planned.target, lost)
    return NextRound(planned.target, len(pars), chance, doubled)

"""What the first words and the last say of the round: how many holes it has and where it begins."""

from __future__ import annotations

import itertools
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from reviewkit.holes.signs import COURSE, slight
from reviewkit.model import Mention, Talk

OPENING = 12
"""Utterances in which the round is laid out, at most; "no," "hiya" and their like are not counted."""
CLOSING = 8
"""The same of those in which it is summed up."""
_SUMS = {"running", "total"}
_SIDES = {"front": 1, "outward": 1, "first": 1, "1st": 1, "back": 10, "inward": 10, "second": 10, "2nd": 10}
_NINES, _USUAL = (9, 18), (1, 10)
_MOST = 2.0
"""A plan said twice is not twice as sure."""


@dataclass(frozen=True, slots=True)
class Outline:
    """Log odds for each number of holes, and for each hole that the round may begin with.

    `sizes` are numbers of holes that the course may have: "7 up to 12, then 1 to 5" is of a course of twelve.
    """

    counts: Mapping[int, float]
    openers: Mapping[int, float]
    sizes: frozenset[int] = frozenset()

    @property
    def ends(self) -> frozenset[int]:
        """Last holes that "two to play" may count to: of the plan where one is told, else of the nines."""
        openers = {*self.openers, *_USUAL}
        planned = {opener + count - 1 for count in self.counts for opener in openers if count < COURSE}
        return frozenset(planned if planned and COURSE not in self.counts else {*planned, *_NINES})


def outline(talk: Talk) -> Outline:
    """Read the round's plan from the opening words; empty when they tell none."""
    counts: dict[int, float] = defaultdict(float)
    openers: dict[int, float] = defaultdict(float)
    closers: dict[int, float] = defaultdict(float)
    opening = _opening(talk)
    for utterance in opening:
        for m in utterance.mentions:
            if m.kind == "planned" and isinstance(m.value, int):
                counts[m.value] += m.weight
                if m.unit in _SIDES:
                    openers[_SIDES[m.unit]] += m.weight
            elif m.kind == "stretch_par" and isinstance(m.value, int):
                counts[round(m.value / 4)] += m.weight
            elif m.kind in ("opener", "closer") and isinstance(m.value, int):
                (openers if m.kind == "opener" else closers)[m.value] += m.weight
    ends: set[int] = set()
    for stretches in _stretches(opening):
        _join(stretches, counts, openers)
        ends |= {_hole(str(m.value)) for m in stretches}
    for opener, closer in itertools.product(openers, closers):
        for course in (9, 18):
            if max(opener, closer) <= course:
                counts[(closer - opener) % course + 1] += closers[closer]
    sizes = frozenset(ends | set(counts))
    for count in _summed_up(talk):
        counts[int(count.value or 0)] += count.weight
    return Outline(_bounded(counts), _bounded(openers), sizes)


def _opening(talk: Talk) -> Talk:
    return talk[: next(itertools.islice(_telling(talk), OPENING, None), len(talk))]


def _summed_up(talk: Talk) -> Iterator[Mention]:
    """ "So ten over for the twelve holes": numbers of holes told at the end with what they came to."""
    telling = [*_telling(talk)]
    if len(telling) <= OPENING + CLOSING:
        return
    for utterance in talk[telling[-CLOSING] :]:
        if any(m.kind in _SUMS and not m.mood for m in utterance.mentions):
            yield from (m for m in utterance.mentions if m.kind == "planned" and isinstance(m.value, int))


def _telling(talk: Talk) -> Iterator[int]:
    return (at for at, utterance in enumerate(talk) if not slight(utterance))


def _stretches(talk: Talk) -> Iterator[list[Mention]]:
    """Stretches told together: in one utterance, or in the ones after it too."""
    run: list[Mention] = []
    for utterance in talk:
        told = [m for m in utterance.mentions if m.kind == "stretch"]
        if run and not told:
            yield run
            run = []
        run += told
    if run:
        yield run


def _join(stretches: list[Mention], counts: dict[int, float], openers: dict[int, float]) -> None:
    """Holes "14 through 18 and then 1 through 4" are nine that begin with the 14th.

    Nobody plans "1 through 6" and then "7 through 18": one of the two is shut, and "12 holes" tell which.
    """
    pairs = [(_hole(m.unit), _hole(str(m.value))) for m in stretches]
    if not all(low < high for low, high in pairs):
        return
    follow = any(high + 1 == low for (_, high), (low, _) in itertools.permutations(pairs, 2))
    plans = [[pair] for pair in pairs] if follow else [pairs]
    told = [plan for plan in plans if _holes(plan) in counts]
    for plan in told or plans:
        counts[_holes(plan)] += stretches[0].weight
        openers[plan[0][0]] += stretches[0].weight


def _holes(plan: list[tuple[int, int]]) -> int:
    return sum(high - low + 1 for low, high in plan)


def _hole(text: str) -> int:
    digits = re.match(r"\d+", text)
    return int(digits.group()) if digits else 1


def _bounded(weights: Mapping[int, float]) -> dict[int, float]:
    return {key: min(weight, _MOST) for key, weight in weights.items()}

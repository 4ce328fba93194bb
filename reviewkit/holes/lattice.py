"""All readings of a round as holes, weighed together: a semi-Markov chain over utterances, solved exactly.

A state is a place in an order of play: with a plan its own order, else eighteen holes counted on from each
likely opener. Every reading starts with words before the first hole and cuts the rest into holes that follow
the order; a skipped hole costs. Viterbi gives the likeliest, forward and backward sums the probability of
each stretch (Rabiner 1989, A tutorial on hidden Markov models; from memory). Scores are natural log odds.
Arrays: `n` candidate starts, `k` orders of play, `s` states of each.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from functools import cached_property

import numpy as np
import numpy.typing as npt

from reviewkit.holes.confirmed import Confirmed
from reviewkit.holes.evidence import Array, Evidence, Indices
from reviewkit.holes.signs import COURSE
from reviewkit.model import Plan

Segment = tuple[int, int]
"""First utterance of a hole and the first after it."""

_LONGEST = 70
"""Utterances in one hole, at most."""
_KEEP = -4.0
"""An utterance with less evidence than this, told numbers included, is no candidate for a start."""
_PER_HOLE = -0.5
_SKIP = -7.0
_USUAL_STARTS = {1: 0.0, 10: -1.0}
_ODD_START = -5.0
_WRAP = -1.0
_NINE = 9
_CLEARLY = 1.2
"""Odds of a hole's number from which it is named."""
_UNGREETED = -1.5
_OPENS = 2.5
_IDLY, _FEW_IDLE = 0.3, 2
"""Small talk is of the time before the first hole, but for an utterance or two."""
_PARTED = 1.0
"""Against a first hole that begins with small talk, and a pause behind that."""
_CLOSING_WORDS = -0.7
_WHOLE = 2.0
"""Most rounds end where a nine does."""
_MEANT = 2.0
"""How far the number of holes told beforehand counts."""
_NOTHING = -12.0
"""A reading worse than this is none."""
_TRUST = 2.0
"""Log odds for each unit of evidence, set so that probabilities are calibrated on invented rounds."""
_NEGLIGIBLE = 1e-5
"""Stretches less probable than this are left out."""


class Lattice:
    """The readings of one talk. Built in time linear in its length."""

    def __init__(self, evidence: Evidence, plan: Plan, confirmed: Confirmed) -> None:
        self.evidence, self.confirmed, self.plan = evidence, confirmed, plan
        opening = evidence.opening
        # A told number may yet lift an utterance that opens badly.
        starts = {at for at, score in enumerate(opening) if score + max(evidence.number[at]) > _KEEP}
        self.starts = np.array(sorted(starts | set(confirmed.starts.values())), dtype=np.intp)
        self.end = len(evidence.talk)
        # A hole may begin as late as `_LONGEST` utterances before the start in question.
        self.reach = np.searchsorted(self.starts, self.starts - _LONGEST)

    @cached_property
    def numbers(self) -> Indices:
        """The hole's number in each state, (k, s)."""
        if self.plan.order:
            return np.array([self.plan.order], dtype=np.intp)
        counted = np.arange(COURSE, dtype=np.intp)
        plays = [(opener - 1 + counted) % COURSE + 1 for opener in self._openers()]
        # Whoever begins amid a nine, or amid a course of twelve, may go around it; zeros stand for no hole.
        for opener, size in itertools.product(self._openers(), self._sizes()):
            first = opener - (opener - 1) % size
            if first < opener < first + size <= COURSE + 1:
                around = first + (opener - first + counted) % size
                plays.append(np.where(counted < size, around, 0))
        return np.array(plays)

    def _openers(self) -> list[int]:
        """First holes worth a search: the usual ones, any named as a hole early on, and the one before it."""
        told = [self.evidence.number[at] for at in self.starts[:12]]
        named = {hole for row in told for hole in _named(row)}
        before = {hole - 1 for hole in named if hole > 1}
        return sorted({*_USUAL_STARTS, *named, *before, *self.evidence.outline.openers})

    def _sizes(self) -> list[int]:
        """Holes that may be gone around: a nine, as many as are told of, or up to the last one named."""
        last = max((hole for row in self.evidence.number for hole in _named(row)), default=COURSE)
        return sorted({_NINE, last, *self.evidence.outline.sizes} - {1, COURSE})

    @cached_property
    def steps(self) -> Array:
        """Log odds of going on to the next state and to the one after it, (2, k, s)."""
        steps = np.full((2, *self.numbers.shape), -np.inf)
        for skipped in (0, 1):
            ahead = slice(None, -1 - skipped)
            steps[skipped, :, ahead] = _SKIP * skipped
            if not self.plan.order:
                wraps = self.numbers[:, 1 + skipped :] < self.numbers[:, ahead]
                steps[skipped, :, ahead] += np.where(wraps, _WRAP, 0.0)
                steps[skipped, :, ahead][self.numbers[:, 1 + skipped :] == 0] = -np.inf
        return _TRUST * steps

    @cached_property
    def enter(self) -> Array:
        """Log odds of each state's hole beginning at each start, (n, k, s)."""
        told = np.array(self.evidence.number)[self.starts][:, self.numbers]
        entered = told + np.array(self.evidence.opening)[self.starts, None, None] + _PER_HOLE
        if self.confirmed.facts:
            holes = range(COURSE + 1)
            sure = [[self.confirmed.enter(int(at), hole) for hole in holes] for at in self.starts]
            entered = entered + np.array(sure)[:, self.numbers]
        weighed: Array = _TRUST * entered
        return weighed

    @cached_property
    def first(self) -> Array:
        """Log odds of the round beginning there in that state; before it is small talk. (n, k, s)."""
        begun = np.full(self.enter.shape, -np.inf)
        evidence = self.evidence
        # Whoever says where the round begins may begin anywhere.
        meant = evidence.outline.openers.items()
        likely = _USUAL_STARTS | {hole: _USUAL_STARTS.get(hole, 0.0) + weight for hole, weight in meant}
        for place, at in enumerate(map(int, self.starts)):
            # Nothing can have ended before the first hole, and hardly anybody begins without a greeting, but
            # an announcement as the very first words stands after as good as a pause.
            told = 0.7 * evidence.ends(at, "first") - evidence.closing(at)
            told -= _IDLY * max(0, evidence.idle[at] - _FEW_IDLE) + _PARTED * evidence.parted(at)
            if at == 0:
                told += _OPENS if evidence.announced else _UNGREETED
            if self.plan.order:
                begun[place, 0, :3] = told + _SKIP
                begun[place, 0, 0] = told
                continue
            played = evidence.counts["played"][at] + evidence.counts["over"][at]
            odd = 0.0 if evidence.ends(0, "shotgun", at + 4) else _ODD_START
            usual = np.array([likely.get(int(hole), odd) for hole in self.numbers[:, 0]])
            begun[place, :, 0] = told + usual - 0.9 * played
        return _TRUST * begun + self.enter

    @cached_property
    def final(self) -> Array:
        """Log odds of the round ending with a hole begun there, closing words after it or none, (n, k, s)."""
        ends = np.append(self.starts, self.end)
        played = np.array(self.evidence.counts["played"])
        after = np.where(ends < self.end, _CLOSING_WORDS - 0.9 * (played[-1] - played[ends]), 0.0)
        whole = np.where(np.isin(self.numbers, (9, COURSE)), _WHOLE, 0.0)
        meant = self.evidence.outline.counts
        if meant and not self.plan.order:
            whole = np.array([_MEANT * meant.get(count, 0.0) for count in range(1, COURSE + 1)])
        rows = []
        for place, at in enumerate(map(int, self.starts)):
            until = slice(place + 1, int(np.searchsorted(ends, at + _LONGEST, "right")))
            told = self.tell(np.array([at]), ends[until])[0] + _TRUST * after[until, None, None]
            last = told.max(axis=0) if told.size else np.full(self.numbers.shape, -np.inf)
            rows.append(last + _TRUST * (whole + 0.7 * self.evidence.ends(at, "last")))
        return np.array(rows)

    @cached_property
    def _inside(self) -> Array:
        return np.array(self.evidence.inside)

    def tell(self, begins: Indices, ends: Indices) -> Array:
        """Log odds of the utterances from each of `begins` to before each of `ends` telling the hole of each
        state, (begins, ends, k, s)."""
        inside = self._inside
        said = inside[:, ends][:, None, :] - inside[:, begins][:, :, None]
        told = self.evidence.content(begins[:, None], ends[None, :])[:, :, None, None]
        weighed: Array = told + np.moveaxis(said[self.numbers], (0, 1), (2, 3))
        if self.confirmed.facts:
            weighed = weighed + self.confirmed.tell(begins, ends)[:, :, self.numbers]
        return _TRUST * weighed

    @cached_property
    def told(self) -> list[Array]:
        """For each start, the holes that may end there: (starts within reach, k, s)."""
        return [
            self.tell(self.starts[self.reach[at] : at], self.starts[at : at + 1])[:, 0]
            for at in range(len(self.starts))
        ]

    def best(self) -> list[tuple[int, int]]:
        """Viterbi: (utterance, hole number) of each hole of the likeliest reading; empty when all are bad."""
        if not len(self.starts):
            return []
        score = self.first.copy()
        came = np.full((*score.shape, 2), -1)
        for at in range(1, len(self.starts)):
            ended = score[self.reach[at] : at] + self.told[at]
            origin, ended = ended.argmax(axis=0), ended.max(axis=0)
            for skipped in (0, 1):
                moved = _ahead(ended + self.steps[skipped], 1 + skipped) + self.enter[at]
                better = moved > score[at]
                score[at] = np.where(better, moved, score[at])
                came[at, better, 0] = _ahead(origin + self.reach[at], 1 + skipped)[better]
                came[at, better, 1] = 1 + skipped
        whole = score + self.final
        place, play, state = (int(index) for index in np.unravel_index(whole.argmax(), whole.shape))
        if whole[place, play, state] <= _TRUST * _NOTHING:
            return []
        path = []
        while place >= 0:
            path.append((int(self.starts[place]), int(self.numbers[play, state])))
            before, step = came[place, play, state]
            place, state = int(before), state - int(step)
        return path[::-1]

    def segments(self) -> dict[int, dict[Segment, float]]:
        """Hole number -> each stretch that may tell it -> the probability of that over all readings."""
        forward, onward = self._forward(), self._onward()
        total = np.logaddexp.reduce(forward + self.final, axis=None)
        found: dict[int, dict[Segment, float]] = {hole: {} for hole in range(1, COURSE + 1)}
        for at in range(len(self.starts) + 1):
            if at < len(self.starts):
                low, end = int(self.reach[at]), int(self.starts[at])
                odds = forward[low:at] + self.told[at] + onward[at]
            else:
                low, end = 0, self.end
                odds = forward + self.final
            share = np.exp(odds - total)
            for place, play, state in np.argwhere(share > _NEGLIGIBLE):
                of_hole = found[int(self.numbers[play, state])]
                key = (int(self.starts[low + place]), end)
                of_hole[key] = of_hole.get(key, 0.0) + float(share[place, play, state])
        return found

    def _forward(self) -> Array:
        """Log weight of all that may come before and enter each state at each start, (n, k, s)."""
        score = self.first.copy()
        for at in range(1, len(self.starts)):
            ended = np.logaddexp.reduce(score[self.reach[at] : at] + self.told[at], axis=0)
            for skipped in (0, 1):
                moved = _ahead(ended + self.steps[skipped], 1 + skipped) + self.enter[at]
                score[at] = np.logaddexp(score[at], moved)
        return score

    def _onward(self) -> Array:
        """Log weight of all that may come after a state whose hole ends at each start, (n, k, s)."""
        after = self.final.copy()
        onward = np.full(after.shape, -np.inf)
        for at in range(len(self.starts) - 1, 0, -1):
            for skipped in (0, 1):
                entered = _behind(self.enter[at] + after[at], 1 + skipped) + self.steps[skipped]
                onward[at] = np.logaddexp(onward[at], entered)
            reach = slice(self.reach[at], at)
            after[reach] = np.logaddexp(after[reach], self.told[at] + onward[at])
        return onward


def _named(row: Sequence[float]) -> list[int]:
    """The holes that an utterance clearly names."""
    return [hole for hole in range(1, COURSE + 1) if row[hole] > _CLEARLY]


def _ahead(states: npt.NDArray[np.generic], by: int) -> npt.NDArray[np.generic]:
    """What each state gets from the one `by` before it; the first ones get nothing."""
    moved = np.full_like(states, -np.inf if states.dtype.kind == "f" else -1)
    moved[:, by:] = states[:, :-by]
    return moved


def _behind(states: npt.NDArray[np.generic], by: int) -> npt.NDArray[np.generic]:
    """What each state gets from the one `by` after it; the last ones get nothing."""
    moved = np.full_like(states, -np.inf)
    moved[:, :-by] = states[:, by:]
    return moved

"""All readings of a round as holes, weighed together: a semi-Markov chain over utterances, solved exactly.

A state is a place in an order of play: with a plan its own order, else eighteen holes counted on from each
likely opener. Every reading starts with words before the first hole and cuts the rest into holes that follow
the order; a skipped hole costs. Viterbi gives the likeliest, forward and backward sums the probability of
each stretch (Rabiner 1989, A tutorial on hidden Markov models; from memory). Scores are natural log odds.
Arrays: `n` candidate starts, `k` orders of play, `s` states of each.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property

import numpy as np

from reviewkit.holes.confirmed import Confirmed
from reviewkit.holes.contents import Array, Indices
from reviewkit.holes.evidence import Evidence
from reviewkit.holes.orders import Orders, around, given, openers
from reviewkit.holes.signs import COURSE
from reviewkit.holes.steps import LEAP, SKIP, WRAP, Steps
from reviewkit.model import Plan
from reviewkit.model.values import MAX_HOLE

Segment = tuple[int, int]
"""First utterance of a hole and the first after it."""

_LONGEST = 70
"""Utterances in one hole, at most."""
_KEEP = -4.0
"""An utterance with less evidence than this, told numbers included, is no candidate for a start."""
_PER_HOLE = -0.5
_USUAL_STARTS = {1: 0.0, 10: -1.0}
_ODD_START = -4.0
_NINE = 9
_CLEARLY = 1.2
"""Odds of a hole's number from which it is named."""
_UNGREETED = -1.5
_OPENS = 2.5
_IDLY, _FEW_IDLE = 0.3, 2
"""Small talk is of the time before the first hole, but for an utterance or two."""
_PARTED = 1.0
"""Against a first hole that begins with small talk, and a pause behind that."""
_MEASURED = 1.5
"""Against a first hole behind words that tell a hole's length: "341 yards to get us going. | Bit of heel"."""
_CLOSING_WORDS = -0.7
_WHOLE = 2.0
"""Most rounds end where a nine does."""
_UNTOLD = -6.0
"""Against a course of as many holes as are named, of which nobody told."""
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
        # A hole ends where another may begin or the talk ends, begun `_LONGEST` utterances before at most.
        self.ends = np.append(self.starts, self.end)
        self.reach = np.searchsorted(self.starts, self.ends - _LONGEST)

    @cached_property
    def orders(self) -> Orders:
        """The orders of play worth weighing."""
        if self.plan.order:
            return given(self.plan.order)
        whole = 0.0 if self.evidence.outline.counts else _whole(np.arange(MAX_HOLE + 1))
        likely = openers(self._begun, self._entered, self._told, self._ended + _TRUST * whole, _TRUST)
        return around(likely, self._sizes())

    @property
    def numbers(self) -> Indices:
        """The hole's number in each state, (k, s)."""
        return self.orders.numbers

    def _sizes(self) -> dict[int, float]:
        """Holes that may be gone around: a nine, as many as are told of, or up to the last one named."""
        last = max((hole for row in self.evidence.number for hole in _named(row)), default=COURSE)
        sizes = {last: _UNTOLD} | dict.fromkeys((_NINE, *self.evidence.outline.sizes), 0.0)
        return {size: odds for size, odds in sizes.items() if 1 < size < COURSE}

    @cached_property
    def steps(self) -> Steps:
        """The ways from state to state, and their log odds."""
        steps = np.full((2, *self.numbers.shape), -np.inf)
        for skipped in (0, 1):
            ahead = slice(None, -1 - skipped)
            steps[skipped, :, ahead] = SKIP * skipped
            if not self.plan.order:
                wraps = self.numbers[:, 1 + skipped :] < self.numbers[:, ahead]
                steps[skipped, :, ahead] += np.where(wraps, WRAP, 0.0)
        return Steps(_TRUST * steps, _TRUST * LEAP)

    @cached_property
    def _entered(self) -> Array:
        """Log odds of each hole beginning at each start, (n, h)."""
        told = np.array(self.evidence.number)[self.starts]
        entered = told + np.array(self.evidence.opening)[self.starts, None] + _PER_HOLE
        if self.confirmed.facts:
            holes = range(MAX_HOLE + 1)
            sure = [[self.confirmed.enter(int(at), hole) for hole in holes] for at in self.starts]
            entered += np.array(sure)
        entered[:, 0] = -np.inf
        weighed: Array = _TRUST * entered
        return weighed

    @cached_property
    def enter(self) -> Array:
        """Log odds of each state's hole beginning at each start, (n, k, s)."""
        return self._entered[:, self.numbers]

    @cached_property
    def _opened(self) -> Array:
        """Log odds of the round beginning at each start, whichever hole; before it is small talk. (n,)"""
        evidence, opened = self.evidence, []
        for at in map(int, self.starts):
            # Nothing can have ended before the first hole, and hardly anybody begins without a greeting, but
            # an announcement as the very first words stands after as good as a pause.
            told = 0.7 * evidence.ends(at, "first") - evidence.closing(at)
            told += 0.0 if at in evidence.told_first else evidence.still_ending(at)
            told -= _IDLY * max(0, evidence.idle[at] - _FEW_IDLE) + _PARTED * evidence.parted(at)
            told -= _MEASURED * (at > evidence.measured)
            if at == 0:
                told += _OPENS if evidence.announced else _UNGREETED
            if not self.plan.order:
                told -= 0.9 * (evidence.contents.counts["played"][at] + evidence.contents.counts["over"][at])
            opened.append(told)
        return np.array(opened)

    @cached_property
    def _begun(self) -> Array:
        """Log odds of the round beginning at each start with each hole of a course, (n, h)."""
        # Whoever says where the round begins may begin anywhere.
        meant = self.evidence.outline.openers
        most = max(meant.values(), default=0.0)
        usual = {hole: odds - most for hole, odds in _USUAL_STARTS.items()}
        likely = usual | {hole: _USUAL_STARTS.get(hole, 0.0) + odds for hole, odds in meant.items()}
        rows = []
        for at in map(int, self.starts):
            odd = 0.0 if self.evidence.ends(0, "shotgun", at + 4) else _ODD_START
            rows.append([likely.get(hole, odd) for hole in range(MAX_HOLE + 1)])
        begun: Array = _TRUST * (self._opened[:, None] + np.array(rows)) + self._entered
        return begun

    @cached_property
    def first(self) -> Array:
        """Log odds of the round beginning there in that state. (n, k, s)."""
        begun = np.full(self.enter.shape, -np.inf)
        if self.plan.order:
            later = np.array([0.0, SKIP, SKIP][: self.numbers.shape[1]])
            begun[:, 0, : len(later)] = (
                _TRUST * (self._opened[:, None] + later) + self.enter[:, 0, : len(later)]
            )
        else:
            begun[:, :, 0] = self._begun[:, self.numbers[:, 0]] + _TRUST * self.orders.odds
        return begun

    @cached_property
    def _ended(self) -> Array:
        """Log odds of the round ending with each hole begun there, closing words after it or none, (n, h)."""
        played = np.array(self.evidence.contents.counts["played"])
        after = np.where(self.ends < self.end, _CLOSING_WORDS - 0.9 * (played[-1] - played[self.ends]), 0.0)
        ended = np.full((len(self.starts), MAX_HOLE + 1), -np.inf)
        for at, told in enumerate(self._told):
            reach = slice(self.reach[at], at)
            ended[reach] = np.maximum(ended[reach], told + _TRUST * after[at])
        last = np.array([self.evidence.ends(at, "last") for at in map(int, self.starts)])
        weighed: Array = ended + _TRUST * 0.7 * last[:, None]
        return weighed

    @cached_property
    def final(self) -> Array:
        """Log odds of the round ending with a hole begun there, (n, k, s)."""
        whole = _whole(self.numbers)
        meant = self.evidence.outline.counts
        if meant and not self.plan.order:
            whole = np.array([_MEANT * meant.get(count, 0.0) for count in range(1, COURSE + 1)])
        return self._ended[:, self.numbers] + _TRUST * whole

    def tell(self, begins: Indices, ends: Indices) -> Array:
        """Log odds of the utterances from each of `begins` to before that of `ends` telling each hole,
        (stretches, h)."""
        inside = self.evidence.inside
        said = inside[:, ends] - inside[:, begins]
        weighed: Array = self.evidence.contents.tell(begins, ends)[:, None] + said.T
        if self.confirmed.facts:
            weighed = weighed + self.confirmed.tell(begins, ends)
        return _TRUST * weighed

    @cached_property
    def _told(self) -> list[Array]:
        """For each start, and the talk's end, the holes that may end there: (starts within reach, h)."""
        begun = [np.arange(low, at) for at, low in enumerate(self.reach)]
        ends = np.repeat(self.ends, [len(starts) for starts in begun])
        told = self.tell(self.starts[np.concatenate(begun)], ends)
        return np.split(told, np.cumsum([len(starts) for starts in begun])[:-1])

    @cached_property
    def told(self) -> list[Array]:
        """The same for each state: (starts within reach, k, s)."""
        return [told[:, self.numbers] for told in self._told]

    def best(self) -> list[tuple[int, int]]:
        """Viterbi: (utterance, hole number) of each hole of the likeliest reading; empty when all are bad."""
        if not len(self.starts):
            return []
        score = self.first.copy()
        came = np.full((*score.shape, 2), -1)
        for at in range(1, len(self.starts)):
            ended = score[self.reach[at] : at] + self.told[at]
            origin = ended.argmax(axis=0) + self.reach[at]
            moved, from_state = self.steps.best(ended.max(axis=0))
            moved = moved + self.enter[at]
            better = moved > score[at]
            score[at] = np.where(better, moved, score[at])
            from_place = np.take_along_axis(origin, np.maximum(from_state, 0), axis=1)
            came[at, better] = np.stack([from_place, from_state], axis=-1)[better]
        whole = score + self.final
        place, play, state = (int(index) for index in np.unravel_index(whole.argmax(), whole.shape))
        if whole[place, play, state] <= _TRUST * _NOTHING:
            return []
        path = []
        while place >= 0:
            path.append((int(self.starts[place]), int(self.numbers[play, state])))
            place, state = (int(index) for index in came[place, play, state])
        return path[::-1]

    def segments(self) -> dict[int, dict[Segment, float]]:
        """Hole number -> each stretch that may tell it -> the probability of that over all readings."""
        forward, onward = self._forward(), self._onward()
        total = np.logaddexp.reduce(forward + self.final, axis=None)
        found: dict[int, dict[Segment, float]] = {hole: {} for hole in range(1, MAX_HOLE + 1)}
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
            score[at] = np.logaddexp(score[at], self.steps.into(ended) + self.enter[at])
        return score

    def _onward(self) -> Array:
        """Log weight of all that may come after a state whose hole ends at each start, (n, k, s)."""
        after = self.final.copy()
        onward = np.full(after.shape, -np.inf)
        for at in range(len(self.starts) - 1, 0, -1):
            onward[at] = self.steps.out_of(self.enter[at] + after[at])
            reach = slice(self.reach[at], at)
            after[reach] = np.logaddexp(after[reach], self.told[at] + onward[at])
        return onward


def _whole(numbers: Indices) -> Array:
    """Most rounds end where a nine does."""
    return np.where(np.isin(numbers, (_NINE, COURSE)), _WHOLE, 0.0)


def _named(row: Sequence[float]) -> list[int]:
    """The holes that an utterance clearly names."""
    return [hole for hole in range(1, COURSE + 1) if row[hole] > _CLEARLY]

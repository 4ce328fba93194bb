"""The best reading of the whole round as holes, decoded together: a semi-Markov chain over utterances.

State: the hole's number. Every path starts with words before the first hole, cuts the rest into holes whose
numbers follow the order of play, and is weighed by `Evidence`. Viterbi gives the reading, forward-backward the
probability of each start (Rabiner 1989, A tutorial on hidden Markov models; from memory).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.holes.evidence import Evidence
from reviewkit.model import HoleSpan, Mention, Plan, Talk
from reviewkit.model.fact import HoleFact
from reviewkit.model.values import MAX_HOLE

_LONGEST = 70
"""Utterances in one hole, at most."""
_KEEP = -4.0
"""An utterance with less evidence than this, told numbers included, is no candidate for a start."""
_PER_HOLE = -0.5
_SKIP = -7.0
_USUAL_STARTS = {1: 0.0, 10: -0.7}
_ODD_START = -3.0
_COURSE = 18


@dataclass(frozen=True, slots=True)
class _Step:
    score: float
    start: int
    before: tuple[int, int] | None


def decode(
    talk: Talk, plan: Plan, cuts: Sequence[float] = (), facts: Sequence[HoleFact] = ()
) -> tuple[HoleSpan, ...]:
    """Holes in order of play; empty when the talk tells of none.

    `cuts` are times of hard cuts in seconds; a start within reach of one, with no words between, moves to it.
    """
    if not talk:
        return ()
    lattice = _Lattice(Evidence(talk, plan), plan)
    path = lattice.best()
    likely = lattice.likelihoods(path)
    spans = []
    for order, (at, number) in enumerate(path):
        end = path[order + 1][0] if order + 1 < len(path) else len(talk)
        reason = _reason(talk, at, number)
        spans.append(
            HoleSpan(
                hole=number,
                play_order=order + 1,
                start_s=snap(talk, at, cuts),
                end_s=snap(talk, end, cuts) if end < len(talk) else talk[-1].end_s,
                first=talk[at].first,
                last=talk[end - 1].last,
                told=bool(reason),
                probability=likely[order],
                reason=reason,
            )
        )
    return tuple(spans)


SNAP_S = 2.0


def snap(talk: Talk, at: int, cuts: Sequence[float]) -> float:
    """Start of utterance `at`, moved to the nearest cut in the silence before it, at most SNAP_S earlier."""
    start = talk[at].start_s
    earliest = max(start - SNAP_S, talk[at - 1].end_s if at else 0.0)
    near = [cut for cut in cuts if earliest <= cut <= start + 0.3]
    return max(near) if near else start


def _reason(talk: Talk, at: int, number: int) -> str:
    """The words that name the hole, empty when none do."""
    for utterance in talk[at : at + 4]:
        for mention in utterance.mentions:
            if mention.kind == "hole" and mention.value in (number, "first", "last") and not mention.mood:
                return mention.text
    return ""


class _Lattice:
    """Scores of all paths. A node is (utterance, hole number): that hole starts with that utterance."""

    def __init__(self, evidence: Evidence, plan: Plan) -> None:
        self.evidence = evidence
        self.order = plan.order
        opening = evidence.opening
        # "+ 2.5": a told number may yet lift an utterance that opens badly.
        self.starts = [at for at, score in enumerate(opening) if score + _lift(evidence, at) > _KEEP]
        self.end = len(evidence.talk)
        self.numbers = tuple(plan.order) or tuple(range(1, _COURSE + 1))
        self._content: dict[tuple[int, int], float] = {}

    def enter(self, at: int, number: int) -> float:
        return self.evidence.opening[at] + self.evidence.number[at][number] + _PER_HOLE

    def tell(self, start: int, end: int, number: int) -> float:
        """Score of hole `number` told by utterances start..end-1."""
        if (start, end) not in self._content:
            self._content[start, end] = self.evidence.content(start, end)
        inside = self.evidence.inside[number]
        return self._content[start, end] + inside[end] - inside[start]

    def first(self, at: int, number: int) -> float:
        """Score of the round beginning with hole `number` at utterance `at`; what comes before is small talk."""
        told = self.evidence.ends(at, "first") * 0.7
        if self.order:
            return told + (0.0 if number == self.order[0] else _SKIP)
        played = self.evidence.counts["played"][at] + self.evidence.counts["over"][at]
        return told + _USUAL_STARTS.get(number, _ODD_START) - 0.9 * played

    def follow(self, number: int) -> tuple[tuple[int, float], ...]:
        """Holes that may come after `number`, each with its log odds."""
        if self.order:
            at = self.order.index(number)
            return tuple((n, _SKIP * (i - at - 1)) for i, n in enumerate(self.order) if at < i <= at + 2)
        return ((number % _COURSE + 1, 0.0), ((number + 1) % _COURSE + 1, _SKIP))

    def best(self) -> list[tuple[int, int]]:
        """Viterbi: (utterance, number) of each hole of the likeliest reading."""
        table: dict[tuple[int, int], tuple[float, tuple[int, int] | None]] = {}
        for at in self.starts:
            for number in self.numbers:
                score = self.first(at, number) + self.enter(at, number)
                if score > table.get((at, number), (-math.inf, None))[0]:
                    table[at, number] = (score, None)
                if (at, number) in table:
                    self._spread(at, number, table)
        finals = [(table[node][0] + self._final(*node), node) for node in table if self.end - node[0] <= _LONGEST]
        if not finals:
            return []
        score, node = max(finals)
        if score < -12.0:
            return []
        path: list[tuple[int, int]] = []
        walker: tuple[int, int] | None = node
        while walker is not None:
            path.append(walker)
            walker = table[walker][1]
        return path[::-1]

    def _spread(
        self, at: int, number: int, table: dict[tuple[int, int], tuple[float, tuple[int, int] | None]]
    ) -> None:
        base = table[at, number][0]
        for later in self.starts:
            if not at < later <= at + _LONGEST:
                continue
            told = base + self.tell(at, later, number)
            for following, odds in self.follow(number):
                score = told + odds + self.enter(later, following)
                if score > table.get((later, following), (-math.inf, None))[0]:
                    table[later, following] = (score, (at, number))

    def _final(self, at: int, number: int) -> float:
        return self.tell(at, self.end, number) + 0.7 * self.evidence.ends(at, "last")

    def likelihoods(self, path: Sequence[tuple[int, int]]) -> list[float]:
        """For each start of the path, how likely it is against the other starts between its neighbours."""
        result = []
        for order, (at, number) in enumerate(path):
            left = path[order - 1] if order else None
            right = path[order + 1][0] if order + 1 < len(path) else self.end
            scores = {}
            for other in self.starts:
                if (left[0] if left else -1) < other < right:
                    before = self.tell(left[0], other, left[1]) if left else self.first(other, number)
                    scores[other] = before + self.enter(other, number) + self.tell(other, right, number)
            top = max(scores.values())
            total = sum(math.exp(score - top) for score in scores.values())
            result.append(math.exp(scores[at] - top) / total)
        return result


def _lift(evidence: Evidence, at: int) -> float:
    return max(0.0, *evidence.number[at])


def pars(mentions: Sequence[Mention]) -> dict[int, float]:
    """Par -> weight of the words for it, in one hole's mentions."""
    weights: dict[int, float] = {}
    for order, mention in enumerate(mentions):
        if mention.kind == "par" and not mention.mood and isinstance(mention.value, int):
            weights[mention.value] = weights.get(mention.value, 0.0) + mention.weight / (1 + 0.05 * order)
    return weights

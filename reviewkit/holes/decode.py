"""The best reading of the whole round as holes, decoded together: a semi-Markov chain over utterances.

State: the hole's number, 19 to 35 standing for holes 1 to 17 played after the 18th. Every path starts with
words before the first hole, cuts the rest into holes whose numbers follow the order of play, and is weighed
by `Evidence`. Viterbi gives the reading (Rabiner 1989, A tutorial on hidden Markov models; from memory). The
probability of a start is its weight against all others between its neighbours. What a person has confirmed
outweighs all talk.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from reviewkit.holes.confirmed import Confirmed
from reviewkit.holes.evidence import Evidence
from reviewkit.model import HoleSpan, Mention, Plan, Talk
from reviewkit.model.fact import HoleFact

_LONGEST = 70
"""Utterances in one hole, at most."""
_KEEP = -4.0
"""An utterance with less evidence than this, told numbers included, is no candidate for a start."""
_PER_HOLE = -0.5
_SKIP = -7.0
_USUAL_STARTS = {1: 0.0, 10: -1.0}
_ODD_START = -5.0
_WRAP = -1.0
_COURSE = 18
_CLOSING_WORDS = -0.7
_WHOLE = 1.2
"""Most rounds end where a nine does."""


_Table = dict[int, dict[int, tuple[float, tuple[int, int] | None]]]
"""Utterance -> state -> (score, node before)."""


def decode(
    talk: Talk, plan: Plan, cuts: Sequence[float] = (), facts: Sequence[HoleFact] = ()
) -> tuple[HoleSpan, ...]:
    """Holes in order of play; empty when the talk tells of none.

    `cuts` are times of hard cuts in seconds; a start within reach of one, with no words between, moves to it.
    """
    if not talk:
        return ()
    lattice = _Lattice(Evidence(talk), plan, Confirmed(talk, tuple(facts)))
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
                probability=_near(talk, likely[order], at),
                reason=reason,
                others=_others(talk, likely[order], at),
            )
        )
    return tuple(spans)


SNAP_S = 2.0
NEAR_S = 3.0
"""A start this near is as good as right, to a viewer."""
_OTHERS, _WORTH = 2, 0.05
"""How many other starts are kept, and how probable they must be."""
_TRUST = 1.0
"""How far scores are trusted as log odds; set so that probabilities are calibrated on invented rounds."""


def snap(talk: Talk, at: int, cuts: Sequence[float]) -> float:
    """Start of utterance `at`, moved to the nearest cut in the silence before it, at most SNAP_S earlier."""
    start = talk[at].start_s
    earliest = max(start - SNAP_S, talk[at - 1].end_s if at else 0.0)
    near = [cut for cut in cuts if earliest <= cut <= start + 0.3]
    return max(near) if near else start


def _near(talk: Talk, likely: Mapping[int, float], at: int) -> float:
    """How likely a hole begins within NEAR_S of utterance `at`."""
    near = [share for other, share in likely.items() if abs(talk[other].start_s - talk[at].start_s) <= NEAR_S]
    return min(sum(near), 1.0)


def _others(talk: Talk, likely: Mapping[int, float], at: int) -> tuple[tuple[int, float], ...]:
    """The likeliest other starts, as the words that they begin with."""
    ranked = sorted(((share, other) for other, share in likely.items() if other != at), reverse=True)
    return tuple((talk[other].first, share) for share, other in ranked[:_OTHERS] if share >= _WORTH)


def _reason(talk: Talk, at: int, number: int) -> str:
    """The words that name the hole, empty when none do."""
    for utterance in talk[at : at + 4]:
        for mention in utterance.mentions:
            if mention.kind == "hole" and mention.value in (number, "first", "last") and not mention.mood:
                return mention.text
    return ""


class _Lattice:
    """Scores of all paths. A node is (utterance, hole number): that hole starts with that utterance."""

    def __init__(self, evidence: Evidence, plan: Plan, confirmed: Confirmed) -> None:
        self.evidence = evidence
        self.confirmed = confirmed
        self.order = plan.order
        opening = evidence.opening
        # "+ 2.5": a told number may yet lift an utterance that opens badly.
        self.starts = [at for at, score in enumerate(opening) if score + _lift(evidence, at) > _KEEP]
        self.starts = sorted({*self.starts, *confirmed.starts.values()})
        self.end = len(evidence.talk)
        self.numbers = tuple(plan.order) or tuple(range(1, _COURSE + 1))
        self._content: dict[tuple[int, int], float] = {}

    def enter(self, at: int, state: int) -> float:
        number = card_number(state)
        told = self.evidence.opening[at] + self.evidence.number[at][number] + _PER_HOLE
        return told + self.confirmed.enter(at, number) if self.confirmed.facts else told

    def tell(self, start: int, end: int, state: int) -> float:
        """Score of the hole told by utterances start..end-1."""
        if (start, end) not in self._content:
            self._content[start, end] = self.evidence.content(start, end)
        inside = self.evidence.inside[card_number(state)]
        told = self._content[start, end] + inside[end] - inside[start]
        return told + self.confirmed.tell(start, end, card_number(state)) if self.confirmed.facts else told

    def first(self, at: int, number: int) -> float:
        """Score of the round beginning with hole `number` at utterance `at`; before it is small talk."""
        told = self.evidence.ends(at, "first") * 0.7
        # Nothing can have ended before the first hole, and hardly anybody begins without a greeting.
        told += max(0.0, -self.evidence.closing(at)) - (1.5 if at == 0 else 0.0)
        if self.order:
            return told + (0.0 if number == self.order[0] else _SKIP)
        played = self.evidence.counts["played"][at] + self.evidence.counts["over"][at]
        odd = 0.0 if self.evidence.ends(0, "shotgun", at + 4) else _ODD_START
        return told + _USUAL_STARTS.get(number, odd) - 0.9 * played

    def follow(self, state: int, start: int) -> tuple[tuple[int, float], ...]:
        """States that may come after, each with its log odds; nobody plays a hole twice."""
        if self.order:
            at = self.order.index(state)
            return tuple((n, _SKIP * (i - at - 1)) for i, n in enumerate(self.order) if at < i <= at + 2)
        last = start + _COURSE - 1
        steps = ((state + 1, 0.0), (state + 2, _SKIP))
        return tuple((n, odds + (_WRAP if state <= _COURSE < n else 0.0)) for n, odds in steps if n <= last)

    def best(self) -> list[tuple[int, int]]:
        """Viterbi: (utterance, hole number) of each hole of the likeliest reading."""
        found = [self._best_from(start) for start in self._openers()]
        score, path = max(found, default=(-math.inf, []))
        return [(at, card_number(state)) for at, state in path] if score > _NOTHING else []

    def _openers(self) -> list[int]:
        """First holes worth a search: those given, the usual ones, and any that is named as a hole."""
        if self.order:
            return list(self.order[:3])
        named = {n for at in self.starts[:12] for n in self.numbers if self.evidence.number[at][n] > 1.2}
        return sorted({*_USUAL_STARTS, *named} & set(self.numbers))

    def _best_from(self, opener: int) -> tuple[float, list[tuple[int, int]]]:
        table: _Table = {at: {} for at in self.starts}
        finals = []
        for order, at in enumerate(self.starts):
            states = table[at]
            score = self.first(at, opener) + self.enter(at, opener)
            if opener not in states or score > states[opener][0]:
                states[opener] = (score, None)
            hopeless = max(score for score, _ in states.values()) - _MARGIN
            for state, (score, _) in list(states.items()):
                if score > hopeless:
                    self._spread(order, state, opener, table)
                    finals.append((score + self._final(at, state), (at, state)))
        if not finals:
            return -math.inf, []
        score, node = max(finals)
        path: list[tuple[int, int]] = []
        walker: tuple[int, int] | None = node
        while walker is not None:
            path.append(walker)
            walker = table[walker[0]][walker[1]][1]
        return score, path[::-1]

    def _spread(self, order: int, state: int, opener: int, table: _Table) -> None:
        """Offer every later start what comes after hole `state` begun at start number `order`."""
        at = self.starts[order]
        base = table[at][state][0]
        following = self.follow(state, opener)
        for later in self.starts[order + 1 :]:
            if later > at + _LONGEST:
                break
            told = base + self.tell(at, later, state)
            states = table[later]
            for after, odds in following:
                score = told + odds + self.enter(later, after)
                if after not in states or score > states[after][0]:
                    states[after] = (score, (at, state))

    def _final(self, at: int, state: int) -> float:
        """The last hole, with closing words after it or none."""
        told = [self.tell(at, self.end, state)] if self.end - at <= _LONGEST else []
        played = self.evidence.counts["played"]
        told.extend(
            self.tell(at, end, state) + _CLOSING_WORDS - 0.9 * (played[-1] - played[end])
            for end in self.starts
            if at < end <= at + _LONGEST
        )
        whole = _WHOLE if card_number(state) in (9, _COURSE) else 0.0
        return max(told, default=-math.inf) + 0.7 * self.evidence.ends(at, "last") + whole

    def likelihoods(self, path: Sequence[tuple[int, int]]) -> list[dict[int, float]]:
        """For each start of the path, all the starts between its neighbours with their probabilities."""
        result = []
        for order, (_, number) in enumerate(path):
            left = path[order - 1] if order else None
            right = path[order + 1][0] if order + 1 < len(path) else self.end
            scores = {}
            for other in self.starts:
                if (left[0] if left else -1) < other < right:
                    before = self.tell(left[0], other, left[1]) if left else self.first(other, number)
                    scores[other] = before + self.enter(other, number) + self.tell(other, right, number)
            top = max(scores.values())
            odds = {other: math.exp(_TRUST * (score - top)) for other, score in scores.items()}
            total = sum(odds.values())
            result.append({other: share / total for other, share in odds.items()})
        return result


_MARGIN = 14.0
"""A node so much worse than the best at the same utterance is not followed."""
_NOTHING = -12.0
"""A reading worse than this is none."""


def card_number(state: int) -> int:
    """The number on the card of a state that counts on after the 18th."""
    return state - _COURSE if state > _COURSE else state


def _lift(evidence: Evidence, at: int) -> float:
    return max(0.0, *evidence.number[at])


def pars(mentions: Sequence[Mention]) -> dict[int, float]:
    """Par -> weight of the words for it, in one hole's mentions."""
    weights: dict[int, float] = {}
    for order, mention in enumerate(mentions):
        if mention.kind == "par" and not mention.mood and isinstance(mention.value, int):
            weights[mention.value] = weights.get(mention.value, 0.0) + mention.weight / (1 + 0.05 * order)
    return weights

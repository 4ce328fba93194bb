"""The best reading of the whole round as holes, decoded together, and how likely each hole lies elsewhere.

What a person has confirmed outweighs all talk.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reviewkit.holes.confirmed import Confirmed
from reviewkit.holes.evidence import Evidence
from reviewkit.holes.lattice import Lattice, Segment
from reviewkit.model import HoleSpan, Mention, Plan, Talk
from reviewkit.model.fact import HoleFact


def decode(
    talk: Talk, plan: Plan, cuts: Sequence[float] = (), facts: Sequence[HoleFact] = ()
) -> tuple[HoleSpan, ...]:
    """Holes in order of play; empty when the talk tells of none.

    `cuts` are times of hard cuts in seconds; a start within reach of one, with no words between, moves to it.
    """
    if not talk:
        return ()
    lattice = Lattice(Evidence(talk), plan, Confirmed(talk, tuple(facts)))
    path = lattice.best()
    likely = lattice.segments() if path else {}
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
                probability=_near(talk, likely[number], at),
                reason=reason,
                others=_others(talk, likely[number], (at, end)),
                played=min(sum(likely[number].values()), 1.0),
                score_first=at in lattice.evidence.told_first,
            )
        )
    return tuple(spans)


SNAP_S = 2.0
NEAR_S = 3.0
"""A start this near is as good as right, to a viewer."""
_WORTH = 0.06
"""Stretches less probable than this are not kept."""


def snap(talk: Talk, at: int, cuts: Sequence[float]) -> float:
    """Start of utterance `at`, moved to the nearest cut in the silence before it, at most SNAP_S earlier."""
    start = talk[at].start_s
    earliest = max(start - SNAP_S, talk[at - 1].end_s if at else 0.0)
    near = [cut for cut in cuts if earliest <= cut <= start + 0.3]
    return max(near) if near else start


def _near(talk: Talk, likely: Mapping[Segment, float], at: int) -> float:
    """How likely a hole begins within NEAR_S of utterance `at`."""
    start_s = talk[at].start_s
    near = [share for (start, _), share in likely.items() if abs(talk[start].start_s - start_s) <= NEAR_S]
    return min(sum(near), 1.0)


def _others(
    talk: Talk, likely: Mapping[Segment, float], taken: Segment
) -> tuple[tuple[int, int, float], ...]:
    """The other stretches, likeliest first, as their first and last words."""
    ranked = sorted(((share, other) for other, share in likely.items() if other != taken), reverse=True)
    return tuple(
        (talk[start].first, talk[end - 1].last, share) for share, (start, end) in ranked if share >= _WORTH
    )


def _reason(talk: Talk, at: int, number: int) -> str:
    """The words that name the hole, empty when none do."""
    for utterance in talk[at : at + 4]:
        for mention in utterance.mentions:
            if mention.kind == "hole" and mention.value in (number, "first", "last") and not mention.mood:
                return mention.text
    return ""


def pars(mentions: Sequence[Mention]) -> dict[int, float]:
    """Par -> weight of the words for it, in one hole's mentions."""
    weights: dict[int, float] = {}
    for order, mention in enumerate(mentions):
        if mention.kind == "par" and not mention.mood and isinstance(mention.value, int):
            weights[mention.value] = weights.get(mention.value, 0.0) + mention.weight / (1 + 0.05 * order)
    return weights

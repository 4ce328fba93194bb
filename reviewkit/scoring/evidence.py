"""One hole's table: the tale of strokes, the score words and numbers said, the points, on golf's prior.

Claims are noisy. A claim is right with the probability RIGHT of its kind, times the mention's weight;
else it is a slip, most often by one. The same claim twice is not two witnesses.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reviewkit.model import HoleTale, Mention
from reviewkit.scoring.counting import stableford
from reviewkit.scoring.moment import moment
from reviewkit.scoring.play import par_of_play
from reviewkit.scoring.table import PARS, STROKES, Table, at_par, at_strokes, at_to_par, prior

RIGHT = {
    "strokes": 0.96,
    "score_word": 0.96,
    "hole_to_par": 0.9,
    "points": 0.85,
    "putt_for": 0.85,
    "count": 0.85,
}
"""How often a claim of a kind, as extracted, is about this player's hole and true."""

WALKING = {"strokes": 0.8, "score_word": 0.9}
"""What is left of a claim's trust when it comes before the first stroke: it may be of the hole before."""

UNFINISHED = {"strokes": 0.7, "score_word": 0.85}
"""The same when strokes are still to come."""

COUNTED = frozenset({"count", "putt_for"})
"""Kinds that rest on the tale of the strokes to come; they share its faults, and the last has the least."""

MOST_UNTOLD = 3
"""A count further ahead of the strokes told, penalties included, is none."""

REPEATED = 0.6
"""What is left of a claim's error when it is said more than once: the same ears heard the same mouth."""

SLIP = {-2: 0.1, -1: 0.25, 1: 0.25, 2: 0.1, 3: 0.04, -3: 0.04}
"""How far a claim that is wrong is off; the rest is spread evenly."""

SPREAD = 0.22 / 12
ABOUT_WITHIN = 1
"""Another hole's number belongs to the claim that ends at most so many words before it."""

TALE_TRUST = 0.97
"""How far the count of strokes told is believed over the same count one or two off."""

TALE_OFF = {-2: 0.12, -1: 0.3, 1: 0.3, 2: 0.12}
PAR_TRUST = 0.94


STROKES_GIVEN = {0: 0.5, 1: 0.35, 2: 0.15}
"""Share of holes on which a player receives so many strokes, over handicaps from scratch to 36; a guess."""


def slip(off: int) -> float:
    """Likelihood of a wrong claim being `off` from the truth."""
    return SLIP.get(off, SPREAD)


def claimed(value: int, right: float, reach: Iterable[int]) -> dict[int, float]:
    """Likelihood of the claim `value` for each truth in `reach`."""
    return {truth: right if truth == value else (1.0 - right) * slip(value - truth) for truth in reach}


def blurred(counts: Mapping[int, float]) -> dict[int, float]:
    """The tale's count with room for a stroke left untold or told twice."""
    total = sum(counts.values())
    out = dict.fromkeys(STROKES, 0.0)
    for count, share in counts.items():
        for strokes in STROKES:
            if strokes == min(count, STROKES[-1]):
                out[strokes] += TALE_TRUST * share / total
            else:
                out[strokes] += (1.0 - TALE_TRUST) * TALE_OFF.get(count - strokes, 0.01) * share / total
    return out


def hole_table(tale: HoleTale) -> Table:
    """Likelihood of (par, strokes) from everything said of this hole alone; greatest cell 1."""
    table = prior()
    if tale.par:
        table = table * at_par(_trusted_par(tale.par))
    table = table * at_par(par_of_play(tale.shots))
    if tale.counts and sum(tale.counts.values()) > 0:
        table = table * at_strokes(blurred(tale.counts))
    for (kind, value), mentions in _witnesses(tale).items():
        right = max(_trust(tale, kind, mention) for mention in mentions)
        if len(mentions) > 1 and kind not in COUNTED:
            right = 1.0 - (1.0 - right) * REPEATED
        table = table * _likelihood(kind, value, right)
    scaled: Table = table / table.max()
    return scaled


def _trusted_par(shares: Mapping[int, float]) -> dict[int, float]:
    total = sum(shares.values())
    even = (1.0 - PAR_TRUST) / len(PARS)
    return {par: PAR_TRUST * shares.get(par, 0.0) / total + even for par in PARS}


def _witnesses(tale: HoleTale) -> dict[tuple[str, int], list[Mention]]:
    """Plain claims by what they come to: (kind, value), the strokes left to play already added."""
    found: dict[tuple[str, int], list[Mention]] = {}
    last = {m.kind: m for m in tale.mentions if m.kind in COUNTED and not m.mood and _countable(tale, m)}
    for mention in tale.mentions:
        if mention.kind in COUNTED and mention is not last.get(mention.kind):
            continue
        if elsewhere(tale, mention):
            continue
        if mention.mood or mention.kind not in RIGHT or not isinstance(mention.value, int | float):
            continue
        value = int(mention.value)
        if mention.kind in ("putt_for", "count"):
            value += _still_to_come(tale, mention)
        found.setdefault((mention.kind, value), []).append(mention)
    return found


def _countable(tale: HoleTale, mention: Mention) -> bool:
    """Whether a count can be one: before the first stroke, a number is the hole's or a club's."""
    if mention.kind != "count" or not isinstance(mention.value, int | float):
        return True
    begun = len(tale.shots) - moment(tale, mention).left
    return mention.value <= max(1, begun + MOST_UNTOLD)


def elsewhere(tale: HoleTale, mention: Mention) -> bool:
    """Whether the words just after a claim name another hole: "a double on the sixteenth"."""
    return any(
        other.kind == "about_hole" and other.value != tale.span.hole
        for other in tale.mentions
        if 0 <= other.first - mention.last <= ABOUT_WITHIN
    )


def _still_to_come(tale: HoleTale, mention: Mention) -> int:
    """Strokes after the one that a count names, by the tale."""
    when = moment(tale, mention)
    if mention.kind == "putt_for" or mention.unit == "hitting":
        return max(when.unfinished - 1, 0)
    return when.left


def _trust(tale: HoleTale, kind: str, mention: Mention) -> float:
    right = RIGHT[kind] * min(mention.weight, 1.0)
    when = moment(tale, mention)
    if when.holed:
        return right
    return right * (WALKING if when.walking else UNFINISHED).get(kind, 1.0)


def _likelihood(kind: str, value: int, right: float) -> Table:
    if kind in ("strokes", "count"):
        return at_strokes(claimed(value, right, STROKES))
    reach = range(STROKES[0] - PARS[-1], STROKES[-1] - PARS[0] + 1)
    if kind == "points":
        return at_to_par({k: _of_points(value, k, right) for k in reach}, 1e-4)
    return at_to_par(claimed(value, right, reach), 1e-4)


def _of_points(value: int, to_par: int, right: float) -> float:
    """Likelihood of points said, the handicap strokes on the hole not being known."""
    return sum(
        share
        * (
            right
            if stableford(to_par, given) == value
            else (1.0 - right) * slip(value - stableford(to_par, given))
        )
        for given, share in STROKES_GIVEN.items()
    )

"""One hole's table: the tale of strokes, the score words and numbers said, the points, on golf's prior.

Claims are noisy. A claim is right with the probability that its witness has; else it is a slip, most often by
one. The same claim twice is not two witnesses.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from reviewkit.model import HoleTale
from reviewkit.scoring.play import par_of_play
from reviewkit.scoring.points import GIVEN, Given, given_before, given_each, of_points
from reviewkit.scoring.slips import claimed
from reviewkit.scoring.table import PARS, STROKES, TO_PARS, Table, at_par, at_strokes, at_to_par, prior
from reviewkit.scoring.witnesses import Witness, witnesses

TALE_TRUST = 0.97
"""How far the count of strokes told is believed over the same count one or two off."""

TALE_OFF = {-2: 0.12, -1: 0.3, 1: 0.3, 2: 0.12}
"""Where such a count is off, how often by so many; by any other number `FAR_OFF`."""

FAR_OFF, VAGUE, FAR_OFF_VAGUE = 0.01, 0.5, 0.1
"""A tale that is sure of no count by `VAGUE` leaves more untold: "driver, fairway. I made a seven"."""
PAR_TRUST = 0.98


def blurred(counts: Mapping[int, float]) -> dict[int, float]:
    """The tale's count with room for a stroke left untold or told twice."""
    total = sum(counts.values())
    out = dict.fromkeys(STROKES, 0.0)
    untold = FAR_OFF_VAGUE if max(counts.values()) < VAGUE * total else FAR_OFF
    for count, share in counts.items():
        for strokes in STROKES:
            if strokes == min(count, STROKES[-1]):
                out[strokes] += TALE_TRUST * share / total
            else:
                off = TALE_OFF.get(count - strokes, untold if strokes > count else FAR_OFF)
                out[strokes] += (1.0 - TALE_TRUST) * off * share / total
    return out


def strokes_given(tales: Sequence[HoleTale | None]) -> list[Given]:
    """The handicap strokes on each hole, as far as the points told on the others say."""
    said = [[w for w in witnesses(tale) if w.kind == "points"] if tale else [] for tale in tales]
    if not any(said):
        return [given_before()] * len(tales)
    fits = []
    for tale, points in zip(tales, said, strict=True):
        table = _alone(tale, None) if tale and points else prior()
        fits.append([_points_fit(table, points, given) for given in GIVEN])
    return given_each(fits)


def _points_fit(table: Table, points: Sequence[Witness], given: int) -> float:
    """How probable the points told on a hole are with so many strokes given."""
    told = (_shared(_likelihood(witness, {given: 1.0}), witness.score) for witness in points)
    return math.prod(_fit(table, likely) for likely in told)


def hole_tables(tales: Sequence[HoleTale | None], given: Sequence[Given]) -> list[Table]:
    """Likelihood of (par, strokes) of each hole from what is said of it alone; greatest cell 1.

    `tales` are in order of play, None where a hole is not told; `given` are the strokes given on each. A
    claim made before a hole's first stroke may be of the hole before: it is shared between the two by how
    well it fits either.
    """
    tables = [_alone(tale, on) if tale else prior() for tale, on in zip(tales, given, strict=True)]
    for index, tale in enumerate(tales):
        for witness in _roaming(tale):
            likely = _likelihood(witness, given[index])
            fits = _fit(tables[index], likely)
            before = _fit(tables[index - 1], likely) if index and tales[index - 1] else 0.0
            here = witness.here * fits / (witness.here * fits + (1.0 - witness.here) * before)
            tables[index] = tables[index] * _shared(likely, witness.score * here)
            if before:
                tables[index - 1] = tables[index - 1] * _shared(likely, witness.score * (1.0 - here))
    return [table / table.max() for table in tables]


def over_places(table: Table, tale: HoleTale | None, given: Given) -> Table:
    """A hole's table, with room for what it tells where it begins or ends elsewhere, and for no such hole."""
    if tale is None or not (tale.others or tale.span.played < 1.0):
        return table
    unknown = 1.0 - tale.span.played
    stays = max(0.0, 1.0 - unknown - sum(share for share, _ in tale.others))
    mixed = stays * table / table.sum() + unknown * prior() / prior().sum()
    for share, other in tale.others:
        mixed = mixed + share * _alone(other, given)
    likely: Table = mixed / mixed.max()
    return likely


def _alone(tale: HoleTale, given: Given | None) -> Table:
    """What a hole's own words say; its points left out where the strokes given are not to be told of."""
    table = prior()
    if tale.par:
        table = table * at_par(_trusted_par(tale.par))
    table = table * at_par(par_of_play(tale.shots, tale.mentions))
    if tale.counts and sum(tale.counts.values()) > 0:
        table = table * at_strokes(blurred(tale.counts))
    for witness in witnesses(tale):
        if witness.here == 1.0 and (given or witness.kind != "points"):
            table = table * _shared(_likelihood(witness, given or {}), witness.score)
    scaled: Table = table / table.sum()
    return scaled


def _roaming(tale: HoleTale | None) -> list[Witness]:
    return [witness for witness in witnesses(tale) if witness.here < 1.0] if tale else []


def _fit(table: Table, likely: Table) -> float:
    """How probable a claim is on a hole as known so far."""
    return float((table * likely).sum() / table.sum())


def _shared(likely: Table, share: float) -> Table:
    """A claim's likelihood where it is of this hole with probability `share`; else it says nothing."""
    nothing = _fit(prior(), likely)
    return share * likely + (1.0 - share) * nothing


def _trusted_par(shares: Mapping[int, float]) -> dict[int, float]:
    total = sum(shares.values())
    even = (1.0 - PAR_TRUST) / len(PARS)
    return {par: PAR_TRUST * shares.get(par, 0.0) / total + even for par in PARS}


def _likelihood(witness: Witness, given: Given) -> Table:
    kind, value, right = witness.kind, witness.value, witness.right
    if kind == "strokes":
        return at_strokes(claimed(value, right, STROKES))
    if kind == "points":
        return of_points(value, right, given)
    return at_to_par(claimed(value, right, TO_PARS), 1e-4)

"""One hole's table: the tale of strokes, the score words and numbers said, the points, on golf's prior.

Claims are noisy. A claim is right with the probability that its witness has; else it is a slip, most often by
one. The same claim twice is not two witnesses.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from reviewkit.model import HoleTale
from reviewkit.scoring.counting import stableford
from reviewkit.scoring.play import par_of_play
from reviewkit.scoring.table import PARS, STROKES, Table, at_par, at_strokes, at_to_par, prior
from reviewkit.scoring.witnesses import Witness, witnesses

SLIP = {-2: 0.1, -1: 0.25, 1: 0.25, 2: 0.1, 3: 0.04, -3: 0.04}
"""How far a claim that is wrong is off; the rest is spread evenly."""

SPREAD = 0.22 / 12
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


def hole_tables(tales: Sequence[HoleTale | None]) -> list[Table]:
    """Likelihood of (par, strokes) of each hole from what is said of it alone; greatest cell 1.

    `tales` are in order of play, None where a hole is not told. A claim made before a hole's first stroke may
    be of the hole before: it is shared between the two by how well it fits either.
    """
    tables = [_alone(tale) if tale else prior() for tale in tales]
    for index, tale in enumerate(tales):
        for witness in _roaming(tale):
            likely = _likelihood(witness)
            fits = _fit(tables[index], likely)
            before = _fit(tables[index - 1], likely) if index and tales[index - 1] else 0.0
            here = witness.here * fits / (witness.here * fits + (1.0 - witness.here) * before)
            tables[index] = tables[index] * _shared(likely, witness.score * here)
            if before:
                tables[index - 1] = tables[index - 1] * _shared(likely, witness.score * (1.0 - here))
    return [table / table.max() for table in tables]


def over_places(table: Table, tale: HoleTale | None) -> Table:
    """A hole's table, with room for what it tells where it begins or ends elsewhere, and for no such hole."""
    if tale is None or not (tale.others or tale.span.played < 1.0):
        return table
    unknown = 1.0 - tale.span.played
    stays = max(0.0, 1.0 - unknown - sum(share for share, _ in tale.others))
    mixed = stays * table / table.sum() + unknown * prior() / prior().sum()
    for share, other in tale.others:
        mixed = mixed + share * _alone(other)
    likely: Table = mixed / mixed.max()
    return likely


def _alone(tale: HoleTale) -> Table:
    table = prior()
    if tale.par:
        table = table * at_par(_trusted_par(tale.par))
    table = table * at_par(par_of_play(tale.shots))
    if tale.counts and sum(tale.counts.values()) > 0:
        table = table * at_strokes(blurred(tale.counts))
    for witness in witnesses(tale):
        if witness.here == 1.0:
            table = table * _shared(_likelihood(witness), witness.score)
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


def _likelihood(witness: Witness) -> Table:
    kind, value, right = witness.kind, witness.value, witness.right
    if kind == "strokes":
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

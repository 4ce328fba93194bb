"""The whole round read at once: every hole's tale joined by what is said of the standing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from reviewkit.model import Doubt, HoleScore, HoleTale, Plan
from reviewkit.model.fact import HoleFact
from reviewkit.scoring.doubts import Reading, doubts_of
from reviewkit.scoring.evidence import hole_tables, over_places, strokes_given
from reviewkit.scoring.lattice import Grid, Standing, likeliest, marginals
from reviewkit.scoring.standing import Claim, Slot, claims, factor, of_course, of_total
from reviewkit.scoring.table import PARS, STROKES, Table, at_par, at_strokes

Best = Sequence[tuple[int, int]]
"""(par, strokes) of each hole of the likeliest round."""
_SHARPER = 1.4
"""Set on invented rounds so that about four in five are right of the scores said to be 80% likely."""
MOST_SKIPPED = 4
"""A jump in hole numbers longer than this is another order of play, not holes left untold."""


@dataclass(frozen=True, slots=True)
class Reconciled:
    """`scores` in order of play; `strokes` is each hole's score -> probability, by hole number."""

    scores: tuple[HoleScore, ...]
    doubts: tuple[Doubt, ...]
    strokes: Mapping[int, Mapping[int, float]] = field(default_factory=dict)
    pars: Mapping[int, Mapping[int, float]] = field(default_factory=dict)


def reconcile(
    tales: Sequence[HoleTale], plan: Plan, facts: Mapping[int, Sequence[HoleFact]] | None = None
) -> Reconciled:
    """One score a hole, with its probability, from all the round's evidence.

    `tales` are in order of play. The scores are those of the single likeliest round, so that the card's
    arithmetic holds; `confidence` is the probability of each hole's strokes over all rounds.
    """
    if not tales:
        return Reconciled((), ())
    slots = _slots(tales, plan)
    given = strokes_given([slot.tale for slot in slots])
    told = hole_tables([slot.tale for slot in slots], given)
    tables = [_with(table, (facts or {}).get(slot.hole, ())) for table, slot in zip(told, slots, strict=True)]
    grid = Grid(-3 * len(slots) - 1, 16 * len(slots) + 1, min(len(slots), 9) + 1)
    grid = Grid(max(grid.low, -30), min(grid.high, 110), grid.width)
    planned = max(len(plan.order), len(slots))
    said = claims(slots, planned)
    standings: list[list[Standing]] = [[] for _ in slots]
    for claim in said:
        standings[claim.slot].append(factor(claim, grid))
    for index, course in of_course(slots, [m for tale in tales for m in tale.mentions], grid):
        standings[index].append(course)
    best = likeliest(tables, standings, grid)
    home = _home(slots, best, grid)
    if home:
        standings[-1].extend(home)
        best = likeliest(tables, standings, grid)
    # The scores are those of the holes where they are taken to lie; how sure they are rests on all places.
    places = [over_places(table, slot.tale, on) for table, slot, on in zip(tables, slots, given, strict=True)]
    return _result(slots, marginals(places, standings, grid), best, said)


def _slots(tales: Sequence[HoleTale], plan: Plan) -> list[Slot]:
    """The holes in order of play, with those that the talk skipped."""
    if plan.order and [t.span.hole for t in tales] == [
        h for h in plan.order if h in {t.span.hole for t in tales}
    ]:
        by_hole = {tale.span.hole: tale for tale in tales}
        last = max(k for k, hole in enumerate(plan.order) if hole in by_hole)
        return [Slot(hole, by_hole.get(hole)) for hole in plan.order[: last + 1]]
    slots: list[Slot] = []
    for tale in tales:
        if slots and 1 < tale.span.hole - slots[-1].hole <= MOST_SKIPPED:
            known = {other.span.hole for other in tales}
            slots.extend(Slot(h, None) for h in range(slots[-1].hole + 1, tale.span.hole) if h not in known)
        slots.append(Slot(tale.span.hole, tale))
    return slots


def _with(table: Table, facts: Sequence[HoleFact]) -> Table:
    for fact in facts:
        if fact.field == "par":
            table = _settled(table, at_par({int(fact.value): 1.0}))
        elif fact.field == "strokes":
            table = _settled(table, at_strokes({int(fact.value): 1.0}))
    return table


def _settled(table: Table, mask: Table) -> Table:
    """`table` where the mask allows; evenly there when the talk had ruled all of it out."""
    kept = table * mask
    kept = kept if kept.sum() > 0 else np.ones_like(table) * mask
    settled: Table = kept / kept.max()
    return settled


def _home(slots: Sequence[Slot], best: Best, grid: Grid) -> list[Standing]:
    """Claims on the second nine, read as totals of the round on the likeliest first nine."""
    if len(slots) != 18:
        return []
    out = sum(strokes for _, strokes in best[:9])
    return [
        of_total(out + mention.value, 17, 0.75, grid)
        for slot in slots[16:]
        for mention in (slot.tale.mentions if slot.tale else ())
        if mention.kind == "nine" and mention.unit == "back" and not mention.mood
        if isinstance(mention.value, int | float) and mention.value > 20
    ]


def _calibrated(shares: Mapping[int, float], taken: int) -> dict[int, float]:
    """Probabilities of the scores as they come true: what speaks for one taken is mostly right."""
    sure = shares.get(taken, 0.0)
    if not 0.0 < sure < 1.0:
        return dict(shares)
    surer, less = sure**_SHARPER, (1.0 - sure) ** _SHARPER
    known = surer / (surer + less)
    return {s: known if s == taken else share * (1.0 - known) / (1.0 - sure) for s, share in shares.items()}


def _result(slots: Sequence[Slot], tables: Sequence[Table], best: Best, said: Sequence[Claim]) -> Reconciled:
    scores: list[HoleScore] = []
    doubts: list[Doubt] = []
    strokes_of: dict[int, dict[int, float]] = {}
    pars_of: dict[int, dict[int, float]] = {}
    running = 0
    standing = [0]
    for par, strokes in best:
        standing.append(standing[-1] + strokes - par)
    for index, (slot, table, (par, strokes)) in enumerate(zip(slots, tables, best, strict=True)):
        running += strokes - par
        if slot.tale is None:
            continue
        shares = {s: float(p) for s, p in zip(STROKES, table.sum(axis=0), strict=True) if p > 1e-4}
        by_strokes = _calibrated(shares, strokes)
        strokes_of[slot.hole] = by_strokes
        pars_of[slot.hole] = {k: float(p) for k, p in zip(PARS, table.sum(axis=1), strict=True) if p > 1e-4}
        confidence = min(by_strokes.get(strokes, 0.0), 1.0)
        here = [claim for claim in said if claim.slot == index]
        reading = Reading(
            slot.tale, par, strokes, standing[index], strokes_of[slot.hole], pars_of[slot.hole], here
        )
        of_hole = doubts_of(reading)
        doubts.extend(of_hole)
        scores.append(
            HoleScore(
                hole=slot.hole,
                play_order=slot.tale.span.play_order,
                start_s=slot.tale.span.start_s,
                end_s=slot.tale.span.end_s,
                par=par,
                strokes=strokes,
                to_par=strokes - par,
                running_to_par=running,
                confidence=round(confidence, 3),
                status="sure" if reading.sure else "check",
                doubts=tuple(doubt.text for doubt in of_hole),
            )
        )
    return Reconciled(tuple(scores), tuple(doubts), strokes_of, pars_of)

"""Working a person's corrections into a reading: a pure function over the model.

A correction is re-attached by time, words and number. The person's value always stands; where the reading
has changed under it, or its place is gone, that is told as a clash and never dropped.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from reviewkit.errors import ReviewkitError
from reviewkit.log import amend_shape
from reviewkit.log.amend_attach import find_hole
from reviewkit.log.amend_draft import Draft, Hole, Outcome
from reviewkit.log.amend_set import assign, set_columns
from reviewkit.log.amendments import hole_facts, in_force
from reviewkit.model import Amendment, Doubt, HoleFact, HoleScore, Round


@dataclass(frozen=True, slots=True)
class Clash:
    """A correction that the reading no longer agrees with. `now` is what the reading says there, or empty."""

    amendment: Amendment
    text: str
    hole: int
    at_s: float
    stroke: int | None = None
    now: str = ""

    def doubt(self) -> Doubt:
        row = self.amendment
        return Doubt(
            hole=self.hole,
            at_s=self.at_s,
            text=self.text,
            words=row.words,
            weight=1.0,
            stroke=self.stroke,
            field=row.field or "strokes",
            alternatives=(self.now,) if self.now else (),
        )


def apply(reading: Round, amendments: Sequence[Amendment]) -> tuple[Round, tuple[Clash, ...]]:
    """The reading as corrected, its doubts without those answered, and the clashes, which head the doubts."""
    draft = Draft.of(reading)
    clashes: dict[tuple[object, ...], Clash] = {}
    for row in in_force(amendments):
        key = (row.hole, row.stroke, row.field, "" if row.action in ("set", "accept") else row.id)
        clashes.pop(key, None)
        clash = _clash(row, _work_in(draft, row))
        if clash is not None:
            clashes[key] = clash
    corrected = draft.round(reading)
    told = tuple(clashes.values())
    doubts = tuple(clash.doubt() for clash in told) + _mismatches(draft) + _still_open(draft, reading)
    scores = tuple(_judged(hole, reading, doubts) for hole in draft.holes)
    return replace(corrected, scores=scores, doubts=doubts), told


def facts_for(reading: Round, amendments: Sequence[Amendment]) -> tuple[HoleFact, ...]:
    """As `amendments.hole_facts`, each with the middle of its hole in `reading` as its moment.

    A hole's start is a poor moment to find it by: it is what readings differ in, and what people correct.
    """
    middles = {score.hole: round((score.start_s + score.end_s) / 2, 3) for score in reading.scores}
    draft = Draft.of(reading)
    placed: list[Amendment] = []
    for row in in_force(amendments):
        if row.hole is not None and row.stroke is None and row.action != "split":
            hole, _ = find_hole(draft, row)
            middle = middles.get(hole.origin) if hole and hole.origin is not None else None
            placed.append(row if middle is None else replace(row, at_s=middle))
        else:
            placed.append(row)
        _work_in(draft, row)
    return hole_facts(placed)


def _work_in(draft: Draft, row: Amendment) -> Outcome:
    try:
        return WORK[row.action](draft, row)
    except (ReviewkitError, ValueError) as error:
        return Outcome(f"cannot be applied: {error}", draft.numbered(row.hole))


def _add(draft: Draft, row: Amendment) -> Outcome:
    outcome, fields = amend_shape.add(draft, row)
    if outcome.hole is not None and outcome.stroke is not None:
        for field, value in fields.items():
            assign(outcome.hole, outcome.stroke, field, value)
    return outcome


WORK: dict[str, Callable[[Draft, Amendment], Outcome]] = {
    "set": set_columns,
    "accept": set_columns,
    "add": _add,
    "delete": amend_shape.delete,
    "move": amend_shape.move,
    "split": amend_shape.split,
    "merge": amend_shape.merge,
}


def _clash(row: Amendment, outcome: Outcome) -> Clash | None:
    if not outcome.note:
        return None
    hole = outcome.hole
    at_s = row.at_s if row.at_s is not None else (hole.score.start_s if hole else 0.0)
    where = f"hole {row.hole}" + (f" stroke {row.stroke}" if row.stroke is not None else "")
    said = " ".join(word for word in (row.action, where, row.field, row.value) if word)
    return Clash(
        amendment=row,
        text=f"Correction {row.id} ({said}) {outcome.note}.",
        hole=hole.score.hole if hole else row.hole or 1,
        at_s=at_s,
        stroke=outcome.stroke.shot.stroke if outcome.stroke else None,
        now=outcome.now,
    )


def _mismatches(draft: Draft) -> tuple[Doubt, ...]:
    """Scores that a person has set to what their strokes do not add up to, unless confirmed as they stand."""
    return tuple(
        Doubt(
            hole=hole.score.hole,
            at_s=hole.score.start_s,
            text=f"The score is set to {hole.score.strokes}, the strokes add up to {hole.count()}.",
            weight=0.6,
            alternatives=(str(hole.count()),),
        )
        for hole in draft.holes
        if "strokes" in hole.pinned
        and not {"accepted", "accepted strokes"} & hole.pinned
        and hole.strokes
        and hole.score.strokes != hole.count()
    )


def _still_open(draft: Draft, reading: Round) -> tuple[Doubt, ...]:
    """The reading's unanswered doubts, numbered as their rows are now; those of rows that are gone go."""
    holes = {hole.origin: hole for hole in draft.holes}
    strokes = {stroke.origin: stroke for hole in draft.holes for stroke in hole.strokes}
    found: list[Doubt] = []
    for doubt in reading.doubts:
        home = holes.get(doubt.hole)
        if home is None or draft.settled.answers(doubt):
            continue
        counted = doubt.stroke is None and doubt.field == "strokes" and home.touched
        if counted and home.count() == home.score.strokes:
            continue
        if doubt.stroke is None:
            found.append(replace(doubt, hole=home.score.hole))
            continue
        stroke = strokes.get((doubt.hole, doubt.stroke))
        if stroke is not None:
            found.append(replace(doubt, hole=stroke.shot.hole, stroke=stroke.shot.stroke))
    return tuple(found)


def _judged(hole: Hole, reading: Round, doubts: Sequence[Doubt]) -> HoleScore:
    """The hole's row with its words of doubt, confidence and status as the corrections leave them."""
    score = hole.score
    certain = "strokes" in hole.pinned or "accepted" in hole.pinned
    here = [doubt for doubt in doubts if doubt.hole == score.hole]
    if not (hole.pinned or hole.touched or any(doubt.weight >= 1.0 for doubt in here)):
        return score
    listed = {doubt.text for doubt in reading.doubts}
    texts = tuple(dict.fromkeys(doubt.text for doubt in here))
    own = () if certain else tuple(text for text in score.doubts if text not in listed)
    left = any(doubt.stroke is None for doubt in here) or bool(own)
    confidence = 1.0 if certain else score.confidence
    sure = not left and (certain or score.status == "sure" or confidence >= 0.9)
    return replace(score, doubts=texts + own, confidence=confidence, status="sure" if sure else "check")

"""Corrections that change which holes and strokes there are: add, delete, move, split, merge, boundaries."""

from __future__ import annotations

from dataclasses import replace

from reviewkit.errors import ValueRuleError
from reviewkit.log.amend_attach import NEAR_S, find_hole, find_stroke
from reviewkit.log.amend_draft import Draft, Hole, Outcome, Stroke
from reviewkit.log.amend_fields import parse
from reviewkit.log.amendments import pairs
from reviewkit.model import Amendment, HoleScore, Shot

SAME_START_S = 10.0
"""A hole that the reading now begins this close to where a person split is the same hole."""
HEARD_S = 5.0
"""A stroke that the reading now tells this close to one that a person added is the same stroke."""


def add(draft: Draft, row: Amendment) -> tuple[Outcome, dict[str, str]]:
    """Put a stroke in, and tell which columns are still to be written.

    `was` holds how many strokes the hole had; one more of the same kind there now means that a better
    reading has heard it, and then that one is taken.
    """
    hole, note = find_hole(draft, row)
    if hole is None:
        return Outcome("has no hole to attach to"), {}
    fields = pairs(row.value)
    kind = fields.get("kind", "approach")
    at_s = row.at_s if row.at_s is not None else hole.score.start_s
    if row.was.isdecimal() and len(hole.strokes) > int(row.was):
        for stroke in hole.strokes:
            if stroke.shot.kind == kind and abs(stroke.shot.start_s - at_s) <= HEARD_S:
                draft.settled.stroke(stroke)
                return Outcome(note, hole, stroke), fields
    number = row.stroke or 40
    place = sum(stroke.shot.stroke < number for stroke in hole.strokes)
    new = Stroke(Shot(hole.score.hole, min(number, 40), at_s, at_s, kind, told=False, evidence=row.words))
    hole.strokes.insert(place, new)
    hole.touched = True
    before = hole.strokes[place - 1].shot.result if place else "tee"
    lie = before if before in ("tee", "fairway", "rough", "sand", "trees", "fringe", "green") else ""
    new.shot = replace(new.shot, lie=lie, result="holed" if fields.get("holed") == "true" else "unknown")
    hole.renumber()
    return Outcome(note, hole, new), fields


def delete(draft: Draft, row: Amendment) -> Outcome:
    """Take a stroke or a hole out. One that the reading no longer has is as wanted already."""
    hole, note = find_hole(draft, row)
    if row.stroke is None:
        if hole is None or hole.score.hole != row.hole:
            return Outcome()
        _drop(draft, hole)
        return Outcome(note)
    if hole is not None and row.was.isdecimal() and len(hole.strokes) < int(row.was):
        return Outcome()
    found = find_stroke(draft, row)
    if found is None:
        return Outcome("is about a stroke that the reading no longer has", hole)
    owner, stroke = found
    owner.strokes.remove(stroke)
    owner.touched = True
    owner.renumber()
    draft.settled.stroke(stroke)
    return Outcome("", owner)


def _drop(draft: Draft, hole: Hole) -> None:
    """Remove a hole with its strokes; the hole before it lasts until its end."""
    draft.settled.hole(hole)
    earlier = draft.before(hole)
    if earlier is not None:
        earlier.score = replace(earlier.score, end_s=hole.score.end_s)
    draft.holes.remove(hole)


def move(draft: Draft, row: Amendment) -> Outcome:
    """Put a stroke elsewhere: `value` is `HOLE.PLACE`, the place it shall have among that hole's strokes."""
    found = find_stroke(draft, row)
    if found is None:
        return Outcome("is about a stroke that the reading no longer has")
    owner, stroke = found
    number, _, place = row.value.partition(".")
    target = draft.numbered(int(number))
    if target is None:
        return Outcome(f"goes to hole {number}, which the reading no longer has", owner, stroke)
    owner.strokes.remove(stroke)
    target.strokes.insert(max(int(place or 1) - 1, 0), stroke)
    for hole in (owner, target):
        hole.touched = True
        hole.renumber()
    return Outcome("", target, stroke)


def split(draft: Draft, row: Amendment) -> Outcome:
    """Let hole `row.hole` begin at `row.at_s`, with the strokes from there to the next hole's start."""
    number, at_s = row.hole, row.at_s
    if number is None or at_s is None:
        raise ValueRuleError("a split needs a hole number and a time.")
    fields = {name: parse(name, text, of_shot=False) for name, text in pairs(row.value).items()}
    known = draft.numbered(number)
    if known is not None and abs(known.score.start_s - at_s) > SAME_START_S:
        return Outcome(f"would make a second hole {number}", known)
    if known is not None:
        if abs(known.score.start_s - at_s) > 0.001:
            set_start(draft, known, at_s)
        new = known
    else:
        new = _begin(draft, number, at_s)
    for name, value in fields.items():
        new.pin(name, value)
    return Outcome("", new)


def _begin(draft: Draft, number: int, at_s: float) -> Hole:
    earlier = [hole for hole in draft.holes if hole.score.start_s < at_s]
    later = [hole for hole in draft.holes if hole.score.start_s >= at_s]
    end = earlier[-1].score.end_s if earlier else later[0].score.start_s if later else at_s
    new = Hole(HoleScore(number, 0, at_s, max(end, at_s)), [], touched=True)
    draft.holes.insert(len(earlier), new)
    if earlier:
        owner = earlier[-1]
        owner.score = replace(owner.score, end_s=at_s)
        _give(owner, new, [stroke for stroke in owner.strokes if stroke.shot.start_s >= at_s - 0.001])
    return new


def merge(draft: Draft, row: Amendment) -> Outcome:
    """Join hole `value` to its neighbour `row.hole`, which keeps its number and par."""
    hole, note = find_hole(draft, row)
    if hole is None:
        return Outcome("has no hole to attach to")
    other = draft.numbered(int(row.value))
    if other is None or other is hole:
        return Outcome(note, hole)
    if other not in (draft.before(hole), draft.after(hole)):
        return Outcome(f"joins hole {row.value}, which no longer lies beside it", hole)
    draft.settled.hole(other)
    strokes = sorted(hole.strokes + other.strokes, key=lambda stroke: stroke.shot.start_s)
    hole.strokes, hole.touched, hole.whole = strokes, True, hole.whole or other.whole
    start, end = min(hole.score.start_s, other.score.start_s), max(hole.score.end_s, other.score.end_s)
    par = hole.score.par if hole.score.par is not None else other.score.par
    hole.score = replace(hole.score, start_s=start, end_s=end, par=par)
    draft.holes.remove(other)
    hole.renumber()
    return Outcome(note, hole)


def set_start(draft: Draft, hole: Hole, at_s: float) -> None:
    """Move a hole's beginning; strokes between old and new change holes. Raises ValueRuleError."""
    earlier = draft.before(hole)
    if at_s >= hole.score.end_s or (earlier is not None and at_s <= earlier.score.start_s):
        raise ValueRuleError(
            f"{at_s:.1f} s is not between the hole before and the end of hole {hole.score.hole}."
        )
    hole.score = replace(hole.score, start_s=at_s)
    if earlier is None:
        return
    earlier.score = replace(earlier.score, end_s=at_s)
    _give(hole, earlier, [stroke for stroke in hole.strokes if stroke.shot.start_s < at_s - NEAR_S / 10])
    _give(earlier, hole, [stroke for stroke in earlier.strokes if stroke.shot.start_s >= at_s - NEAR_S / 10])


def _give(owner: Hole, taker: Hole, strokes: list[Stroke]) -> None:
    if not strokes:
        return
    owner.strokes = [stroke for stroke in owner.strokes if stroke not in strokes]
    taker.strokes = sorted(taker.strokes + strokes, key=lambda stroke: stroke.shot.start_s)
    for hole in (owner, taker):
        hole.touched = True
        hole.renumber()


def swap_number(draft: Draft, hole: Hole, number: int) -> None:
    """Number a hole anew; a hole that has the number takes the other, so that each stands once."""
    other = draft.numbered(number)
    if other is not None and other is not hole:
        other.score = replace(other.score, hole=hole.score.hole)
        other.renumber()
    hole.score = replace(hole.score, hole=number)
    hole.renumber()

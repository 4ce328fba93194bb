"""Corrections that change or confirm columns: `set` and `accept`."""

from __future__ import annotations

from dataclasses import replace

from reviewkit.log.amend_attach import find_hole, find_stroke
from reviewkit.log.amend_draft import Draft, Hole, Outcome, Stroke, derive
from reviewkit.log.amend_fields import parse, same, text_of
from reviewkit.log.amend_shape import set_start, swap_number
from reviewkit.log.amendments import pairs
from reviewkit.model import Amendment
from reviewkit.model.values import LIES, RESULTS

GONE = "is about a stroke that the reading no longer has"
HOMELESS = "has no hole to attach to"


def set_columns(draft: Draft, row: Amendment) -> Outcome:
    """Write the values of a `set` or an `accept`; one without a field carries `name=value` pairs."""
    if row.stroke is None:
        hole, note = find_hole(draft, row)
        if hole is None:
            return Outcome(HOMELESS)
        found = [_set_hole(draft, hole, row, *column) for column in _columns(row)]
        if not row.field:
            draft.settled.hole(hole)
            hole.pinned.add("accepted")
        return next((outcome for outcome in found if outcome.note), Outcome(note, hole))
    place = find_stroke(draft, row)
    if place is None:
        return Outcome(GONE)
    hole, stroke = place
    found = [_set_stroke(draft, hole, stroke, row, *column) for column in _columns(row)]
    if not row.field:
        draft.settled.stroke(stroke)
        stroke.shot = replace(stroke.shot, confidence=1.0)
    note = "" if hole.score.hole == row.hole else f"now lies on hole {hole.score.hole}"
    return next((outcome for outcome in found if outcome.note), Outcome(note, hole, stroke))


def _columns(row: Amendment) -> list[tuple[str, str, str]]:
    """Each column with its new text and the one it replaced."""
    if row.field:
        return [(row.field, row.value, row.was)]
    was = pairs(row.was) if "=" in row.was else pairs(row.value)
    return [(name, text, was.get(name, "")) for name, text in pairs(row.value).items()]


def _set_hole(draft: Draft, hole: Hole, row: Amendment, field: str, value: str, was: str) -> Outcome:
    draft.settled.hole(hole, field)
    now = text_of(derive(hole), field)
    wanted = parse(field, value, of_shot=False)
    if field == "hole" and isinstance(wanted, int):
        swap_number(draft, hole, wanted)
        return Outcome()
    if field == "start_s" and isinstance(wanted, float):
        if abs(hole.score.start_s - wanted) > 0.001:
            set_start(draft, hole, wanted)
        return Outcome()
    hole.pin(field, wanted)
    if row.action == "accept":
        hole.pinned.add(f"accepted {field}")
    else:
        hole.pinned.discard(f"accepted {field}")
    return Outcome(_changed(field, now, value, was, of_shot=False), hole, None, now)


def _set_stroke(
    draft: Draft, hole: Hole, stroke: Stroke, row: Amendment, field: str, value: str, was: str
) -> Outcome:
    draft.settled.stroke(stroke, field)
    now = text_of(stroke.shot, field)
    assign(hole, stroke, field, value)
    return Outcome(_changed(field, now, value, was, of_shot=True), hole, stroke, now)


def assign(hole: Hole, stroke: Stroke, field: str, value: str) -> None:
    """Write one column of a stroke and what hangs together with it. Raises ValueRuleError."""
    old = stroke.shot
    wanted = parse(field, value, of_shot=True)
    changed: dict[str, object] = {field: wanted}
    if field == "result":
        changed["holed"] = value == "holed"
    elif field == "holed" and wanted:
        changed["result"] = "holed"
    elif field == "kind" and value == "putt":
        changed["club"] = ""
    elif field == "start_s" and isinstance(wanted, float):
        changed["end_s"] = max(old.end_s, wanted)
    stroke.shot = replace(old, **changed)  # type: ignore[arg-type]
    hole.touched = True
    _carry_lie(hole, stroke, old.result, old.lie)
    hole.renumber()


def _carry_lie(hole: Hole, stroke: Stroke, result: str, lie: str) -> None:
    """Where a stroke ends is where the next is played from, if the two agreed before."""
    place = hole.strokes.index(stroke)
    new = stroke.shot
    if place + 1 < len(hole.strokes) and new.result != result and new.result in LIES:
        follower = hole.strokes[place + 1]
        if follower.shot.lie in (result, "") and follower.shot.kind != "tee":
            follower.shot = replace(follower.shot, lie=new.result)
    if place and new.lie != lie and new.lie in RESULTS:
        leader = hole.strokes[place - 1]
        if leader.shot.result in (lie, "unknown"):
            leader.shot = replace(leader.shot, result=new.lie)


def _changed(field: str, now: str, value: str, was: str, of_shot: bool) -> str:
    if same(field, now, value, of_shot) or same(field, now, was, of_shot):
        return ""
    return f"replaced {was or 'an empty cell'}, and the reading now says {now or 'nothing'}"

"""From what a person points at and says to a correction that carries time and words along.

Every function takes the round as the person sees it and raises ValueRuleError for what cannot be meant.
"""

from __future__ import annotations

from collections.abc import Mapping

from reviewkit.errors import ValueRuleError
from reviewkit.log.amend_fields import correctable, parse, text_of
from reviewkit.log.amendments import Correction
from reviewkit.log.folder import cell
from reviewkit.model import HoleScore, Round, Shot
from reviewkit.timecode import clock

HOLE_FACTS = ("strokes", "par")
SHOT_FACTS = ("kind", "club", "lie", "distance_yd", "result", "miss", "contact", "penalty_strokes")


def hole_row(seen: Round, hole: int) -> HoleScore:
    for score in seen.scores:
        if score.hole == hole:
            return score
    known = ", ".join(str(score.hole) for score in seen.scores)
    raise ValueRuleError(f"hole {hole} is not in this round.", f"It has {known}.")


def shot_row(seen: Round, hole: int, stroke: int) -> Shot:
    hole_row(seen, hole)
    for shot in seen.shots:
        if shot.hole == hole and shot.stroke == stroke:
            return shot
    known = ", ".join(str(shot.stroke) for shot in seen.shots if shot.hole == hole)
    raise ValueRuleError(f"hole {hole} has no stroke {stroke}.", f"It has {known or 'none'}.")


def change(seen: Round, hole: int, stroke: int | None, field: str, text: str) -> Correction:
    """Set one column of a hole (`stroke` None) or of a stroke to what `text` means."""
    value = _written(field, text, stroke is not None)
    if stroke is None and field == "start_s":
        _check_start(seen, hole, float(value))
    return _about(seen, hole, stroke, "set", field, value, _current(seen, hole, stroke, field))


def _check_start(seen: Round, hole: int, at_s: float) -> None:
    """Raise ValueRuleError where a hole cannot begin at `at_s` because of its neighbours."""
    score = hole_row(seen, hole)
    earlier = [other for other in seen.scores if other.play_order == score.play_order - 1]
    if earlier and at_s <= earlier[0].start_s:
        raise ValueRuleError(
            f"hole {hole} cannot begin before hole {earlier[0].hole} does, at {clock(earlier[0].start_s)}.",
            f"Move the start of hole {earlier[0].hole} first.",
        )
    if at_s >= score.end_s:
        raise ValueRuleError(
            f"hole {hole} cannot begin after its end at {clock(score.end_s)}.",
            "Move the start of the next hole first.",
        )


def accept(seen: Round, hole: int, stroke: int | None, field: str = "") -> Correction:
    """Confirm one column, or without a field the whole row, as it stands."""
    if field:
        now = _current(seen, hole, stroke, field)
        return _about(seen, hole, stroke, "accept", field, now, now)
    row: HoleScore | Shot = hole_row(seen, hole) if stroke is None else shot_row(seen, hole, stroke)
    names = HOLE_FACTS if stroke is None else SHOT_FACTS
    told = " ".join(f"{name}={text_of(row, name)}" for name in names if text_of(row, name))
    return _about(seen, hole, stroke, "accept", "", told, "")


def add(seen: Round, hole: int, stroke: int, at_s: float | None, columns: Mapping[str, str]) -> Correction:
    """A stroke that the reading lacks, to take number `stroke`; without a time it lies with its neighbour."""
    score = hole_row(seen, hole)
    here = [shot for shot in seen.shots if shot.hole == hole]
    if not columns.get("kind"):
        raise ValueRuleError("a new stroke needs its kind.", "Write for example kind=putt.")
    told = " ".join(f"{name}={_written(name, text, True)}" for name, text in columns.items())
    if at_s is None:
        before = [shot for shot in here if shot.stroke < stroke]
        at_s = before[-1].end_s if before else here[0].start_s if here else score.start_s
    within = min(max(at_s, score.start_s), max(score.end_s - 0.01, score.start_s))
    return Correction("add", hole, stroke, round(within, 3), value=told, was=str(len(here)))


def delete(seen: Round, hole: int, stroke: int | None) -> Correction:
    """Take out a stroke, or a whole hole with its strokes."""
    here = [shot for shot in seen.shots if shot.hole == hole]
    return _about(seen, hole, stroke, "delete", "", "", str(len(here)) if stroke is not None else "")


def move(seen: Round, hole: int, stroke: int, to_hole: int, place: int) -> Correction:
    """Put a stroke at `place` (1 is first) among the strokes of `to_hole`."""
    hole_row(seen, to_hole)
    if place < 1:
        raise ValueRuleError(f"place {place} is not 1 or more.")
    return _about(seen, hole, stroke, "move", "", f"{to_hole}.{place}", "")


def split(seen: Round, number: int, at_s: float, columns: Mapping[str, str]) -> Correction:
    """Begin hole `number`, which the reading lacks, at a moment."""
    parse("hole", str(number), of_shot=False)
    if any(score.hole == number for score in seen.scores):
        raise ValueRuleError(f"hole {number} is already in this round.", "Move its start instead.")
    told = " ".join(f"{name}={_written(name, text, False)}" for name, text in columns.items())
    return Correction("split", number, None, at_s, "", told)


def merge(seen: Round, keep: int, absorb: int) -> Correction:
    """Join hole `absorb` to its neighbour `keep`."""
    first, second = hole_row(seen, keep), hole_row(seen, absorb)
    if abs(first.play_order - second.play_order) != 1:
        raise ValueRuleError(f"holes {keep} and {absorb} do not lie side by side.")
    return _about(seen, keep, None, "merge", "", str(absorb), "")


def undo(number: int) -> Correction:
    """Take back the correction with this id; aimed at an undo it brings the correction back."""
    return Correction("undo", value=str(number))


def _about(
    seen: Round, hole: int, stroke: int | None, action: str, field: str, value: str, was: str
) -> Correction:
    if stroke is None:
        score = hole_row(seen, hole)
        words = next((span.reason for span in seen.spans if span.hole == hole), "")
        return Correction(action, hole, None, score.start_s, field, value, was, words)
    shot = shot_row(seen, hole, stroke)
    return Correction(action, hole, stroke, shot.start_s, field, value, was, shot.evidence)


def _current(seen: Round, hole: int, stroke: int | None, field: str) -> str:
    row: HoleScore | Shot = hole_row(seen, hole) if stroke is None else shot_row(seen, hole, stroke)
    correctable(field, stroke is not None)
    return text_of(row, field)


def _written(field: str, text: str, of_shot: bool) -> str:
    """The text as amendments.csv keeps it."""
    value = parse(field, text, of_shot)
    return "" if value == "unknown" else cell(value)

"""What the page is told: the corrected round as plain data, doubts first."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reviewkit.desk.media import media_of
from reviewkit.log import RoundFolder
from reviewkit.log.amend_apply import Clash
from reviewkit.log.amend_fields import CHOICES, HOLE_FIELDS, SHOT_FIELDS, text_of
from reviewkit.log.amendments import in_force
from reviewkit.model import Amendment, Doubt, HoleScore, Round, Shot
from reviewkit.report.words import said, score_mark, score_name, to_par


def state_of(
    folder: RoundFolder, shown: Round, clashes: Sequence[Clash], made: Sequence[Amendment]
) -> dict[str, Any]:
    """The whole state; small enough (some 50 kB for 18 holes) to be sent after every edit."""
    last = shown.scores[-1] if shown.scores else None
    strokes = [score.strokes for score in shown.scores]
    known = [count for count in strokes if count is not None]
    clashing = {clash.doubt(): clash for clash in clashes}
    doubts = sorted(shown.doubts, key=lambda doubt: (-doubt.weight, doubt.at_s))
    return {
        "title": said(shown.plan.card.course) or said(folder.path.resolve().name),
        "target": shown.plan.target,
        "total": {
            "strokes": sum(known) if known and len(known) == len(strokes) else None,
            "to_par": to_par(last.running_to_par if last else None),
            "holes": len(strokes),
        },
        "holes": [_hole(score, shown) for score in shown.scores],
        "doubts": [_doubt(doubt, shown, clashing.get(doubt)) for doubt in doubts],
        "media": [source.told() for source in media_of(folder)],
        "choices": {name: list(values) for name, values in CHOICES.items()},
        "made": len(in_force(made)),
        "last": _last(made),
    }


def _hole(score: HoleScore, shown: Round) -> dict[str, Any]:
    fields = {name: text_of(score, name) for name in HOLE_FIELDS}
    return {
        **fields,
        "hole": score.hole,
        "start_s": score.start_s,
        "end_s": score.end_s,
        "to_par": to_par(score.to_par),
        "running": to_par(score.running_to_par),
        "name": score_name(score),
        "mark": score_mark(score),
        "status": score.status,
        "confidence": round(score.confidence, 2),
        "shots": [_shot(shot) for shot in shown.shots if shot.hole == score.hole],
    }


def _shot(shot: Shot) -> dict[str, Any]:
    fields = {name: text_of(shot, name) for name in SHOT_FIELDS}
    return {
        **fields,
        "stroke": shot.stroke,
        "start_s": shot.start_s,
        "end_s": shot.end_s,
        "told": shot.told,
        "words": said(shot.evidence),
    }


def _doubt(doubt: Doubt, shown: Round, clash: Clash | None) -> dict[str, Any]:
    fields = HOLE_FIELDS if doubt.stroke is None else SHOT_FIELDS
    rows: list[HoleScore | Shot] = (
        [score for score in shown.scores if score.hole == doubt.hole]
        if doubt.stroke is None
        else [shot for shot in shown.shots if (shot.hole, shot.stroke) == (doubt.hole, doubt.stroke)]
    )
    row = rows[0] if rows else None
    correctable = doubt.field in fields and row is not None and (clash is None or clash.amendment.field)
    now = text_of(row, doubt.field) if correctable and row is not None else ""
    others = [said(text) for text in doubt.alternatives if text != now] if correctable else []
    return {
        "hole": doubt.hole,
        "stroke": doubt.stroke,
        "field": doubt.field if correctable else "",
        "at_s": doubt.at_s,
        "text": said(doubt.text),
        "words": said(doubt.words),
        "now": now,
        "others": others,
        "correction": clash.amendment.id if clash else None,
    }


def _last(made: Sequence[Amendment]) -> str:
    """The newest correction that counts, as one line that the undo button names."""
    rows = in_force(made)
    if not rows:
        return ""
    row = rows[-1]
    where = f"hole {row.hole}" + (f" stroke {row.stroke}" if row.stroke is not None else "")
    return " ".join(part for part in (row.action, where, row.field, row.value) if part)

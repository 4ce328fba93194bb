"""How a reading differs from the truth, as a list of checks, each right or wrong.

A figure is the share of its checks that are right, in 0..1. Strokes of a hole are paired in order before
their columns are compared, so that one stroke missed does not make all later ones wrong.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

Row = Mapping[str, str]
Truth = Mapping[str, Any]

START_TOLERANCE_S = 3.0
FAMILY = {
    **dict.fromkeys(("approach", "layup", "recovery"), "full"),
    **dict.fromkeys(("pitch", "chip"), "short"),
    **{kind: kind for kind in ("tee", "bunker", "putt")},
}
YARDS = {"yd": 1.0, "m": 1.0936133, "ft": 1 / 3}


@dataclass(frozen=True, slots=True)
class Check:
    """One comparison. `figure` is what it counts towards; `wanted` and `got` are for a person to read."""

    figure: str
    right: bool
    hole: int
    wanted: str = ""
    got: str = ""
    about: str = ""


def load_truth(path: Path) -> Truth:
    truth: Truth = json.loads(path.read_text(encoding="utf-8"))
    return truth


def figures(checks: Iterable[Check]) -> dict[str, tuple[int, int]]:
    """Right and all, a figure."""
    table: dict[str, tuple[int, int]] = {}
    for check in checks:
        right, of = table.get(check.figure, (0, 0))
        table[check.figure] = (right + check.right, of + 1)
    return dict(sorted(table.items()))


def shares(table: Mapping[str, tuple[int, int]]) -> dict[str, float]:
    """Each figure as a share, and shot.f1 from precision and recall."""
    result = {name: right / of for name, (right, of) in table.items()}
    precision, recall = result.get("shot.precision", 0.0), result.get("shot.recall", 0.0)
    if precision and recall:
        result["shot.f1"] = 2 * precision * recall / (precision + recall)
    return result


def check_round(truth: Truth, hole_rows: Sequence[Row], shot_rows: Sequence[Row]) -> Iterator[Check]:
    """Every check of one round, the rows as holes.csv and shots.csv hold them."""
    holes = {_hole(row): row for row in hole_rows}
    real = {hole["hole"] for hole in truth["holes"]}
    for number in holes:
        yield Check("hole.not_invented", number in real, number, "no such hole", "a hole")
    for hole in truth["holes"]:
        number = hole["hole"]
        yield Check("hole.found", number in holes, number, "the hole", "nothing")
        yield from _check_score(hole, holes.get(number, {}))
        wanted = [shot for shot in truth["shots"] if shot["hole"] == number]
        yield from _check_shots(number, wanted, [row for row in shot_rows if _hole(row) == number])


def _check_score(hole: Truth, row: Row) -> Iterator[Check]:
    number = hole["hole"]
    start = _number(row.get("start_s"))
    near = start is not None and abs(start - hole["start_s"]) <= START_TOLERANCE_S
    yield Check("hole.start_3s", near, number, f"{hole['start_s']:.1f}", _text(row.get("start_s")))
    for figure, column in (("par", "par"), ("strokes", "strokes"), ("running", "running_to_par")):
        same = _number(row.get(column)) == hole[column]
        yield Check(f"hole.{figure}", same, number, str(hole[column]), _text(row.get(column)))
    right = _number(row.get("strokes")) == hole["strokes"]
    flagged = row.get("status") == "check"
    figure = "flag.right_scores_unflagged" if right else "flag.wrong_scores_flagged"
    doubts = f"{_text(row.get('confidence'))} {row.get('doubts', '')}"
    yield Check(figure, flagged is not right, number, "sure" if right else "check", doubts)


def _check_shots(number: int, wanted: Sequence[Truth], got: Sequence[Row]) -> Iterator[Check]:
    pairs = align(wanted, got)
    matched = {i for i, _ in pairs}, {j for _, j in pairs}
    for i, shot in enumerate(wanted):
        yield Check("shot.recall", i in matched[0], number, _told(shot), "-", f"stroke {i + 1}")
    for j, row in enumerate(got):
        yield Check("shot.precision", j in matched[1], number, "-", _read(row), f"row {j + 1}")
    for i, j in pairs:
        about = f"stroke {i + 1}, {_told(wanted[i])}"
        for check in _check_pair(wanted[i], got[j]):
            yield Check(check.figure, check.right, number, check.wanted, check.got, about)


def _check_pair(shot: Truth, row: Row) -> Iterator[Check]:
    """The columns of one stroke; `hole` and `about` are the caller's."""
    yield Check("shot.kind", shot["kind"] == row.get("kind"), 0, shot["kind"], _text(row.get("kind")))
    if shot["result"] != "unknown":
        result = row.get("result") or "unknown"
        yield Check("shot.result", result == shot["result"], 0, shot["result"], result)
    penalty = _number(row.get("penalty_strokes")) or 0
    yield Check("shot.penalty", penalty == shot["penalty"], 0, str(shot["penalty"]), f"{penalty:g}")
    if not shot["implied"]:
        at = _number(row.get("start_s"))
        near = at is not None and shot["at_s"] - 3 <= at <= shot["until_s"] + 3
        yield Check("shot.time_3s", near, 0, f"{shot['at_s']:.1f}", _text(row.get("start_s")))
    for column in ("club", "miss"):
        told, got = shot[column] or "", row.get(column) or ""
        if told:
            yield Check(f"shot.{column}.recall", told == got, 0, told, _text(got))
        if got:
            yield Check(f"shot.{column}.precision", told == got, 0, _text(told), got)
    yield from _check_distance(shot, row)


def _check_distance(shot: Truth, row: Row) -> Iterator[Check]:
    told = None if shot["distance"] is None else shot["distance"] * YARDS[shot["distance_unit"]]
    got = _number(row.get("distance_yd"))
    near = told is not None and got is not None and abs(got - told) <= 0.5
    wanted = "-" if told is None else f"{told:.1f}"
    if told is not None:
        yield Check("shot.distance.recall", near, 0, wanted, _text(row.get("distance_yd")))
    # A hole's length may be noted as the tee stroke's distance or not.
    if got is not None and (told is not None or shot["kind"] != "tee"):
        yield Check("shot.distance.precision", near, 0, wanted, f"{got:.1f}")


def align(wanted: Sequence[Truth], got: Sequence[Row]) -> list[tuple[int, int]]:
    """Index pairs of strokes, in order, that maximise equal kind families, then equal kinds and clubs."""
    best = [[0.0] * (len(got) + 1) for _ in range(len(wanted) + 1)]
    for i in reversed(range(len(wanted))):
        for j in reversed(range(len(got))):
            paired = _likeness(wanted[i], got[j]) + best[i + 1][j + 1]
            best[i][j] = max(best[i + 1][j], best[i][j + 1], paired)
    pairs, i, j = [], 0, 0
    while i < len(wanted) and j < len(got):
        step = _likeness(wanted[i], got[j])
        if step and best[i][j] == step + best[i + 1][j + 1]:
            pairs.append((i, j))
            i, j = i + 1, j + 1
        elif best[i][j] == best[i + 1][j]:
            i += 1
        else:
            j += 1
    return pairs


def _likeness(shot: Truth, row: Row) -> float:
    if FAMILY.get(shot["kind"]) != FAMILY.get(row.get("kind", "")):
        return 0.0
    same_club = bool(shot["club"] and shot["club"] == row.get("club"))
    same_kind = bool(shot["kind"] == row.get("kind"))
    same_result = bool(shot["result"] == row.get("result"))
    return 1 + 0.1 * same_kind + 0.1 * same_club + 0.05 * same_result


def _hole(row: Row) -> int:
    return int(_number(row.get("hole")) or -1)


def _number(text: str | None) -> float | None:
    """A cell as a number; None for an empty one."""
    return float(text) if text else None


def _text(cell: str | None) -> str:
    return cell or "-"


def _told(shot: Truth) -> str:
    """A true stroke as the scripts write it: `approach 7I 150yd -> green miss=short`."""
    distance = "" if shot["distance"] is None else f"{shot['distance']:g}{shot['distance_unit']}"
    marks = [f"miss={shot['miss']}" if shot["miss"] else "", "implied" if shot["implied"] else ""]
    marks.append(f"penalty={shot['penalty']}" if shot["penalty"] else "")
    parts = [shot["kind"], shot["club"] or "", distance, "->", shot["result"], *marks]
    return " ".join(part for part in parts if part)


def _read(row: Row) -> str:
    distance = f"{row['distance_yd']}yd" if row.get("distance_yd") else ""
    inferred = "" if row.get("told") == "true" else "inferred"
    marks = [f"miss={row['miss']}" if row.get("miss") else "", inferred]
    parts = [row.get("kind", ""), row.get("club", ""), distance, "->", row.get("result", ""), *marks]
    return " ".join(part for part in parts if part) + f"  [{row.get('evidence', '')}]"

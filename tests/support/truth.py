"""Rounds with known truth, turned into round folders that tests can read.

A truth.json holds `holes` and `shots` of an invented round. Where the evaluation rounds stand beside the
checkout all of them are used; elsewhere the small ones under fixtures/rounds.
"""

from __future__ import annotations

import json
from dataclasses import asdict
from functools import cache
from pathlib import Path
from typing import Any

from reviewkit.log import RoundFolder
from reviewkit.model import HoleScore, Plan, Round, Shot

CHECKOUT = Path(__file__).parents[2]
SHARED = CHECKOUT / ".." / "shared"
YARDS = {"yd": 1.0, "m": 1 / 0.9144, "ft": 1 / 3}
"""The international yard is 0.9144 m exactly."""
REPLAY = ("ob", "lost")
NEVER_A_LIE = ("penalty", "unplayable", "unknown", "holed")


def evaluation_rounds() -> tuple[Path, ...]:
    """truth.json of every evaluation round beside the checkout; empty where there are none."""
    return tuple(sorted((SHARED / "eval" / "dev").glob("*/truth.json")))


def fixture_rounds(folder: str = "rounds") -> tuple[Path, ...]:
    """truth.json of every round kept in this folder of the checkout's fixtures."""
    return tuple(sorted((CHECKOUT / "fixtures" / folder).glob("*/truth.json")))


def truth_files() -> tuple[Path, ...]:
    """The evaluation rounds, or the checkout's own when those are absent."""
    return evaluation_rounds() or fixture_rounds()


@cache
def load(path: Path) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return data


def save_truth(path: Path, folder: Path) -> RoundFolder:
    """Write the round folder of one truth.json at `folder` and return it."""
    reading = round_of(load(path))
    saved = RoundFolder(folder)
    saved.save(reading, {"sources": [], "plan": asdict(reading.plan), "doubts": [], "settings": {}})
    return saved


def round_of(truth: dict[str, Any]) -> Round:
    """The truth as the shared model: lies follow from results, hole figures from strokes."""
    units = truth.get("units") if truth.get("units") in ("yd", "m") else ""
    plan = Plan(order=tuple(truth["order"]), target=truth.get("target"), units=units or "")
    shots = [_shots(hole, truth) for hole in truth["holes"]]
    scores = tuple(_score(hole, played) for hole, played in zip(truth["holes"], shots, strict=True))
    return Round(scores=scores, shots=tuple(shot for played in shots for shot in played), plan=plan)


def _shots(hole: dict[str, Any], truth: dict[str, Any]) -> tuple[Shot, ...]:
    rows = [row for row in truth["shots"] if row["hole"] == hole["hole"]]
    shots: list[Shot] = []
    for row in rows:
        distance = row["distance"]
        shots.append(
            Shot(
                hole=row["hole"],
                stroke=row["stroke"],
                start_s=row["at_s"],
                end_s=row["until_s"],
                kind=row["kind"],
                club=row["club"] or "",
                lie=_lie(row["kind"], shots[-1] if shots else None),
                distance_yd=None if distance is None else distance * YARDS[row["distance_unit"]],
                result=row["result"],
                miss=row["miss"] or "",
                contact=row["contact"] or "",
                penalty_strokes=row["penalty"],
                holed=row["result"] == "holed",
                told=not row["implied"],
                evidence=_words(truth, row),
            )
        )
    return tuple(shots)


def _lie(kind: str, before: Shot | None) -> str:
    """Where the ball lay: where the stroke before left it, the same spot after stroke and distance."""
    if before is None or kind == "tee":
        return "tee"
    if before.result in REPLAY:
        return before.lie
    if before.result not in NEVER_A_LIE:
        return before.result
    return {"bunker": "sand", "putt": "green"}.get(kind, "")


def _score(hole: dict[str, Any], shots: tuple[Shot, ...]) -> HoleScore:
    reached = next((shot.stroke for shot in shots if shot.result in ("green", "holed")), None)
    first = shots[0].result if shots else "unknown"
    return HoleScore(
        hole=hole["hole"],
        play_order=hole["play_order"],
        start_s=hole["start_s"],
        end_s=hole["end_s"],
        par=hole["par"],
        strokes=hole["strokes"],
        to_par=hole["to_par"],
        running_to_par=hole["running_to_par"],
        putts=sum(shot.kind == "putt" and shot.lie == "green" for shot in shots),
        penalty_strokes=sum(shot.penalty_strokes for shot in shots),
        fairway_hit=None if hole["par"] < 4 or first == "unknown" else first == "fairway",
        green_in_regulation=None if reached is None else reached <= hole["par"] - 2,
        confidence=1.0,
        status="sure",
    )


def _words(truth: dict[str, Any], row: dict[str, Any]) -> str:
    said = (
        line["text"]
        for line in truth.get("utterances", ())
        if line["start_s"] >= row["at_s"] - 0.01 and line["end_s"] <= row["until_s"] + 0.01
    )
    return " ".join(said)

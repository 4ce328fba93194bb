"""How many actions it takes to make a misheard round right, through the requests that the page sends."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from support.truth import truth_files

from reviewkit.desk.session import Session
from reviewkit.log import RoundFolder
from reviewkit.log.amended import publish
from reviewkit.model import Plan
from reviewkit.pipeline import Options, read_round
from reviewkit.rereading import reread
from tests.eval.score import START_TOLERANCE_S, YARDS, align, load_truth

ROUNDS = ("a1", "b5", "c5")
"""One by each maker of the evaluation rounds; any other does, this keeps the test short."""
Asked = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Wrong:
    """One wrong field, and the one request that puts it right."""

    what: str
    asked: Asked


def wrongs(state: Mapping[str, Any], truth: Mapping[str, Any]) -> Iterator[Wrong]:
    """Every difference from the truth, what others hang on first. A missing or surplus row counts once."""
    seen = {hole["hole"]: hole for hole in state["holes"]}
    real = {hole["hole"]: hole for hole in truth["holes"]}
    for number in sorted(set(seen) - set(real)):
        yield Wrong(f"{number} invented", {"action": "delete", "hole": number, "stroke": None})
    for number, hole in real.items():
        if number not in seen:
            facts = {"par": str(hole["par"]), "strokes": str(hole["strokes"])}
            asked = {"action": "split", "hole": number, "at_s": hole["start_s"], "columns": facts}
            yield Wrong(f"{number} missing", asked)
    yield from _wrong_starts(seen, real)
    for number in (number for number in real if number in seen):
        want, got = real[number], seen[number]
        row = {"action": "set", "hole": number, "stroke": None}
        if got["par"] != str(want["par"]):
            yield Wrong(f"{number} par", {**row, "field": "par", "value": str(want["par"])})
    for number in real:
        wanted = [shot for shot in truth["shots"] if shot["hole"] == number]
        yield from _wrong_rows(number, wanted, seen[number]["shots"] if number in seen else [])
        score = str(real[number]["strokes"])
        if number in seen and seen[number]["strokes"] != score:
            asked = {"action": "set", "hole": number, "stroke": None, "field": "strokes", "value": score}
            yield Wrong(f"{number} strokes", asked)
        yield from _wrong_columns(number, wanted, seen[number]["shots"] if number in seen else [])


def _wrong_starts(seen: Mapping[int, Any], real: Mapping[int, Any]) -> Iterator[Wrong]:
    """Starts to move later come last hole first, so that none has to pass its neighbour."""
    late = {
        number: hole["start_s"] - seen[number]["start_s"] for number, hole in real.items() if number in seen
    }
    order = sorted(late, key=lambda number: real[number]["start_s"])
    later = [number for number in reversed(order) if late[number] > START_TOLERANCE_S]
    for number in later + [number for number in order if late[number] < -START_TOLERANCE_S]:
        asked = {"action": "set", "hole": number, "stroke": None, "field": "start_s"}
        yield Wrong(f"{number} start", {**asked, "value": str(real[number]["start_s"])})


def _wrong_rows(number: int, wanted: list[Any], got: list[Any]) -> Iterator[Wrong]:
    """Strokes that are too many and strokes that are missing; the score often follows from them."""
    paired = dict(align(wanted, got))
    for place, shot in enumerate(got):
        if place not in paired.values():
            yield Wrong(f"{number} surplus", {"action": "delete", "hole": number, "stroke": shot["stroke"]})
    for place, shot in enumerate(wanted):
        if place not in paired:
            before = [got[paired[other]] for other in range(place) if other in paired]
            stroke = before[-1]["stroke"] + 1 + int(before[-1]["penalty_strokes"] or 0) if before else 1
            asked = {"action": "add", "hole": number, "stroke": stroke, "at_s": shot["at_s"]}
            yield Wrong(f"{number} missed", {**asked, "columns": _columns(shot)})


def _wrong_columns(number: int, wanted: list[Any], got: list[Any]) -> Iterator[Wrong]:
    for i, j in align(wanted, got):
        row = got[j]
        for field, value in _columns(wanted[i]).items():
            if not _same(field, row[field], value):
                asked = {"action": "set", "hole": number, "stroke": row["stroke"], "field": field}
                yield Wrong(
                    f"{number}.{row['stroke']} {field} {row[field]}>{value}", {**asked, "value": value}
                )


def _columns(shot: Mapping[str, Any]) -> dict[str, str]:
    """What the truth says of a stroke, as texts, empty where it is not told."""
    told = {name: shot[name] or "" for name in ("kind", "club", "miss")}
    told["penalty_strokes"] = str(shot["penalty"])
    if shot["result"] != "unknown":
        told["result"] = shot["result"]
    if shot["distance"] is not None:
        told["distance_yd"] = str(round(shot["distance"] * YARDS[shot["distance_unit"]], 3))
    elif shot["kind"] != "tee":
        told["distance_yd"] = ""
    return told


def _same(field: str, got: str, want: str) -> bool:
    if field == "distance_yd" and got and want:
        return abs(float(got) - float(want)) <= 0.5
    return got == want


def read_anew(folder: RoundFolder) -> None:
    """As the desk does after every edit, without drawing the pages."""
    publish(folder, reread(folder), folder.meta)


@pytest.mark.parametrize("path", [path for path in truth_files() if path.parent.name in ROUNDS])
@pytest.mark.parametrize("level", ["asr.json"])
def test_full_truth_takes_hardly_more_actions_than_fields_are_wrong(
    path: Path, level: str, tmp_path: Path
) -> None:
    truth = load_truth(path)
    plan = Plan(order=tuple(truth["order"]), target=truth["target"])
    folder = read_round([path.parent / level], tmp_path, plan, Options())
    session = Session(folder, read_anew)
    session.start()
    first = len(list(wrongs(session.state(), truth)))
    actions: list[str] = []
    while left := list(wrongs(session.state(), truth)):
        session.act(left[0].asked)
        assert session.settle(60)
        actions.append(left[0].what)
        assert len(actions) <= 3 * first + 10, actions[-12:]
    print(f"{path.parent.name} {level}: {first} wrong fields, {len(actions)} actions")
    assert session.state()["complaint"] == ""
    assert len(actions) <= 1.2 * first

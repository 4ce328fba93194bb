"""Keeping the reading and the corrected round side by side, so that a correction can always be taken back.

reading.json is the round as the machine reads it; holes.csv, shots.csv and round.json are that reading with
the corrections of amendments.csv worked in.
"""

from __future__ import annotations

import json
from dataclasses import asdict, fields
from typing import Any

from reviewkit.errors import FolderError, ReviewkitError
from reviewkit.files import write_text
from reviewkit.log.amend_apply import apply
from reviewkit.log.amendments import load, locked
from reviewkit.log.folder import RoundFolder, read_json
from reviewkit.model import Card, CardHole, Doubt, HoleScore, HoleSpan, Plan, Round, Shot

READING_NAME = "reading.json"


def publish(folder: RoundFolder, reading: Round, meta: dict[str, Any]) -> Round:
    """Write the folder from an uncorrected reading, with every correction made so far, and return the round.

    Under the folder's lock; `meta` is round.json's content save for the doubts.
    """
    with locked(folder):
        shown, _ = apply(reading, load(folder))
        text = json.dumps(asdict(reading), ensure_ascii=False, separators=(",", ":"))
        write_text(folder.path / READING_NAME, text + "\n")
        folder.save(shown, {**meta, "doubts": [asdict(doubt) for doubt in shown.doubts]})
    return shown


def base_reading(folder: RoundFolder) -> Round:
    """The reading without corrections: reading.json, or the tables of a folder that has none."""
    path = folder.path / READING_NAME
    if not path.exists():
        return saved_round(folder)
    data = read_json(path)
    try:
        return Round(
            scores=tuple(_score(row) for row in data["scores"]),
            shots=tuple(Shot(**row) for row in data["shots"]),
            doubts=tuple(doubt_of(row) for row in data["doubts"]),
            spans=tuple(HoleSpan(**row) for row in data["spans"]),
            plan=_plan(data["plan"]),
        )
    except (KeyError, TypeError, ReviewkitError) as error:
        raise FolderError(path, f"is not a reading ({error}).", "Read the footage again.") from error


def saved_round(folder: RoundFolder) -> Round:
    """The round as its tables show it, corrections included."""
    holes = [
        _score({**row, "doubts": [text for text in (row["doubts"] or "").split("; ") if text]})
        for row in _records(folder.holes)
    ]
    words = ("club", "lie", "miss", "contact", "evidence", "kind", "result")
    shots = [Shot(**{**row, **{name: row[name] or "" for name in words}}) for row in _records(folder.shots)]
    doubts = tuple(doubt_of(row) for row in folder.meta.get("doubts", ()))
    return Round(tuple(holes), tuple(shots), doubts, plan=_plan(folder.meta.get("plan") or {}))


def doubts(folder: RoundFolder) -> tuple[Doubt, ...]:
    """What a person should check, worst first."""
    found = (doubt_of(row) for row in folder.meta.get("doubts", ()))
    return tuple(sorted(found, key=lambda doubt: (-doubt.weight, doubt.at_s)))


def doubt_of(row: dict[str, Any]) -> Doubt:
    """A doubt as round.json keeps it; names that Doubt lacks are passed over."""
    known = {item.name for item in fields(Doubt)}
    kept = {name: value for name, value in row.items() if name in known}
    return Doubt(**{**kept, "alternatives": tuple(str(text) for text in row.get("alternatives") or ())})


def _records(table: Any) -> list[dict[str, Any]]:
    """Rows of a table as plain Python values, None where a cell is empty."""
    plain = table.astype(object).where(table.notna(), None)
    return [{str(name): value for name, value in row.items()} for row in plain.to_dict("records")]


def _score(row: dict[str, Any]) -> HoleScore:
    return HoleScore(**{**row, "doubts": tuple(row["doubts"])})


def _plan(row: dict[str, Any]) -> Plan:
    card = row.get("card") or {}
    lines = tuple(CardHole(**line) for line in card.get("holes", ()))
    return Plan(
        card=Card(lines, card.get("course", "")),
        order=tuple(row.get("order") or ()),
        target=row.get("target"),
        units=row.get("units") or "",
        names=tuple(row.get("names") or ()),
        language=row.get("language") or "en",
        conditions=tuple((name, number) for name, number in row.get("conditions") or ()),
    )

"""amendments.csv: a person's corrections, which outlive every reading.

A row is never changed after it is written; an undo is a row of its own. The file is rewritten whole under
the folder's lock, so that two desks, a script and a `read` on one round lose nothing.
"""

from __future__ import annotations

import contextlib
import csv
import os
import unicodedata
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from reviewkit.errors import FolderError, ValueRuleError
from reviewkit.files import write_text
from reviewkit.log.folder import RoundFolder, table_text
from reviewkit.log.schema import AMENDMENTS
from reviewkit.model import Amendment, HoleFact

LOCK_NAME = ".lock"


@dataclass(frozen=True, slots=True)
class Correction:
    """An amendment before the folder has given it its number and time; fields as in `model.Amendment`."""

    action: str
    hole: int | None = None
    stroke: int | None = None
    at_s: float | None = None
    field: str = ""
    value: str = ""
    was: str = ""
    words: str = ""


@contextlib.contextmanager
def locked(folder: RoundFolder) -> Iterator[None]:
    """Hold the folder's lock, waiting for a program that has it; the system frees that of one that dies."""
    try:
        folder.path.mkdir(parents=True, exist_ok=True)
        handle = os.open(folder.path / LOCK_NAME, os.O_RDWR | os.O_CREAT, 0o644)
    except OSError as error:
        raise FolderError(
            folder.path, f"cannot be written ({error.strerror}).", "Choose a folder you may write to."
        ) from error
    try:
        _wait_for(handle)
        yield
    finally:
        os.close(handle)


def _wait_for(handle: int) -> None:
    try:
        import fcntl
    except ImportError:
        import msvcrt

        msvcrt.locking(handle, msvcrt.LK_LOCK, 1)  # type: ignore[attr-defined]
    else:
        fcntl.flock(handle, fcntl.LOCK_EX)


def load(folder: RoundFolder) -> tuple[Amendment, ...]:
    """All rows in the order they were made; none when there is no file. A bad row is a FolderError."""
    path = folder.amendments_csv
    if not path.exists():
        return ()
    try:
        with path.open(newline="", encoding="utf-8") as source:
            return tuple(_amendment(row) for row in csv.DictReader(source))
    except (OSError, ValueError, KeyError, TypeError, csv.Error) as error:
        raise FolderError(path, f"cannot be read ({error}).", "Mend or remove the row by hand.") from error


def append(folder: RoundFolder, corrections: Sequence[Correction]) -> tuple[Amendment, ...]:
    """Add rows, numbered on from what the file holds at that moment, and return them as written."""
    with locked(folder):
        kept = load(folder)
        number = max((row.id for row in kept), default=0)
        now = datetime.now(UTC).isoformat(timespec="seconds")
        new = tuple(_numbered(item, number + place, now) for place, item in enumerate(corrections, start=1))
        rows = ({column.name: getattr(row, column.name) for column in AMENDMENTS} for row in kept + new)
        write_text(folder.amendments_csv, table_text(AMENDMENTS, rows))
    return new


def in_force(amendments: Sequence[Amendment]) -> tuple[Amendment, ...]:
    """The rows that count: without those undone, and without the undo rows. An undone undo counts again."""
    undone: set[int] = set()
    for row in reversed(amendments):
        if row.action == "undo" and row.id not in undone and row.value.isdecimal():
            undone.add(int(row.value))
    return tuple(row for row in amendments if row.action != "undo" and row.id not in undone)


def last_in_force(amendments: Sequence[Amendment]) -> Amendment | None:
    """The newest correction that an undo without a number takes back."""
    return max(in_force(amendments), key=lambda row: row.id, default=None)


def hole_facts(amendments: Sequence[Amendment]) -> tuple[HoleFact, ...]:
    """What the reasoning must hold for certain, the person's last word on each hole and field."""
    facts: dict[tuple[int, str], HoleFact] = {}
    for row in in_force(amendments):
        if row.hole is None or row.stroke is not None or row.at_s is None:
            continue
        for hole, field, value in _facts_of(row, row.hole, row.at_s):
            if field in ("hole", "start_s"):
                facts.pop((int(value) if field == "hole" else hole, "absent"), None)
            facts[hole, field] = HoleFact(hole, row.at_s, field, value)
    return tuple(facts.values())


def _facts_of(row: Amendment, hole: int, at_s: float) -> Iterator[tuple[int, str, float]]:
    if row.action == "delete":
        yield hole, "absent", 1
    elif row.action == "merge" and row.value.isdecimal():
        yield int(row.value), "absent", 1
    elif row.action == "split":
        yield hole, "start_s", at_s
    if row.action in ("set", "accept", "split"):
        values = {row.field: row.value} if row.field else pairs(row.value)
        for name, text in values.items():
            if name in ("strokes", "par", "start_s", "hole") and text:
                yield hole, name, float(text)


def pairs(text: str) -> dict[str, str]:
    """`kind=putt distance_yd=4` as a mapping; raises ValueRuleError for a word without its `=`."""
    found: dict[str, str] = {}
    for word in text.split():
        name, equals, value = word.partition("=")
        if not equals:
            raise ValueRuleError(f"'{word}' is not of the form name=value.")
        found[name] = value
    return found


def _numbered(item: Correction, number: int, now: str) -> Amendment:
    return Amendment(
        id=number,
        made_at=now,
        action=item.action,
        hole=item.hole,
        stroke=item.stroke,
        at_s=item.at_s,
        field=plain(item.field),
        value=plain(item.value),
        was=plain(item.was),
        words=plain(item.words),
    )


def plain(text: str) -> str:
    """Text without control and bidirectional marks, which could make a row read as what it is not."""
    kept = (" " if mark in "\n\r\t" else mark for mark in text)
    return "".join(mark for mark in kept if unicodedata.category(mark) not in ("Cc", "Cf", "Cs"))


def _amendment(row: dict[str, str]) -> Amendment:
    return Amendment(
        id=int(row["id"]),
        made_at=row["made_at"],
        action=row["action"],
        hole=int(row["hole"]) if row["hole"] else None,
        stroke=int(row["stroke"]) if row["stroke"] else None,
        at_s=float(row["at_s"]) if row["at_s"] else None,
        field=row["field"],
        value=row["value"],
        was=row["was"],
        words=row["words"],
    )

"""Course cards: a TOML or CSV file with a line a hole.

TOML:  course = "Quillback Flats"          CSV:  hole,par,yards,stroke_index
       [[hole]]                                  1,4,362,7
       hole = 1                                  2,5,505,1
       par = 4
       yards = 362
       stroke_index = 7

Only `hole` must be there. `metres` may stand in for `yards`; `yardage`, `length_m`, `si` and `handicap` are
read too.
"""

from __future__ import annotations

import csv
import tomllib
from collections.abc import Iterable, Mapping
from pathlib import Path

from reviewkit.errors import CardError, ReviewkitError
from reviewkit.model import Card, CardHole
from reviewkit.model.values import YARDS_PER_METRE

NAMES = {
    **{name: name for name in ("hole", "par", "yards", "metres", "stroke_index")},
    **dict.fromkeys(("yardage", "yds", "length_yd"), "yards"),
    **dict.fromkeys(("meters", "length_m", "m"), "metres"),
    **dict.fromkeys(("si", "index", "handicap", "hcp"), "stroke_index"),
}
_REMEDY = "Columns are hole, par, yards (or metres), stroke_index."


def load_card(path: Path) -> Card:
    """The card in a .toml or .csv file. Raises CardError, which names the file and the mistake."""
    text = read_text(path)
    if path.suffix.lower() == ".toml":
        return card_of(read_toml(path, text), path)
    if path.suffix.lower() == ".csv":
        return _card(_rows(text, path), "", path)
    raise CardError(path, "is neither .toml nor .csv.", "Save the card as one of them.")


def card_of(data: Mapping[str, object], path: Path) -> Card:
    """The card in parsed TOML: `course` and the `hole` tables."""
    holes = data.get("hole", data.get("holes", []))
    if not isinstance(holes, list) or not all(isinstance(row, dict) for row in holes):
        raise CardError(path, "holes are not written as [[hole]] tables.", _REMEDY)
    unknown = set(data) - {"course", "hole", "holes"}
    if unknown:
        raise CardError(path, f"'{min(unknown)}' is not part of a card.", "Write course and [[hole]] tables.")
    return _card(holes, str(data.get("course", "")), path)


def read_text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except FileNotFoundError as error:
        raise CardError(path, "does not exist.", "Check the name.") from error
    except OSError as error:
        raise CardError(path, f"cannot be read ({error.strerror}).", "Check its permissions.") from error
    except UnicodeDecodeError as error:
        raise CardError(path, "is not UTF-8 text.", "Save it again as UTF-8.") from error


def read_toml(path: Path, text: str) -> dict[str, object]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise CardError(path, f"is not TOML ({error}).", "Correct the line it names.") from error


def _rows(text: str, path: Path) -> list[dict[str, object]]:
    first = text.partition("\n")[0]
    delimiter = max(",;\t", key=first.count)
    rows = csv.DictReader(text.splitlines(), delimiter=delimiter)
    found: list[dict[str, object]] = []
    for row in rows:
        if None in row:
            raise CardError(path, f"line {rows.line_num} has more cells than the header.", _REMEDY)
        cells: dict[str, object] = {name: (value or "").strip() for name, value in row.items()}
        if any(cells.values()):
            found.append({name: value for name, value in cells.items() if value})
    return found


def _card(rows: Iterable[Mapping[str, object]], course: str, path: Path) -> Card:
    holes = []
    for number, row in enumerate(rows, start=1):
        try:
            holes.append(_hole(row))
        except ReviewkitError as error:
            raise CardError(path, f"hole line {number}: {error.problem}", error.remedy or _REMEDY) from error
    if not holes:
        raise CardError(path, "holds no holes.", _REMEDY)
    try:
        return Card(tuple(holes), course)
    except ReviewkitError as error:
        raise CardError(path, error.problem, error.remedy) from error


def _hole(row: Mapping[str, object]) -> CardHole:
    values: dict[str, float] = {}
    for name, value in row.items():
        known = NAMES.get(name.strip().lower().replace(" ", "_"))
        if known is None:
            raise ReviewkitError(f"'{name}' is not a column of a card.", _REMEDY)
        values[known] = _number(name, value)
    if "hole" not in values:
        raise ReviewkitError("the hole's number is missing.", _REMEDY)
    yards = values.get("yards")
    if yards is None and "metres" in values:
        yards = round(values["metres"] * YARDS_PER_METRE, 1)
    return CardHole(
        _whole("hole", values["hole"]),
        _whole("par", values["par"]) if "par" in values else None,
        yards,
        _whole("stroke_index", values["stroke_index"]) if "stroke_index" in values else None,
    )


def _number(name: str, value: object) -> float:
    try:
        if isinstance(value, bool):
            raise ValueError
        return float(str(value))
    except ValueError as error:
        raise ReviewkitError(f"{name} '{value}' is not a number.", "Leave out what is not known.") from error


def _whole(name: str, value: float) -> int:
    if value != int(value):
        raise ReviewkitError(f"{name} {value} is not a whole number.", "")
    return int(value)

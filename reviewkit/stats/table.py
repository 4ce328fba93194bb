"""Figures and other rows as a table: for a terminal of 80 columns, CSV, JSON or Markdown."""

from __future__ import annotations

import csv
import io
import json
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.stats.registry import Figure

FORMATS = ("text", "csv", "json", "markdown")
WIDTH = 80
Cell = str | int | float | bool | None


@dataclass(frozen=True, slots=True)
class Table:
    """`columns` head the rows; a None cell is not known and stays empty. `note` is a line below the table."""

    title: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    note: str = ""


def figure_table(figures: Sequence[Figure], explain: bool = False) -> Table:
    """The figures for people: what, value, what it rests on; with `explain` the definition and source."""
    columns: tuple[str, ...] = ("group", "figure", "value", "rests on")
    if not explain:
        return Table("", columns, tuple((f.group, f.label, f.text, f.rests_on) for f in figures))
    rows = tuple((f.group, f.label, f.text, f.rests_on, f.definition, f.source) for f in figures)
    return Table("", (*columns, "definition", "source"), rows)


def figure_data(figures: Sequence[Figure]) -> Table:
    """The figures for programs: numbers, units, bounds, denominators."""
    names = ("name", "group", "label", "value", "unit", "of", "low", "high", "rests_on")
    rows = tuple(tuple(getattr(figure, name) for name in names) for figure in figures)
    return Table("figures", names, rows)


def render(tables: Sequence[Table], form: str) -> str:
    """The tables in one of FORMATS, ending in a line end. CSV and Markdown stand one below the other."""
    if form == "json":
        data = {
            table.title: [dict(zip(table.columns, row, strict=True)) for row in table.rows]
            for table in tables
        }
        return json.dumps(data, indent=1, ensure_ascii=False, allow_nan=False) + "\n"
    write = {"csv": as_csv, "markdown": as_markdown, "text": as_text}[form]
    return "\n".join(write(table) for table in tables)


def as_csv(table: Table) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(table.columns)
    writer.writerows([_plain(cell) for cell in row] for row in table.rows)
    return out.getvalue()


def as_markdown(table: Table) -> str:
    """A pipe table with its title as a heading; pipes in cells are escaped."""
    head = [f"### {table.title}", ""] if table.title else []
    lines = [table.columns, tuple("---" for _ in table.columns), *table.rows]
    body = ["| " + " | ".join(_plain(cell).replace("|", "\\|") for cell in line) + " |" for line in lines]
    return "\n".join([*head, *body, *(["", table.note] if table.note else [])]) + "\n"


def as_text(table: Table) -> str:
    """Columns padded to their widest cell; the widest text columns wrap so that lines keep to WIDTH.

    A first column named `group` becomes a heading above its rows.
    """
    grouped = bool(table.columns) and table.columns[0] == "group"
    skip = 1 if grouped else 0
    decimals = [_decimals([row[place] for row in table.rows]) for place in range(len(table.columns))]
    rows = [[_plain(cell, digits) for cell, digits in zip(row, decimals, strict=True)] for row in table.rows]
    columns = list(table.columns[skip:])
    widths = _widths([columns, *(row[skip:] for row in rows)])
    right = [_is_number(table, place) for place in range(skip, len(table.columns))]
    lines = [table.title] if table.title else []
    lines += _line(columns, widths, right)
    group = ""
    for row in rows:
        if grouped and row[0] != group:
            group = row[0]
            lines += ["", group]
        lines += _line(row[skip:], widths, right)
    if table.note:
        lines += textwrap.wrap(table.note, WIDTH)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _widths(rows: Sequence[Sequence[str]]) -> list[int]:
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    while sum(widths) + 2 * (len(widths) - 1) > WIDTH and max(widths) > 8:
        widths[widths.index(max(widths))] -= 1
    return widths


def _line(cells: Sequence[str], widths: Sequence[int], right: Sequence[bool]) -> list[str]:
    wrapped = [textwrap.wrap(cell, width) or [""] for cell, width in zip(cells, widths, strict=True)]
    lines = []
    for depth in range(max(map(len, wrapped))):
        parts = [part[depth] if depth < len(part) else "" for part in wrapped]
        lines.append(
            "  ".join(
                part.rjust(width) if numeric else part.ljust(width)
                for part, width, numeric in zip(parts, widths, right, strict=True)
            )
        )
    return lines


def _is_number(table: Table, place: int) -> bool:
    cells = [row[place] for row in table.rows if row[place] is not None]
    return bool(cells) and all(isinstance(cell, int | float) for cell in cells)


def _decimals(cells: Sequence[Cell]) -> int:
    """The most decimals that a column of numbers needs, so that all of it stands alike."""
    texts = (f"{cell:.6g}" for cell in cells if isinstance(cell, float))
    return max((len(text.partition(".")[2]) for text in texts if "e" not in text), default=0)


def _plain(cell: Cell, decimals: int | None = None) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "true" if cell else "false"
    if isinstance(cell, float):
        return f"{cell:.6g}" if decimals is None else f"{cell:.{decimals}f}"
    return str(cell)

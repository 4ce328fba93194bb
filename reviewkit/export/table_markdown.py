"""The score card, the strokes and the statistics as Markdown tables (the pipe tables of GitHub's dialect)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job, one_line
from reviewkit.export.tables import Table, tables_of
from reviewkit.files import write_text
from reviewkit.log.folder import cell

HEADINGS = {
    "holes": "Holes",
    "shots": "Strokes",
    "strokes_gained": "Strokes gained",
    "statistics": "Statistics",
}
# What Markdown or the HTML made from it would take for markup in a cell.
MARKUP = re.compile(r"([\\`*_{}\[\]<>#|~&!$])")


def write(job: Job, path: Path) -> Sequence[str]:
    write_text(path, "\n".join(_section(table) for table in tables_of(job)))
    return ()


def _section(table: Table) -> str:
    names = [column.name for column in table.columns]
    marks = ["---:" if column.dtype in ("Int64", "Float64") else "---" for column in table.columns]
    lines = [_line(names), _line(marks)]
    lines += [_line([escape(cell(row[name])) for name in names]) for row in table.rows]
    return f"## {HEADINGS[table.name]}\n\n" + "\n".join(lines) + "\n"


def _line(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def escape(text: str) -> str:
    """A cell on one line, markup characters with a backslash before them."""
    return MARKUP.sub(r"\\\1", one_line(text))

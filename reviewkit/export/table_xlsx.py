"""Tables as one workbook, a sheet a table: header frozen, filters on, meanings as comments on the headers.

Words heard may begin with `=`; text cells are written as text, never as formulas.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job, one_line
from reviewkit.export.tables import Table, tables_of
from reviewkit.files import whole

MOST_IN_CELL = 32_767
"""Characters a cell of this file format holds."""
WIDEST = 60


def write(job: Job, path: Path) -> Sequence[str]:
    from openpyxl import Workbook

    book = Workbook()
    book.remove(book.active)
    for table in tables_of(job):
        _fill(book.create_sheet(table.name), table)
    with whole(path) as part:
        book.save(part)
    return ()


def _fill(sheet: Any, table: Table) -> None:
    from openpyxl.comments import Comment
    from openpyxl.styles import Font
    from openpyxl.utils import get_column_letter

    for across, column in enumerate(table.columns, 1):
        head = sheet.cell(1, across, column.name)
        head.font = Font(bold=True)
        unit = f" ({column.unit})" if column.unit else ""
        head.comment = Comment(column.meaning + unit, "reviewkit")
        texts = [_set(sheet.cell(down, across), row[column.name]) for down, row in enumerate(table.rows, 2)]
        width = max((len(text) for text in texts), default=0)
        sheet.column_dimensions[get_column_letter(across)].width = min(
            max(width, len(column.name)) + 3, WIDEST
        )
    sheet.freeze_panes = "A2"
    sheet.auto_filter.ref = sheet.dimensions


def _set(cell: Any, value: Any) -> str:
    if isinstance(value, str):
        cell.value = one_line(value)[:MOST_IN_CELL]
        cell.data_type = "s"
    else:
        cell.value = value
    return "" if cell.value is None else str(cell.value)

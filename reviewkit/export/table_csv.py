"""Tables as CSV files, a file a table: UTF-8, comma, header row, empty cell where not known."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.tables import tables_of
from reviewkit.files import write_text
from reviewkit.log.folder import table_text


def write(job: Job, path: Path) -> Sequence[str]:
    for table in tables_of(job):
        write_text(path / f"{table.name}.csv", table_text(table.columns, table.rows))
    return ()

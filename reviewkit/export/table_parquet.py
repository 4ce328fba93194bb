"""Tables as Parquet files, a file a table; each column carries its meaning and unit as metadata."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.tables import Table, tables_of
from reviewkit.files import whole
from reviewkit.log.schema import SCHEMA_VERSION, Column


def write(job: Job, path: Path) -> Sequence[str]:
    import pyarrow.parquet as pq

    for table in tables_of(job):
        with whole(path / f"{table.name}.parquet") as part:
            pq.write_table(_arrow(table), part)
    return ()


def _arrow(table: Table) -> object:
    import pyarrow as pa

    kinds = {"Int64": pa.int64(), "Float64": pa.float64(), "boolean": pa.bool_(), "string": pa.string()}
    fields = [pa.field(item.name, kinds[item.dtype], metadata=_words(item)) for item in table.columns]
    about = {"reviewkit_schema": str(SCHEMA_VERSION)}
    return pa.Table.from_pylist(table.rows, schema=pa.schema(fields, metadata=about))


def _words(column: Column) -> dict[str, str]:
    return {"meaning": column.meaning, "unit": column.unit}

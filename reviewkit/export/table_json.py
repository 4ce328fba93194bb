"""Tables as one JSON document, and beside it the JSON Schema (2020-12) that describes it.

The schema is made from the same column tables as the round folder; a value that is not known is null.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job
from reviewkit.export.tables import GAINED, STATISTICS, tables_of
from reviewkit.files import write_text
from reviewkit.log.schema import HOLES, SCHEMA_VERSION, SHOTS, Column

KINDS = {"Int64": "integer", "Float64": "number", "boolean": "boolean", "string": "string"}


def write(job: Job, path: Path) -> Sequence[str]:
    beside = path.with_suffix(".schema.json")
    document: dict[str, Any] = {"$schema": beside.name, "schema": SCHEMA_VERSION}
    document |= {table.name: table.rows for table in tables_of(job)}
    write_text(beside, json.dumps(schema(), indent=1, ensure_ascii=False) + "\n")
    write_text(path, json.dumps(document, indent=1, ensure_ascii=False, allow_nan=False) + "\n")
    return ()


def schema() -> dict[str, Any]:
    """The JSON Schema of the document."""
    tables = {"holes": HOLES, "shots": SHOTS, "strokes_gained": GAINED, "statistics": STATISTICS}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A round's log and statistics",
        "type": "object",
        "required": ["schema", *tables],
        "properties": {
            "$schema": {"type": "string"},
            "schema": {"const": SCHEMA_VERSION},
            **{name: {"type": "array", "items": _row(columns)} for name, columns in tables.items()},
        },
        "additionalProperties": False,
    }


def _row(columns: Sequence[Column]) -> dict[str, Any]:
    return {
        "type": "object",
        "required": [column.name for column in columns],
        "properties": {column.name: _cell(column) for column in columns},
        "additionalProperties": False,
    }


def _cell(column: Column) -> dict[str, Any]:
    about = column.meaning + (f" ({column.unit})" if column.unit else "")
    if column.values:
        return {"description": about, "enum": [*column.values, None]}
    return {"description": about, "type": [KINDS[column.dtype], "null"]}

"""The two pages of docs that follow from code: the data dictionary and the table of formats.

`python -m reviewkit.export.dictionary docs` writes them anew; a test fails while they are not current.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.marker_csv import COLUMNS
from reviewkit.export.registry import FORMATS
from reviewkit.export.tables import GAINED, STATISTICS
from reviewkit.files import write_text
from reviewkit.log.schema import AMENDMENTS, HOLES, SCHEMA_VERSION, SHOTS, Column

PAGES = {"Int64": "whole number", "Float64": "number", "boolean": "true or false", "string": "text"}
BEGIN, END = "<!-- formats: begin -->", "<!-- formats: end -->"
TABLES: tuple[tuple[str, str, Sequence[Column]], ...] = (
    ("holes", "A row a hole, in order of play: `holes.csv` of the round folder.", HOLES),
    ("shots", "A row a stroke, in order: `shots.csv` of the round folder.", SHOTS),
    ("amendments", "A person's corrections: `amendments.csv` of the round folder.", AMENDMENTS),
    ("strokes_gained", "A row a stroke, in the exported tables.", GAINED),
    ("statistics", "A row a figure, in the exported tables.", STATISTICS),
    ("markers", "A row a hole or stroke: `markers.csv` of `--as markers`.", COLUMNS),
)


def data_dictionary() -> str:
    """docs/data-dictionary.md, whole."""
    head = (
        "# Data dictionary\n\n"
        f"Schema version {SCHEMA_VERSION}. Made from the column tables in the code by "
        "`python -m reviewkit.export.dictionary docs`; do not edit by hand.\n\n"
        "An empty cell (null in JSON and Parquet) means not known. Times are seconds of the round.\n"
    )
    return head + "".join(_table(*table) for table in TABLES)


def formats_table() -> str:
    """The table of docs/formats.md, a line a format."""
    lines = ["| format | file | what it is |", "| --- | --- | --- |"]
    for item in FORMATS:
        needs = {"footage": " Needs the footage.", "words": " Needs the transcript."}.get(item.needs, "")
        slow = " Encodes video; not part of `all`." if item.slow else ""
        lines.append(f"| `{item.name}` | `{item.file}` | {item.line}{needs}{slow} |")
    return "\n".join(lines) + "\n"


def with_table(page: str) -> str:
    """A page with the table between its two marks made anew. Raises ValueError without the marks."""
    before, rest = page.split(BEGIN)
    _, after = rest.split(END)
    return f"{before}{BEGIN}\n{formats_table()}{END}{after}"


def _table(name: str, about: str, columns: Sequence[Column]) -> str:
    lines = ["| column | type | unit | meaning |", "| --- | --- | --- | --- |"]
    for column in columns:
        values = f" One of: {', '.join(column.values)}." if column.values else ""
        kind = PAGES[column.dtype]
        lines.append(f"| `{column.name}` | {kind} | {column.unit} | {column.meaning}.{values} |")
    return f"\n## {name}\n\n{about}\n\n" + "\n".join(lines) + "\n"


def main(docs: Path) -> None:
    """Write both pages in the folder `docs`."""
    write_text(docs / "data-dictionary.md", data_dictionary())
    formats = docs / "formats.md"
    write_text(formats, with_table(formats.read_text(encoding="utf-8")))


if __name__ == "__main__":
    main(Path(sys.argv[1]))

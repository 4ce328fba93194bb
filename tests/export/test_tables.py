"""Tables read back by other people's readers: the csv module, pyarrow, jsonschema, openpyxl, markdown-it."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any

import jsonschema
import openpyxl
import pyarrow.parquet as pq
import pytest
from hypothesis import given, settings
from markdown_it import MarkdownIt
from support.hostile import small_round, titles
from support.truth import save_truth, truth_files

from reviewkit.export import Job, find, write
from reviewkit.export.base import one_line
from reviewkit.export.tables import Table, tables_of
from reviewkit.log.folder import cell

NAMES = ["holes", "shots", "strokes_gained", "statistics"]


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("tables")


@pytest.fixture(params=truth_files()[:3], ids=lambda p: p.parent.name)
def job(request: pytest.FixtureRequest, tmp_path: Path) -> Job:
    return Job(save_truth(request.param, tmp_path / "round"))


def expected(job: Job) -> dict[str, Table]:
    return {table.name: table for table in tables_of(job)}


def test_tables_hold_the_log_and_the_figures(job: Job) -> None:
    tables = expected(job)
    assert list(tables) == NAMES
    assert len(tables["holes"].rows) == len(job.folder.holes)
    assert [row["evidence"] for row in tables["shots"].rows] == job.folder.shots["evidence"].tolist()
    total = next(row for row in tables["statistics"].rows if row["name"] == "score")
    assert total["value"] == job.folder.holes["strokes"].sum()
    # The identity of strokes gained: a hole's strokes are charged once each (shared facts, Broadie 2012).
    assert len(tables["strokes_gained"].rows) <= total["value"]


def test_csv_and_parquet_hold_the_same(job: Job, tmp_path: Path) -> None:
    write(find("csv"), job, tmp_path / "csv")
    write(find("parquet"), job, tmp_path / "parquet")
    for name, table in expected(job).items():
        with (tmp_path / "csv" / f"{name}.csv").open(encoding="utf-8", newline="") as source:
            rows = list(csv.DictReader(source))
        assert rows == [{key: cell(value) for key, value in row.items()} for row in table.rows]
        arrow = pq.read_table(tmp_path / "parquet" / f"{name}.parquet")
        assert arrow.to_pylist() == table.rows
        assert all(field.metadata[b"meaning"] for field in arrow.schema)


def test_json_fits_its_schema_and_the_schema_bites(job: Job, tmp_path: Path) -> None:
    write(find("json"), job, tmp_path / "tables.json")
    data = json.loads((tmp_path / "tables.json").read_text(encoding="utf-8"))
    schema = json.loads((tmp_path / data["$schema"]).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(data, schema)
    assert {name: data[name] for name in NAMES} == {k: v.rows for k, v in expected(job).items()}
    for table, column, wrong in (
        ("holes", "par", "four"),
        ("shots", "kind", "drive"),
        ("shots", "told", None),
    ):
        broken: dict[str, Any] = json.loads(json.dumps(data))
        broken[table][0][column] = wrong
        if wrong is None:
            del broken[table][0][column]
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(broken, schema)


@settings(max_examples=6)
@given(text=titles)
def test_workbook_holds_hostile_words_as_text(scratch: Path, text: str) -> None:
    job = Job(small_round(scratch / "round", evidence=text))
    write(find("xlsx"), job, scratch / "tables.xlsx")
    book = openpyxl.load_workbook(scratch / "tables.xlsx")
    assert book.sheetnames == NAMES
    for name, table in expected(job).items():
        head, *rows = list(book[name].iter_rows())
        assert [item.value for item in head] == [column.name for column in table.columns]
        wanted = [[_as_sheet(value) for value in row.values()] for row in table.rows]
        assert [[item.value for item in row] for row in rows] == wanted
        assert all(item.data_type != "f" for row in rows for item in row)


def _as_sheet(value: object) -> object:
    return one_line(value) or None if isinstance(value, str) else value


@settings(max_examples=6)
@given(text=titles)
def test_markdown_holds_hostile_words_as_text(scratch: Path, text: str) -> None:
    """Read by markdown-it-py with its table rule: one text a cell, no markup, no extra columns."""
    job = Job(small_round(scratch / "md", evidence=text))
    write(find("markdown"), job, scratch / "tables.md")
    tokens = (
        MarkdownIt("commonmark").enable("table").parse((scratch / "tables.md").read_text(encoding="utf-8"))
    )
    kinds = [token.type for token in tokens]
    assert kinds.count("table_open") == len(NAMES) == kinds.count("heading_open")
    cells = [tokens[n + 1] for n, kind in enumerate(kinds) if kind == "td_open"]
    assert all(child.type in ("text", "text_special") for item in cells for child in item.children or ())
    found = ["".join(child.content for child in item.children or ()) for item in cells]
    wanted = [one_line(cell(v)) for t in expected(job).values() for row in t.rows for v in row.values()]
    assert found == wanted

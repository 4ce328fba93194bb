"""One round folder on disk."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterable, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reviewkit.errors import FolderError
from reviewkit.files import write_text
from reviewkit.log.schema import HOLES, SCHEMA_VERSION, SHOTS, Column
from reviewkit.model import HoleScore, Round, Shot

if TYPE_CHECKING:
    import pandas as pd


class RoundFolder:
    """Paths and tables of one round folder. Tables are read on first use and kept."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.holes_csv = path / "holes.csv"
        self.shots_csv = path / "shots.csv"
        self.transcript_json = path / "transcript.json"
        self.round_json = path / "round.json"
        self.amendments_csv = path / "amendments.csv"
        self.report_html = path / "report.html"
        self.chapters = path / "chapters"

    @cached_property
    def holes(self) -> pd.DataFrame:
        """holes.csv, a row a hole in order of play, dtypes as `log.schema.HOLES` says."""
        return read_table(self.holes_csv, HOLES)

    @cached_property
    def shots(self) -> pd.DataFrame:
        """shots.csv, a row a stroke in order of play, dtypes as `log.schema.SHOTS` says."""
        return read_table(self.shots_csv, SHOTS)

    @cached_property
    def meta(self) -> dict[str, Any]:
        """round.json as data: schema, sources, plan, doubts, settings, versions."""
        return read_json(self.round_json)

    def save(self, reading: Round, meta: dict[str, Any]) -> None:
        """Write holes.csv, shots.csv and round.json, each whole. `meta` is joined by the schema version.

        round.json goes last: a folder with it is complete.
        """
        write_text(self.holes_csv, table_text(HOLES, (_hole_row(score) for score in reading.scores)))
        write_text(self.shots_csv, table_text(SHOTS, (_shot_row(shot) for shot in reading.shots)))
        text = json.dumps({"schema": SCHEMA_VERSION, **meta}, indent=1, ensure_ascii=False)
        write_text(self.round_json, text + "\n")
        for name in ("holes", "shots", "meta"):
            self.__dict__.pop(name, None)


def open_round(path: str | Path) -> RoundFolder:
    """The round folder at `path`. Raises FolderError when it is not one, or of another schema version."""
    folder = RoundFolder(Path(path))
    if not folder.round_json.is_file():
        raise FolderError(
            folder.path, "is not a round folder.", "Make one with: reviewkit read FOOTAGE --out FOLDER"
        )
    version = folder.meta.get("schema")
    if version != SCHEMA_VERSION:
        raise FolderError(
            folder.path,
            f"has schema {version}, this version reads {SCHEMA_VERSION}.",
            "Read the footage again.",
        )
    return folder


def read_table(path: Path, columns: Sequence[Column]) -> pd.DataFrame:
    """A CSV of the folder with documented dtypes; a missing column or bad cell is a FolderError."""
    import pandas as pd

    dtypes: Any = {column.name: column.dtype for column in columns}
    try:
        table = pd.read_csv(path, dtype=dtypes, keep_default_na=False, na_values=[""], encoding="utf-8")
        return table[list(dtypes)]
    except FileNotFoundError as error:
        raise FolderError(path, "is missing.", "Read the round again with: reviewkit read") from error
    except (KeyError, ValueError, TypeError) as error:
        raise FolderError(
            path, f"does not fit the documented columns ({error}).", "Read the round again."
        ) from error


def read_json(path: Path) -> dict[str, Any]:
    """A JSON object of the folder, or FolderError."""
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError) as error:
        raise FolderError(
            path, f"cannot be read ({error}).", "Read the round again with: reviewkit read"
        ) from error
    if not isinstance(data, dict):
        raise FolderError(path, "is not a JSON object.", "Read the round again with: reviewkit read")
    return data


def table_text(columns: Sequence[Column], rows: Iterable[dict[str, object]]) -> str:
    """CSV text with a header row; None is an empty cell, booleans are true and false."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([column.name for column in columns])
    for row in rows:
        writer.writerow([cell(row[column.name]) for column in columns])
    return out.getvalue()


def cell(value: object) -> str:
    """One value as the folder writes it: seconds and shares to milli, yards without idle zeros."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return f"{value:.3f}".rstrip("0").rstrip(".") if "." in f"{value:.3f}" else f"{value:.3f}"
    # The csv module leaves a lone carriage return unquoted, and readers take it for the end of the row.
    return str(value).replace("\r\n", "\n").replace("\r", "\n")


def _hole_row(score: HoleScore) -> dict[str, object]:
    row: dict[str, object] = {column.name: getattr(score, column.name) for column in HOLES}
    row["doubts"] = "; ".join(score.doubts)
    return row


def _shot_row(shot: Shot) -> dict[str, object]:
    return {column.name: getattr(shot, column.name) for column in SHOTS}

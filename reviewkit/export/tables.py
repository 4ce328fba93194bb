"""The round as tables: holes, shots, what each stroke gained, and the statistics."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING, Any

from reviewkit.export.base import Job, records
from reviewkit.log.schema import HOLES, SHOTS, Column

if TYPE_CHECKING:
    import pandas as pd

GAINED = (
    Column("hole", "Int64", "number on the course card"),
    Column("stroke", "Int64", "number of the stroke on the hole"),
    Column("category", "string", "part of the game"),
    Column("mean", "Float64", "strokes gained against the benchmark", "strokes"),
    Column("low", "Float64", "lower end of the 80 % interval", "strokes"),
    Column("high", "Float64", "upper end of the 80 % interval", "strokes"),
    Column("exact", "boolean", "distance and lie before and after it are told"),
)
STATISTICS = (
    Column("group", "string", "part of the game"),
    Column("name", "string", "name of the statistic"),
    Column("part", "string", "row of a statistic that has several"),
    Column("label", "string", "name as people read it"),
    Column("value", "Float64", "value; empty when nothing told allows it"),
    Column("unit", "string", "unit of the value; a share runs from 0 to 1"),
    Column("of", "Int64", "denominator of a share or mean"),
    Column("low", "Float64", "lower end of the 80 % interval of an uncertain value"),
    Column("high", "Float64", "upper end of the 80 % interval of an uncertain value"),
    Column("rests_on", "string", "what was not told and so left out; empty when everything was"),
    Column("definition", "string", "what is counted"),
    Column("source", "string", "where the definition comes from"),
)
DIGITS = 6
"""Decimals of computed figures: more than any of them deserves, fewer than differ between programs."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table with its documented columns; `rows` hold plain values, None where not known."""

    name: str
    columns: tuple[Column, ...]
    rows: list[dict[str, Any]]

    def frame(self) -> pd.DataFrame:
        """The same as pandas dtypes of the columns."""
        import pandas as pd

        dtypes: Any = {column.name: column.dtype for column in self.columns}
        return pd.DataFrame(self.rows, columns=list(dtypes)).astype(dtypes)


def tables_of(job: Job) -> list[Table]:
    """All tables of a round. Loads the statistics, and with them numpy and pandas."""
    from reviewkit.stats import figures, strokes_gained

    gained = [asdict(item) for item in strokes_gained(job.folder).strokes]
    counted = [asdict(item) for item in figures(job.folder)]
    return [
        Table("holes", HOLES, records(job.folder.holes)),
        Table("shots", SHOTS, records(job.folder.shots)),
        Table("strokes_gained", GAINED, _plain(gained, GAINED)),
        Table("statistics", STATISTICS, _plain(counted, STATISTICS)),
    ]


def _plain(rows: list[dict[str, Any]], columns: tuple[Column, ...]) -> list[dict[str, Any]]:
    """Only the documented columns; empty text is not known, as in the round folder."""
    return [{column.name: _known(row[column.name]) for column in columns} for row in rows]


def _known(value: Any) -> Any:
    value = value.item() if hasattr(value, "item") else value
    if isinstance(value, float):
        return round(value, DIGITS)
    return None if value == "" else value

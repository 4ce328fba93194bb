"""The published benchmark: expected strokes to hole out by lie and distance.

Source: M. Broadie, Interfaces 42(2) 2012 and Every Shot Counts 2014, PGA TOUR 2003-2010; written down from
memory and marked so in tables/strokes_gained_benchmark.csv. Linear between rows; its dips (tee 120 to 140 yd,
sand and recovery about 100 yd) are in the published table and stay. Beyond either end the last row counts.
"""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files

import numpy as np
import numpy.typing as npt

from reviewkit.model.values import FEET_PER_YARD

Array = npt.NDArray[np.float64]
SOURCE = "M. Broadie 2012 and 2014, PGA TOUR 2003-2010; the table's values are from memory"
ROWS = {
    "tee": "tee",
    "fairway": "fairway",
    "rough": "rough",
    "sand": "sand",
    "trees": "recovery",
    "fringe": "fairway",
    "green": "green",
}
"""The benchmark's row for each lie of the log; it has none for the fringe, which plays like fairway."""


def table_rows(name: str) -> list[dict[str, str]]:
    """The rows of a table that ships with the package."""
    text = files("reviewkit").joinpath("tables", name).read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))


@cache
def _curves() -> dict[str, tuple[Array, Array]]:
    """Yards and expected strokes by the benchmark's own lies, putting in yards too."""
    points: dict[str, dict[float, float]] = {}
    for row in table_rows("strokes_gained_benchmark.csv"):
        # Rows that are not from the main table relay single points of it; they serve as cross-checks.
        if row["from_memory"] == "yes":
            yards = float(row["distance"]) / (FEET_PER_YARD if row["unit"] == "ft" else 1.0)
            points.setdefault(row["lie"], {})[yards] = float(row["expected_strokes"])
    return {
        lie: (np.array(sorted(curve)), np.array([curve[yards] for yards in sorted(curve)]))
        for lie, curve in points.items()
    }


def expected(lie: str, yards: Array | float) -> Array:
    """Expected strokes to hole out from `yards`, on one of the log's lies."""
    distances, strokes = _curves()[ROWS[lie]]
    return np.asarray(np.interp(yards, distances, strokes), dtype=np.float64)

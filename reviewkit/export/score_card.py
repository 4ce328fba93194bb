"""The score card as a drawing: holes in order of play, nine a row, with the sum of each row.

A score under par stands in a round frame, one over par in a square one, two or more strokes away in a
filled one; colours are apart for colour-blind eyes too. A score still to be checked carries a `?`.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from reviewkit.errors import FolderError
from reviewkit.export.base import Job, one_line, records, shorten
from reviewkit.export.drawing import Box, Shape, Text
from reviewkit.export.titles import UNKNOWN, relative

A_ROW = 9
CELL, LABEL, SUM, MARGIN, HEAD, ROW, BETWEEN = 84, 130, 110, 36, 110, 210, 24
PAPER, INK, QUIET, RULE = "#fbfaf5", "#1d2b26", "#5c6b64", "#d9d6c8"
UNDER, OVER = "#0b6aa8", "#c2560c"


def drawing(job: Job) -> tuple[list[Shape], int, int, str]:
    """Shapes, width, height and title. Raises FolderError for a round without holes."""
    rows = records(job.folder.holes)
    if not rows:
        raise FolderError(job.folder.path, "has no holes.", "Read the footage again with: reviewkit read")
    nines = [rows[start : start + A_ROW] for start in range(0, len(rows), A_ROW)]
    across = max(len(nine) for nine in nines)
    wide = 2 * MARGIN + LABEL + across * CELL + SUM
    high = HEAD + ROW * len(nines) - BETWEEN + MARGIN
    title = _title(job)
    shapes: list[Shape] = [Box(0, 0, wide, high, PAPER)]
    shapes.append(Text(MARGIN, HEAD / 2, shorten(title, 60), 34, INK, "start", True))
    shapes.append(Text(wide - MARGIN, HEAD / 2, _total(rows), 34, INK, "end", True))
    for number, nine in enumerate(nines):
        shapes += _nine(nine, HEAD + ROW * number, across)
    return shapes, wide, high, f"{title}: {_total(rows)}"


def _title(job: Job) -> str:
    course = str(((job.folder.meta.get("plan") or {}).get("card") or {}).get("course") or "")
    name = one_line(job.folder.path.resolve().name)
    return one_line(course) or name[:1].upper() + name[1:] or "Round"


def _nine(rows: Sequence[dict[str, Any]], top: float, across: int) -> list[Shape]:
    lines = (("Hole", top + 30), ("Par", top + 82), ("Score", top + 144))
    shapes: list[Shape] = [
        Box(MARGIN, top, LABEL + across * CELL + SUM, ROW - BETWEEN, "#ffffff", RULE, 10, 2),
        *(Text(MARGIN + 22, y, word, 24, QUIET, "start") for word, y in lines),
    ]
    for place, row in enumerate(rows):
        x = MARGIN + LABEL + CELL * (place + 0.5)
        shapes.append(Text(x, lines[0][1], str(row["hole"]), 26, QUIET, bold=True))
        shapes.append(Text(x, lines[1][1], _known(row["par"]), 26, INK))
        shapes += _score(row, x, lines[2][1])
    x = MARGIN + LABEL + across * CELL + SUM / 2
    shapes.append(Text(x, lines[0][1], "Sum", 24, QUIET, bold=True))
    shapes.append(Text(x, lines[1][1], _sum(rows, "par"), 26, INK))
    shapes.append(Text(x, lines[2][1], _sum(rows, "strokes"), 32, INK, bold=True))
    return shapes


def _score(row: dict[str, Any], x: float, y: float) -> list[Shape]:
    away = row["to_par"] if row["strokes"] is not None else None
    text = _known(row["strokes"])
    if row["strokes"] is not None and row["status"] != "sure":
        text += "?"
    if not away:
        return [Text(x, y, text, 32, INK, bold=True)]
    colour, radius = (UNDER, 27.0) if away < 0 else (OVER, 6.0)
    filled = abs(away) >= 2
    frame = Box(x - 32, y - 27, 64, 54, colour if filled else "", colour, radius, 3)
    return [frame, Text(x, y, text, 32, "#ffffff" if filled else colour, bold=True)]


def _known(value: int | None) -> str:
    return UNKNOWN if value is None else str(value)


def _sum(rows: Sequence[dict[str, Any]], column: str) -> str:
    values = [row[column] for row in rows]
    return UNKNOWN if None in values else str(sum(values))


def _total(rows: Sequence[dict[str, Any]]) -> str:
    """`84 (+12)`, with a `?` while a score is unsure, or how many scores are known."""
    known = [row for row in rows if row["strokes"] is not None]
    if len(known) < len(rows):
        return f"{len(known)} of {len(rows)} scores known"
    doubt = "" if all(row["status"] == "sure" for row in rows) else "?"
    strokes = sum(row["strokes"] for row in rows)
    if any(row["to_par"] is None for row in rows):
        return f"{strokes}{doubt}"
    return f"{strokes} ({relative(sum(row['to_par'] for row in rows))}){doubt}"

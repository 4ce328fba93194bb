"""What an editor gets: the footage cut at the holes, and a marker a hole and a stroke."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job, one_line, records
from reviewkit.export.chapters import Chapter, chapters_of, length_of
from reviewkit.export.frames import Rate, rate_of

HOLE, STROKE, CHECK = "GREEN", "CYAN", "RED"
"""Colours by name, as editors' lists know them; red is for what a person should still check."""
UNSURE = 0.5


@dataclass(frozen=True, slots=True)
class Marker:
    """One marker: seconds on the round's timeline, a name on one line, and the words it rests on."""

    start_s: float
    end_s: float
    kind: str
    hole: int
    stroke: int | None
    name: str
    colour: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of one file: frames on the round's timeline and in the file, and the chapter it shows."""

    chapter: Chapter
    path: Path | None
    source: int
    first: int
    last: int
    source_first: int
    """`last` is the frame after the piece; `source_first` counts the file's time code when it has one."""


def markers_of(job: Job) -> list[Marker]:
    """Markers of holes and strokes in time order, the hole's before its strokes'."""
    chapters = {item.hole: item for item in chapters_of(job) if item.hole is not None}
    found = []
    for row in records(job.folder.holes):
        # A hole too short for a chapter of its own is named by the one that it joined.
        if chapter := chapters.get(row["hole"]):
            colour = HOLE if row["status"] == "sure" else CHECK
            found.append(
                Marker(
                    chapter.start_s,
                    chapter.end_s,
                    "hole",
                    row["hole"],
                    None,
                    chapter.title,
                    colour,
                    row["doubts"] or "",
                )
            )
    found += [_stroke(row) for row in records(job.folder.shots) if row["start_s"] is not None]
    return sorted(found, key=lambda item: (item.start_s, item.stroke or 0))


def _stroke(row: dict[str, Any]) -> Marker:
    words = [row["kind"], row["club"], f"{row['distance_yd']:.0f} yd" if row["distance_yd"] else None]
    name = f"{row['hole']}.{row['stroke']} " + " ".join(filter(None, words))
    end = row["start_s"] if row["end_s"] is None else row["end_s"]
    colour = STROKE if (row["confidence"] or 0) >= UNSURE else CHECK
    return Marker(
        row["start_s"],
        end,
        "stroke",
        row["hole"],
        row["stroke"],
        name,
        colour,
        one_line(row["evidence"] or ""),
    )


def pieces_of(job: Job) -> tuple[Rate, list[Piece]]:
    """The chapters cut where one file ends and the next begins; together they leave out no frame."""
    rate = rate_of(job.choices.rate, job.folder)
    sources = list(_sources(job, rate))
    pieces = []
    for chapter in chapters_of(job):
        for number, (path, start_s, end_s, shift) in enumerate(sources):
            first = rate.frame(max(chapter.start_s, start_s))
            last = rate.frame(min(chapter.end_s, end_s))
            if first < last:
                pieces.append(Piece(chapter, path, number, first, last, first + shift))
    return rate, pieces


def _sources(job: Job, rate: Rate) -> Iterator[tuple[Path | None, float, float, int]]:
    """Each file with its place on the timeline and the frames to add to get to its own count."""
    sources: Sequence[dict[str, Any]] = job.folder.meta.get("sources") or ()
    for source in sources:
        offset, length = float(source["offset_s"]), float(source["duration_s"])
        begin = rate.parse(source["timecode"]) if source.get("timecode") else 0
        shift = begin + rate.frame(float(source.get("in_s") or 0.0)) - rate.frame(offset)
        yield (job.folder.path / str(source["path"])).resolve(), offset, offset + length, shift
    if not sources:
        last = max((item.end_s for item in chapters_of(job)), default=0.0)
        yield None, 0.0, max(length_of(job.folder), last), 0

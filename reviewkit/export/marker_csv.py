"""Markers as a CSV list with time codes, for editors that import one and for sheets."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.frames import rate_of
from reviewkit.export.markers import markers_of
from reviewkit.files import write_text
from reviewkit.log.folder import table_text
from reviewkit.log.schema import Column

COLUMNS = (
    Column("timecode", "string", "start on the round's timeline, at the frame rate asked for"),
    Column("frame", "Int64", "the same as a count of frames"),
    Column("start_s", "Float64", "start", "s"),
    Column("end_s", "Float64", "end", "s"),
    Column("kind", "string", "hole or stroke"),
    Column("hole", "Int64", "number on the course card"),
    Column("stroke", "Int64", "number of the stroke on the hole"),
    Column("name", "string", "what to show"),
    Column("colour", "string", "GREEN hole, CYAN stroke, RED to be checked"),
    Column("note", "string", "the words it rests on, or why to look"),
)


def write(job: Job, path: Path) -> Sequence[str]:
    rate = rate_of(job.choices.rate, job.folder)
    rows = []
    for marker in markers_of(job):
        frame = rate.frame(marker.start_s)
        rows.append({"timecode": rate.timecode(frame), "frame": frame, **asdict(marker)})
    write_text(path, table_text(COLUMNS, rows))
    return ()

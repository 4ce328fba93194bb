"""Chapters into the footage itself: the same titles and times as the files, no packet changed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from reviewkit.export.base import Job, shorten
from reviewkit.export.chapters import chapters_of, within
from reviewkit.export.ffmetadata import text_of
from reviewkit.export.footage import timeline_of
from reviewkit.footage.mux import mux

# MP4's short chapter list counts a title's bytes, and its entries, in eight bits.
MOST_TITLE_BYTES = 255
MOST_ENTRIES = 255


def write_into(job: Job, out: Path, footage: Sequence[Path] = ()) -> list[str]:
    """Write the round's footage with chapters to `out`; returns notes. Raises as `footage.mux.mux` does."""
    timeline = timeline_of(job.folder, footage)
    chapters = within(chapters_of(job), timeline.duration_s)
    notes = []
    if out.suffix.lower() != ".mkv":
        long = [item for item in chapters if len(item.title.encode()) > MOST_TITLE_BYTES]
        if long:
            notes.append(f"titles cut to the {MOST_TITLE_BYTES} bytes that MP4 holds: {len(long)}.")
        chapters = [replace(item, title=shorten(item.title, MOST_TITLE_BYTES)) for item in chapters]
        if len(chapters) > MOST_ENTRIES:
            notes.append(f"some players show the first {MOST_ENTRIES} of these {len(chapters)} chapters.")
    marks = [
        (round(item.start_s * 1000), round(item.end_s * 1000), shorten(item.title, MOST_TITLE_BYTES))
        for item in chapters
    ]
    return notes + mux(timeline, text_of(chapters), marks, out)

"""The log written out for the video, the editor, the description and the sheet: one file a format."""

from __future__ import annotations

from reviewkit.export.base import Choices, Job
from reviewkit.export.registry import FORMATS, Format, find, write
from reviewkit.log import RoundFolder

__all__ = ["FORMATS", "Choices", "Format", "Job", "find", "write", "write_default_chapters"]


def write_default_chapters(folder: RoundFolder) -> None:
    """Write the chapters that every round folder holds: a timestamp list and WebVTT, scores left out.

    A round in which no hole was found has none; those of an earlier reading go.
    """
    for name in ("description", "chapters-vtt"):
        chosen = find(name)
        path = folder.chapters / chosen.file
        if folder.holes["start_s"].notna().any():
            write(chosen, Job(folder), path)
        else:
            path.unlink(missing_ok=True)

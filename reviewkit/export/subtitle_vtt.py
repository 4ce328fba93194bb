"""WebVTT subtitles, for the web."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.subtitles import write_as


def write(job: Job, path: Path) -> Sequence[str]:
    return write_as("vtt", job, path)

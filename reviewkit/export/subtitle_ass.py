"""Advanced SubStation subtitles, with a style."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.subtitles import write_as


def write(job: Job, path: Path) -> Sequence[str]:
    return write_as("ass", job, path)

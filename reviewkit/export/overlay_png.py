"""The overlay as transparent PNG files, one a state, with the ffconcat list that says when each shows."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.overlay import overlay_rate, write_pictures


def write(job: Job, path: Path) -> Sequence[str]:
    write_pictures(job, path, overlay_rate(job), job.choices.size)
    return ()

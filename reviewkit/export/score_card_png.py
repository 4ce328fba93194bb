"""The score card as PNG."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.drawing import pixels
from reviewkit.export.score_card import drawing
from reviewkit.files import whole


def write(job: Job, path: Path) -> Sequence[str]:
    shapes, wide, high, _ = drawing(job)
    with whole(path) as part:
        pixels(shapes, wide, high).save(part, format="PNG", optimize=True)
    return ()

"""The score card as SVG."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.drawing import svg
from reviewkit.export.score_card import drawing
from reviewkit.files import write_text


def write(job: Job, path: Path) -> Sequence[str]:
    write_text(path, svg(*drawing(job)))
    return ()

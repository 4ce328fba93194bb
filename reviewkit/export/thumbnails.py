"""Candidates for the video's cover: the sharpest, most colourful frames at full size, best first."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.stills import candidates, stills_of
from reviewkit.files import whole

MOST = 5


def write(job: Job, path: Path) -> Sequence[str]:
    from PIL import Image

    for place, still in enumerate(candidates(stills_of(job), MOST), 1):
        with whole(path / f"{place:02d}-hole-{still.hole:02d}.jpg") as part:
            Image.fromarray(still.frame[:, :, ::-1]).save(part, format="JPEG", quality=92)
    return ()

"""The overlay as QuickTime, ProRes 4444 with an alpha channel, at an even frame rate as editors want it.

Each state is encoded once; its packet is then repeated for as long as the state lasts.
"""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.overlay import overlay_rate, write_pictures
from reviewkit.files import whole
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.hold import hold

CODING = ("-c:v", "prores_ks", "-profile:v", "4444", "-pix_fmt", "yuva444p10le", "-alpha_bits", "8")


def write(job: Job, path: Path) -> Sequence[str]:
    rate = overlay_rate(job)
    with tempfile.TemporaryDirectory(prefix="reviewkit-") as name, whole(path) as part:
        scratch = Path(name)
        _, frames = write_pictures(job, scratch, rate, job.choices.size)
        once = scratch / "once.mov"
        run(
            ["-y", "-framerate", "1", "-i", scratch / "%04d.png", *CODING, "-vendor", "apl0", once],
            about=path,
        )
        hold(once, frames, rate.fps, part)
    return ()

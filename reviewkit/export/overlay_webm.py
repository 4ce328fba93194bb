"""The overlay as WebM, VP9 with an alpha channel: a picture a change, and one every few seconds between."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.overlay import overlay_rate, write_pictures
from reviewkit.files import whole
from reviewkit.footage.ffmpeg import run

CODING = ("-c:v", "libvpx-vp9", "-pix_fmt", "yuva420p", "-crf", "20", "-b:v", "0", "-auto-alt-ref", "0")
FAST = ("-deadline", "realtime", "-cpu-used", "6", "-row-mt", "1", "-fps_mode", "vfr")


def write(job: Job, path: Path) -> Sequence[str]:
    with tempfile.TemporaryDirectory(prefix="reviewkit-") as scratch, whole(path) as part:
        listing, _ = write_pictures(job, Path(scratch), overlay_rate(job), job.choices.size)
        run(["-y", "-f", "concat", "-safe", "0", "-i", listing, *CODING, *FAST, part], about=path)
    return ()

"""The footage with the overlay burned in; sound is copied, pictures are encoded."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path

from reviewkit.errors import ReviewkitError
from reviewkit.export.base import Job
from reviewkit.export.footage import timeline_of
from reviewkit.export.frames import Rate
from reviewkit.export.overlay import write_pictures
from reviewkit.files import whole
from reviewkit.footage.cut import ENCODE, shown
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.mux import clips_input

# Fine enough for any footage: a state waits for the first frame at or after its time.
MILLI = Rate(Fraction(1000), 1000)


def write(job: Job, path: Path) -> Sequence[str]:
    timeline = timeline_of(job.folder, job.choices.footage)
    size = shown(timeline.clips[0])
    if size == (0, 0):
        raise ReviewkitError(
            "The round's footage has no picture.", "Use --as overlay-webm for an overlay alone."
        )
    with tempfile.TemporaryDirectory(prefix="reviewkit-") as name, whole(path) as part:
        scratch = Path(name)
        listing, _ = write_pictures(job, scratch, MILLI, size)
        sources = ["-y", *clips_input(timeline.clips, scratch), "-f", "concat", "-safe", "0", "-i", listing]
        graph = "[1:v]format=rgba[score];[0:v:0][score]overlay=eof_action=repeat[out]"
        maps = ["-filter_complex", graph, "-map", "[out]", "-map", "0:a?"]
        run([*sources, *maps, *ENCODE, "-c:a", "copy", "-shortest", part], about=path)
    return ()

"""Sharp frames of the footage, chosen by OpenCV: one a hole, and candidates for the video's cover.

Sharpness is the variance of the Laplacian (Pech-Pacheco and others, 2000), taken at one width so that
footage of different sizes compares.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from reviewkit.errors import ReviewkitError
from reviewkit.export.base import Job, records
from reviewkit.export.footage import timeline_of
from reviewkit.footage.looks import looks, picture_at
from reviewkit.footage.timeline import Timeline

LOOKS = 12
"""Key frames looked at in a hole, at most."""
WIDTH = 640
# Cuts and the words that begin a hole make its edges poor pictures.
EDGE = 0.06


@dataclass(frozen=True, slots=True)
class Still:
    """A picture by its file and the second there; `at_s` is on the round's timeline."""

    hole: int
    at_s: float
    sharpness: float
    colour: float
    path: Path
    second: float

    @property
    def frame(self) -> Any:
        """The picture (height, width, blue green red), turned as it is shown; decoded anew."""
        return picture_at(self.path, self.second)


@lru_cache(maxsize=1)
def stills_of(job: Job) -> tuple[Still, ...]:
    """The sharpest frame of each hole with a time, in order of play; found once for several formats.

    Raises SourceError when footage is missing, ReviewkitError when it has no picture.
    """
    timeline = timeline_of(job.folder, job.choices.footage)
    rows = [
        row for row in records(job.folder.holes) if row["start_s"] is not None and row["end_s"] is not None
    ]
    found = []
    for row in rows:
        looked = list(_looks(timeline, int(row["hole"]), row["start_s"], row["end_s"]))
        if looked:
            found.append(max(looked, key=lambda still: still.sharpness))
    if not found:
        raise ReviewkitError("The round's footage shows no picture.", "Give video with --footage FILE.")
    return tuple(found)


def candidates(stills: Sequence[Still], most: int) -> list[Still]:
    """The best `most` stills by sharpness and colour together, best first."""
    ranks = {
        still.hole: _place(stills, "sharpness", still) + _place(stills, "colour", still) for still in stills
    }
    return sorted(stills, key=lambda still: (ranks[still.hole], still.hole))[:most]


def _place(stills: Sequence[Still], name: str, still: Still) -> int:
    return sum(getattr(other, name) > getattr(still, name) for other in stills)


def _looks(timeline: Timeline, hole: int, start_s: float, end_s: float) -> Iterator[Still]:
    edge = (end_s - start_s) * EDGE
    for clip, first, last in timeline.spans(start_s + edge, end_s - edge):
        if clip.media.picture is None:
            continue
        step = (last - first) / LOOKS
        moments = [first + step * (number + 0.5) for number in range(LOOKS)]
        for second, frame in looks(clip.media.path, moments, first, last, WIDTH):
            at = second - clip.in_s + clip.offset_s
            yield Still(hole, at, *_measures(frame), clip.media.path, second)


def _measures(frame: Any) -> tuple[float, float]:
    """Sharpness and colourfulness (mean saturation, 0 to 255)."""
    import cv2

    grey = cv2.cvtColor(frame, cv2.COLOR_BGR2GRAY)
    sharpness = float(cv2.Laplacian(grey, cv2.CV_64F).var())
    return sharpness, float(cv2.cvtColor(frame, cv2.COLOR_BGR2HSV)[:, :, 1].mean())

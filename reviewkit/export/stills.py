"""Sharp frames of the footage, chosen by OpenCV: one a hole, and candidates for the video's cover.

Sharpness is the variance of the Laplacian (Pech-Pacheco and others, 2000), taken at one width so that
footage of different sizes compares.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from reviewkit.errors import ReviewkitError
from reviewkit.export.base import Job, records
from reviewkit.export.footage import timeline_of
from reviewkit.footage.timeline import Timeline

LOOKS = 12
"""Frames looked at in a hole."""
WIDTH = 640
# Cuts and the words that begin a hole make its edges poor pictures.
EDGE = 0.06


@dataclass(frozen=True, slots=True)
class Still:
    """A frame as OpenCV gives it (height, width, blue green red), turned as it is shown."""

    hole: int
    at_s: float
    sharpness: float
    colour: float
    frame: Any


def stills_of(job: Job) -> list[Still]:
    """The sharpest frame of each hole with a time, in order of play.

    Raises SourceError when footage is missing, ReviewkitError when it has no picture.
    """
    timeline = timeline_of(job.folder, job.choices.footage)
    rows = [
        row for row in records(job.folder.holes) if row["start_s"] is not None and row["end_s"] is not None
    ]
    found = []
    for row in rows:
        looks = list(_looks(timeline, int(row["hole"]), row["start_s"], row["end_s"]))
        if looks:
            found.append(max(looks, key=lambda still: still.sharpness))
    if not found:
        raise ReviewkitError("The round's footage shows no picture.", "Give video with --footage FILE.")
    return found


def candidates(stills: Sequence[Still], most: int) -> list[Still]:
    """The best `most` stills by sharpness and colour together, best first."""
    ranks = {
        still.hole: _place(stills, "sharpness", still) + _place(stills, "colour", still) for still in stills
    }
    return sorted(stills, key=lambda still: (ranks[still.hole], still.hole))[:most]


def _place(stills: Sequence[Still], name: str, still: Still) -> int:
    return sum(getattr(other, name) > getattr(still, name) for other in stills)


def _looks(timeline: Timeline, hole: int, start_s: float, end_s: float) -> Iterator[Still]:
    import cv2

    edge = (end_s - start_s) * EDGE
    step = (end_s - start_s - 2 * edge) / LOOKS
    for number in range(LOOKS):
        at = start_s + edge + step * (number + 0.5)
        place = timeline.at(at)
        if at >= timeline.duration_s or place.clip.media.picture is None:
            continue
        video = cv2.VideoCapture(str(place.clip.media.path))
        try:
            video.set(cv2.CAP_PROP_POS_MSEC, place.second * 1000)
            there, frame = video.read()
        finally:
            video.release()
        if there:
            yield Still(hole, at, *_measures(frame), frame)


def _measures(frame: Any) -> tuple[float, float]:
    """Sharpness and colourfulness (mean saturation, 0 to 255)."""
    import cv2

    high = max(round(frame.shape[0] * WIDTH / frame.shape[1]), 1)
    small = cv2.resize(frame, (WIDTH, high), interpolation=cv2.INTER_AREA)
    grey = cv2.cvtColor(small, cv2.COLOR_BGR2GRAY)
    sharpness = float(cv2.Laplacian(grey, cv2.CV_64F).var())
    return sharpness, float(cv2.cvtColor(small, cv2.COLOR_BGR2HSV)[:, :, 1].mean())

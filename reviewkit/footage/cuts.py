"""Hard cuts near moments of interest.

Only key frames are decoded first, small: where two neighbours look alike nothing was cut between them. Where
they differ the frames between are decoded and PySceneDetect's adaptive detector says which one begins the new
shot, if any does (a camera that pans also changes, but slowly).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from reviewkit.errors import SourceError

SETTINGS = "adaptive 3.0 15.0 / 160 / 12.0"
"""Names the settings below in what is kept of an earlier search."""
_WIDTH = 160
_ALIKE = 12.0
"""Mean difference of two key frames in grey levels (0 to 255) below which no cut is looked for between."""
_LEAD_S = 0.5
"""Footage before a cut that the detector compares it with."""


@dataclass(frozen=True, slots=True)
class Reach:
    """A stretch to look or listen in, in seconds: of one file where cuts are looked for."""

    start_s: float
    end_s: float


def merged(stretches: Iterable[Reach]) -> list[Reach]:
    """The same stretches in order, those that touch joined."""
    found: list[Reach] = []
    for item in sorted(stretches, key=lambda item: item.start_s):
        if found and item.start_s <= found[-1].end_s:
            found[-1] = Reach(found[-1].start_s, max(found[-1].end_s, item.end_s))
        else:
            found.append(item)
    return found


def find_cuts(path: Path, stretches: Sequence[Reach]) -> list[float]:
    """Times of the first frames after hard cuts in the stretches, in the file's seconds, ascending.

    Raises SourceError when the picture cannot be decoded.
    """
    import av

    found: list[float] = []
    try:
        with av.open(str(path)) as container:
            stream = container.streams.video[0]
            ticks = stream.time_base or Fraction(1)
            stream.thread_type = "AUTO"
            origin = float((stream.start_time or 0) * ticks)
            if container.start_time is not None:
                origin = container.start_time / 1_000_000
            for stretch in merged(stretches):
                for suspect in list(_suspects(container, stream, origin, stretch)):
                    found += _cuts_in(container, stream, origin, suspect)
    except (av.error.FFmpegError, IndexError) as error:
        raise SourceError(path, "has a picture that cannot be decoded.", "Read it with --no-cuts.") from error
    return sorted({second for second in found if any(s.start_s <= second <= s.end_s for s in stretches)})


def _suspects(container: Any, stream: Any, origin: float, stretch: Reach) -> Iterator[Reach]:
    """Stretches between neighbouring key frames that do not look alike."""
    import numpy as np

    stream.codec_context.skip_frame = "NONKEY"
    before: tuple[float, Any] | None = None
    try:
        for second, frame in _frames(container, stream, origin, stretch.start_s):
            image = frame.reformat(width=_WIDTH // 2, height=_WIDTH // 4, format="gray").to_ndarray()
            image = image.astype(np.int16)
            if before is not None and np.abs(image - before[1]).mean() >= _ALIKE:
                # The detector needs some frames of the new shot as well.
                yield Reach(before[0], second + _LEAD_S)
            before = (second, image)
            if second > stretch.end_s:
                return
    finally:
        stream.codec_context.skip_frame = "DEFAULT"
    # The last key frame lies before the end: what follows cannot be told from key frames.
    if before is not None and before[0] < stretch.end_s:
        yield Reach(before[0], stretch.end_s + _LEAD_S)


def _cuts_in(container: Any, stream: Any, origin: float, suspect: Reach) -> list[float]:
    from scenedetect.common import FrameTimecode, Timecode
    from scenedetect.detectors import AdaptiveDetector

    detector = AdaptiveDetector(min_scene_len="0.2s")
    height = max(round(stream.height * _WIDTH / max(stream.width, 1) / 2) * 2, 2)
    cuts: list[Any] = []
    first = max(suspect.start_s - _LEAD_S, 0.0)
    for second, frame in _frames(container, stream, origin, first):
        if second > suspect.end_s:
            break
        if second < first:
            continue
        image = frame.reformat(width=_WIDTH, height=height, format="bgr24").to_ndarray()
        # The detector counts in the file's own ticks, so that uneven frame rates keep their times.
        moment = FrameTimecode(Timecode(frame.pts, stream.time_base), fps=stream.average_rate or 30)
        cuts += detector.process_frame(moment, image)
    return [cut.pts * float(stream.time_base) - origin for cut in cuts]


def _frames(container: Any, stream: Any, origin: float, start_s: float) -> Iterator[tuple[float, Any]]:
    """Frames with their seconds, from the key frame at or before `start_s` on."""
    container.seek(int((max(start_s, 0.0) + origin) / stream.time_base), stream=stream)
    for frame in container.decode(stream):
        if frame.pts is not None:
            yield float(frame.pts * stream.time_base) - origin, frame

"""Single pictures of a film, found quickly: a key frame needs no other frame to be decoded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from reviewkit.errors import SourceError

# Key frames are found again by their time, which is rounded.
HAIR_S = 0.001
# Files without an index let one in past the wanted moment; then one comes back from further before it.
LEADS_S = (0.0, 5.0, 30.0)


def looks(
    path: Path, moments: Sequence[float], first_s: float, last_s: float, wide: int
) -> Iterator[tuple[float, Any]]:
    """(second, picture) of the key frames nearest before the `moments`, each once; all lie from `first_s` to
    `last_s` of the file. Where it has no key frame there, the frame in the middle.

    Pictures are arrays of (height, width, blue green red), turned as they are shown and `wide` pixels across.
    Raises SourceError.
    """
    import av

    found = -1.0
    try:
        with av.open(str(path)) as container:
            stream = _film(container, path)
            zero = (container.start_time or 0) / 1_000_000
            for moment in sorted(moments):
                if moment < found:
                    continue
                packet = _key(container, stream, moment + zero, first_s + zero)
                at = float(packet.pts * packet.time_base) - zero if packet else last_s + 1
                if not found < at <= last_s:
                    continue
                found = at
                frames = [*stream.codec_context.decode(packet), *stream.codec_context.decode(None)]
                stream.codec_context.flush_buffers()
                if frames:
                    yield at, _turned(frames[0], wide)
    except av.error.FFmpegError as error:
        raise SourceError(path, "cannot be decoded.", "Check that it plays.") from error
    if found < 0:
        middle = (first_s + last_s) / 2
        yield middle, picture_at(path, middle, wide)


def picture_at(path: Path, second: float, wide: int = 0) -> Any:
    """The first picture at or after a second of the file, as `looks` gives it, at full size when `wide` is 0.

    Raises SourceError.
    """
    import av

    try:
        with av.open(str(path)) as container:
            stream = _film(container, path)
            stream.thread_type = "AUTO"
            zero = (container.start_time or 0) / 1_000_000
            for lead in LEADS_S:
                shown, passed = _shown(container, stream, second + zero, lead)
                if passed and shown is not None:
                    return _turned(shown, wide)
            if shown is not None:
                return _turned(shown, wide)
    except av.error.FFmpegError as error:
        raise SourceError(path, "cannot be decoded.", "Check that it plays.") from error
    raise SourceError(path, f"shows nothing at {second:.0f} s.", "Check that it plays to its end.")


def _film(container: Any, path: Path) -> Any:
    """The picture's stream, which is no cover."""
    from av.stream import Disposition

    for stream in container.streams.video:
        if not stream.disposition & Disposition.attached_pic:
            return stream
    raise SourceError(path, "has no picture.", "Give video.")


def _shown(container: Any, stream: Any, moment: float, lead_s: float) -> tuple[Any, bool]:
    """The first frame at or after a moment of the file's own time, the last one beyond the end, when let in
    `lead_s` before; and whether earlier frames went by, so that it is surely the first."""
    container.seek(int(max(moment - lead_s, 0) * 1_000_000))
    frame, passed = None, False
    for frame in container.decode(stream):
        if frame.time is not None and frame.time >= moment - HAIR_S:
            return frame, passed or frame.time <= moment + HAIR_S
        passed = True
    return frame, passed


def _key(container: Any, stream: Any, moment: float, first: float) -> Any:
    """The packet of the key frame before `moment`, or of the first after that which is not before `first`,
    in the file's own time; None at the end."""
    container.seek(int(max(moment, 0) * 1_000_000))
    for packet in container.demux(stream):
        if packet.pts is None or not packet.is_keyframe:
            continue
        if float(packet.pts * packet.time_base) >= first - HAIR_S:
            return packet
    return None


def _turned(frame: Any, wide: int) -> Any:
    import numpy as np

    turns = int(frame.rotation) // 90 % 4
    across = frame.height if turns % 2 else frame.width
    scale = wide / across if wide else 1.0
    size = {"width": max(round(frame.width * scale), 1), "height": max(round(frame.height * scale), 1)}
    picture = frame.reformat(**size, format="bgr24", interpolation="AREA").to_ndarray()
    return np.ascontiguousarray(np.rot90(picture, turns))

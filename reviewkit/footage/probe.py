"""What a file of footage holds, asked of PyAV: there may be no ffprobe."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from reviewkit.errors import SourceError

_CAMERA_TAGS = ("make", "model", "com.apple.quicktime.make", "com.apple.quicktime.model", "encoder")
_TIME_TAGS = ("com.apple.quicktime.creationdate", "creation_time")


@dataclass(frozen=True, slots=True)
class Picture:
    """The picture track. `rotation` is in degrees anticlockwise, to be applied before showing; width and
    height are as stored. `fps` is the mean rate, `variable` whether frames come at uneven times."""

    codec: str
    width: int
    height: int
    fps: float
    variable: bool
    rotation: int


@dataclass(frozen=True, slots=True)
class Media:
    """One file. `track` is the index among its sound tracks to listen to, None when it has no sound.

    `recorded_at` is when the recording began as the camera wrote it, in UTC. `camera` tells cameras apart.
    `timecode` is the start time code (HH:MM:SS:FF) where the camera wrote one.
    """

    path: Path
    duration_s: float
    picture: Picture | None
    track: int | None
    tracks: int
    recorded_at: datetime | None
    camera: str = ""
    timecode: str = ""


def probe(path: Path) -> Media:
    """Read a file's headers, and one frame for its rotation. Raises SourceError for what is no footage."""
    import av
    from av.stream import Disposition

    require(path)
    try:
        with av.open(str(path)) as container:
            if not (container.streams.video or container.streams.audio):
                raise SourceError(path, "holds neither picture nor sound.", "Give a video or audio file.")
            tags = dict(container.metadata)
            for stream in container.streams:
                tags = dict(stream.metadata) | tags
            picture = _picture(container)
            sound = container.streams.audio
            default = [n for n, track in enumerate(sound) if track.disposition & Disposition.default]
            return Media(
                path=path,
                duration_s=_duration(container, path),
                picture=picture,
                track=(default or [0])[0] if sound else None,
                tracks=len(sound),
                recorded_at=_recorded_at(tags),
                camera=_camera(tags, picture),
                timecode=tags.get("timecode", ""),
            )
    except (av.error.FFmpegError, OSError) as error:
        raise SourceError(
            path, "cannot be decoded as video or sound.", "Check that it plays; export it again as MP4."
        ) from error


def require(path: Path) -> None:
    """Raise SourceError unless `path` is a file with something in it that may be read."""
    if not path.exists():
        raise SourceError(path, "does not exist.", "Check the name.")
    if not path.is_file():
        raise SourceError(path, "is not a file.", "Give video, sound or timed-text files.")
    try:
        with path.open("rb") as source:
            empty = not source.read(1)
    except OSError as error:
        raise SourceError(path, f"cannot be read ({error.strerror}).", "Check its permissions.") from error
    if empty:
        raise SourceError(path, "is empty.", "Copy it from the camera again.")


def _duration(container: Any, path: Path) -> float:
    """Seconds, from the header or, where the header does not say, from the last packet."""
    if container.duration:
        return float(container.duration) / 1_000_000
    last = 0.0
    for packet in container.demux():
        if packet.pts is not None:
            last = max(last, float((packet.pts + (packet.duration or 0)) * packet.time_base))
    if last <= 0:
        raise SourceError(path, "has no length.", "Check that it plays; export it again as MP4.")
    return last


def _picture(container: Any) -> Picture | None:
    import av
    from av.stream import Disposition

    # A cover image in a sound file is a one-frame "video" stream.
    streams = [s for s in container.streams.video if not s.disposition & Disposition.attached_pic]
    if not streams:
        return None
    stream = streams[0]
    mean = float(stream.average_rate or stream.guessed_rate or 0)
    base = float(stream.base_rate or mean)
    try:
        frame = next(container.decode(stream), None)
    except av.error.FFmpegError:
        frame = None
    context = stream.codec_context
    return Picture(
        codec=context.name,
        width=context.width,
        height=context.height,
        fps=mean,
        variable=bool(mean) and abs(base - mean) / mean > 0.01,
        rotation=int(frame.rotation) % 360 if frame is not None else 0,
    )


def _recorded_at(tags: dict[str, str]) -> datetime | None:
    for name in _TIME_TAGS:
        try:
            moment = datetime.fromisoformat(tags[name].strip().replace("Z", "+00:00"))
        except (KeyError, ValueError):
            continue
        # Cameras without a clock write the epoch of their file format.
        if moment.year > 1980:
            return moment.replace(tzinfo=moment.tzinfo or UTC).astimezone(UTC)
    return None


def _camera(tags: dict[str, str], picture: Picture | None) -> str:
    parts = [tags[name] for name in _CAMERA_TAGS if tags.get(name)]
    if picture:
        parts.append(f"{picture.codec} {picture.width}x{picture.height} {picture.fps:.0f}")
    return " / ".join(parts)

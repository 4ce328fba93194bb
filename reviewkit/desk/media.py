"""The round's footage as the page may play it: the file itself, or a copy that a browser can play."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from reviewkit.errors import ReviewkitError
from reviewkit.files import whole
from reviewkit.footage.ffmpeg import stream
from reviewkit.log import RoundFolder
from reviewkit.report.footage import in_s, proxy_path, source_path

PLAYABLE = (".mp4", ".m4v", ".mov", ".webm", ".m4a", ".mp3", ".ogg", ".opus", ".wav", ".flac")
CODECS = ("h264", "vp8", "vp9", "av1")
TYPES = {".mov": "video/mp4", ".m4v": "video/mp4", ".opus": "audio/ogg", ".m4a": "audio/mp4"}


@dataclass(frozen=True, slots=True)
class Source:
    """One file of the timeline. `path` is what would be played now, None when the footage is gone."""

    index: int
    start_s: float
    end_s: float
    in_s: float
    original: Path | None
    path: Path | None
    proxy: Path

    def told(self) -> dict[str, Any]:
        return {
            "index": self.index,
            "start": self.start_s,
            "end": self.end_s,
            "in": self.in_s,
            "there": self.original is not None,
            "copied": self.proxy.is_file(),
            "plays": self.path is not None and (self.path == self.proxy or playable(self.path)),
        }


def media_of(folder: RoundFolder) -> tuple[Source, ...]:
    """The sources that round.json names, in order. Nothing else is ever served."""
    found: list[Source] = []
    start_s = 0.0
    for index, row in enumerate(folder.meta.get("sources") or ()):
        start_s = float(row.get("offset_s") or start_s)
        end_s = start_s + float(row.get("duration_s") or 0.0)
        original, proxy = source_path(folder, row), proxy_path(folder, row)
        path = proxy if proxy.is_file() else original
        found.append(Source(index, start_s, end_s, in_s(row), original, path, proxy))
        start_s = end_s
    return tuple(found)


def playable(path: Path) -> bool:
    """Whether browsers commonly play this container and picture; asked once a file."""
    stat = path.stat()
    key = (path, stat.st_mtime_ns)
    if key not in _ASKED:
        _ASKED[key] = path.suffix.lower() in PLAYABLE and _picture_plays(path)
    return _ASKED[key]


_ASKED: dict[tuple[Path, int], bool] = {}


def _picture_plays(path: Path) -> bool:
    from reviewkit.footage.probe import probe

    try:
        picture = probe(path).picture
    except ReviewkitError:
        return False
    return picture is None or picture.codec in CODECS


@dataclass(slots=True)
class Copying:
    """Copies under way, by source index: the share done, or the complaint that ended one."""

    share: dict[int, float] = field(default_factory=dict)
    complaint: dict[int, str] = field(default_factory=dict)

    def start(self, source: Source) -> None:
        """Begin a copy in the background unless one is under way. Raises ReviewkitError without footage."""
        if source.original is None:
            raise ReviewkitError("The footage is not where it was read from.", "Put it back and reload.")
        if source.index not in self.share and not source.proxy.is_file():
            self.share[source.index] = 0.0
            self.complaint.pop(source.index, None)
            threading.Thread(target=self._copy, args=(source, source.original), daemon=True).start()

    def _copy(self, source: Source, original: Path) -> None:
        try:
            copy(original, source.proxy, source.end_s - source.start_s, lambda done: self._tell(source, done))
        except ReviewkitError as error:
            self.complaint[source.index] = str(error)
        self.share.pop(source.index, None)

    def _tell(self, source: Source, done: float) -> None:
        self.share[source.index] = done


def copy(original: Path, proxy: Path, length_s: float, tell: Callable[[float], None]) -> None:
    """Write an MP4 of `original` that browsers play and seek well; `tell` gets the share done."""
    with whole(proxy) as part:
        command = [
            *("-y", "-i", str(original), "-map", "0:v:0?", "-map", "0:a:0?"),
            *("-vf", "scale='min(960,iw)':-2", "-c:v", "libx264", "-preset", "veryfast", "-crf", "26"),
            *("-pix_fmt", "yuv420p", "-g", "30", "-c:a", "aac", "-b:a", "96k", "-movflags", "+faststart"),
            *("-f", "mp4", str(part), "-progress", "pipe:1"),
        ]
        with stream(command, original) as progress:
            for line in iter(progress.readline, b""):
                name, _, value = line.decode("ascii", "replace").partition("=")
                if name == "out_time_us" and value.strip().isdigit():
                    tell(min(int(value) / 1e6 / max(length_s, 0.1), 1.0))

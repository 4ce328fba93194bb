"""The tracks of a file one by one, and which of them another container can hold."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from reviewkit.footage.ffmpeg import find_ffmpeg

MATROSKA = (".mkv", ".webm")
QUICKTIME = (".mp4", ".m4v", ".mov", ".m4a")
MADE_ANEW = ("text", "tmcd")
"""Chapter lists and time codes, which the container makes anew."""
_DATA = re.compile(r"Stream #0:(\d+).*?: Data: [^(]*\((\S{4}) /")
# Subtitles that are pictures cannot become text.
_DRAWN = ("dvd_subtitle", "dvb_subtitle", "hdmv_pgs_subtitle", "xsub")
# What nearly every player takes from an MP4.
_PLAIN = ("h264", "hevc", "av1", "mpeg4", "aac", "mp3", "ac3", "eac3", "alac")


@dataclass(frozen=True, slots=True)
class Track:
    """One track by its `index` in the file. `kind` is video, cover, audio, subtitle, data or attachment;
    `codec` is ffmpeg's name, of data the four letters that tell what it is, nothing where none are known."""

    index: int
    kind: str
    codec: str = ""

    @property
    def told(self) -> str:
        """What a person may call it."""
        names = {"cover": "the cover picture", "attachment": "attachment"}
        name = names.get(self.kind, f"{self.kind} track")
        number = "" if self.kind == "cover" else f" {self.index}"
        return f"{name}{number} ({self.codec})" if self.codec else f"{name}{number}"


def tracks(path: Path) -> list[Track]:
    """Every track in the order of the file."""
    import av
    from av.stream import Disposition

    found = []
    with av.open(str(path)) as container:
        for stream in container.streams:
            cover = stream.type == "video" and stream.disposition & Disposition.attached_pic
            codec = stream.codec_context.codec.canonical_name if stream.codec_context else ""
            found.append(Track(stream.index, "cover" if cover else stream.type, codec))
    if any(track.kind == "data" for track in found):
        tags = _tags_of_data(path)
        found = [
            Track(track.index, "data", tags.get(track.index, "")) if track.kind == "data" else track
            for track in found
        ]
    return found


def held(given: Sequence[Track], out: Path) -> list[Track]:
    """The tracks that ffmpeg copies into a container of the kind of `out`; a cover for Matroska is not
    among them, because there it is an attachment."""
    return [track for track in given if _holds(track, out.suffix.lower())]


def plain(given: Sequence[Track]) -> bool:
    """Whether picture and sound are of kinds that play from an MP4 nearly everywhere."""
    return all(track.codec in _PLAIN for track in given if track.kind in ("video", "audio"))


def quicktime_name(given: Sequence[Track], source: Path, out: Path) -> list[str]:
    """ffmpeg's arguments that give HEVC the name by which QuickTime knows it, where the source has none."""
    pictures = [track.codec for track in given if track.kind == "video"]
    into, named = out.suffix.lower() not in MATROSKA, source.suffix.lower() in QUICKTIME
    return ["-tag:v:0", "hvc1"] if pictures[:1] == ["hevc"] and into and not named else []


def _holds(track: Track, suffix: str) -> bool:
    if track.kind == "data":
        return track.codec == "gpmd" and suffix not in MATROSKA
    if track.kind == "attachment":
        return suffix in MATROSKA
    if track.kind == "cover":
        return suffix in (".mp4", ".m4v", ".m4a")
    return track.codec not in _DRAWN or suffix in MATROSKA


def _tags_of_data(path: Path) -> dict[int, str]:
    """The four-letter tag of each data track, as ffmpeg lists them: PyAV shows none."""
    command = [find_ffmpeg(), "-hide_banner", "-nostdin", "-i", str(path)]
    done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, check=False)
    return {int(index): tag for index, tag in _DATA.findall(done.stderr.decode("utf-8", "replace"))}

"""Chapters into footage without decoding it: every picture, sound and subtitle packet stays as it is.

One MP4 or QuickTime file that becomes another is copied and appended to, see `footage.append`. Everything
else goes through ffmpeg, which writes timed data of one kind only into MP4 and QuickTime (`gpmd`, camera
telemetry) and none into Matroska. A camera's time code is data too, but lives on as a tag from which the
container makes the track anew. An old chapter list gives way to the new one.
"""

from __future__ import annotations

import re
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from reviewkit.errors import FileError, ReviewkitError
from reviewkit.files import whole, write_text
from reviewkit.footage.append import Mark, append_chapters, header_of
from reviewkit.footage.ffmpeg import find_ffmpeg, run
from reviewkit.footage.timeline import Clip, Timeline

CONTAINERS = (".mp4", ".m4v", ".mov", ".m4a", ".mkv")
MADE_ANEW = ("text", "tmcd")
_DATA = re.compile(r"Stream #0:(\d+).*?: Data: [^(]*\((\S{4}) /")
# ffmpeg repeats these from the old file as if they were a person's tags.
_BRANDS = ("major_brand", "minor_version", "compatible_brands")


def mux(timeline: Timeline, chapters: str, marks: Sequence[Mark], out: Path) -> list[str]:
    """Write the clips as one file at `out` with chapters; returns what was left out.

    `chapters` is FFMETADATA text and `marks` the same chapters with titles of 255 bytes at most.
    Raises FileError for a container that holds no chapters, for an `out` that is a clip itself or a disk
    too full, and SourceError when the clips cannot be joined as they are.
    """
    _check(timeline, out)
    source = timeline.clips[0].media.path
    if len(timeline.clips) == 1 and _family(source) == _family(out) and (header := header_of(source)):
        with whole(out) as part:
            append_chapters(source, header, marks, part)
        return []
    return _through_ffmpeg(timeline, chapters, out)


def _through_ffmpeg(timeline: Timeline, chapters: str, out: Path) -> list[str]:
    kept, left_out = _data_tracks(timeline.clips, out)
    with tempfile.TemporaryDirectory(prefix="reviewkit-") as scratch:
        listing = Path(scratch) / "chapters.ffmeta"
        write_text(listing, chapters)
        source = clips_input(timeline.clips, Path(scratch))
        with whole(out) as part:
            first = timeline.clips[0].media.path
            arguments = ["-y", *source, "-i", listing, "-map_metadata", "0", "-map_chapters", "1"]
            streams = [*_maps(kept), "-c", "copy", *_subtitles(first, out), *_tags(first, out)]
            run([*arguments, *streams, part], about=out)
    return left_out


def _family(path: Path) -> str:
    """Files of one family may be copied into each other as they are."""
    suffix = path.suffix.lower()
    return {".m4v": ".mp4", ".m4a": ".mp4"}.get(suffix, suffix)


def clips_input(clips: Sequence[Clip], scratch: Path) -> list[str | Path]:
    """ffmpeg's arguments to read the clips one after another; a list of them is written to `scratch`.

    Raises ReviewkitError when the clips cannot follow each other as they are.
    """
    if not same_form(clips) or any(clip.in_s > 0 for clip in clips):
        raise ReviewkitError(
            "The clips differ in size, codec, rotation or sound, or overlap: they cannot be joined as is.",
            "Join them in your editor, then give the film with --footage FILM.",
        )
    if len(clips) == 1:
        return ["-i", clips[0].media.path]
    listing = scratch / "clips.ffconcat"
    write_text(listing, concat_list(clips))
    return ["-f", "concat", "-safe", "0", "-i", listing]


def concat_list(clips: Sequence[Clip]) -> str:
    """ffmpeg's list of files to play one after another, single quotes in names escaped as it wants them."""
    lines = ["ffconcat version 1.0"]
    for clip in clips:
        name = str(clip.media.path.resolve()).replace("'", "'\\''")
        lines += [f"file 'file:{name}'", f"duration {clip.media.duration_s:.6f}"]
    return "\n".join(lines) + "\n"


def same_form(clips: Sequence[Clip]) -> bool:
    """Whether packets of the clips can follow each other: the same picture and number of sound tracks."""
    forms = set()
    for clip in clips:
        picture = clip.media.picture
        form = picture and (picture.codec, picture.width, picture.height, picture.rotation)
        forms.add((form, clip.media.tracks))
    return len(forms) == 1


def _check(timeline: Timeline, out: Path) -> None:
    if out.suffix.lower() not in CONTAINERS:
        raise FileError(out, "is no container that holds chapters.", f"Name it {', '.join(CONTAINERS)}.")
    if any(out.resolve() == clip.media.path.resolve() for clip in timeline.clips):
        raise FileError(out, "is the footage itself.", "Choose another name; the footage stays as it is.")
    size = sum(clip.media.path.stat().st_size for clip in timeline.clips)
    home = next(parent for parent in out.resolve().parents if parent.exists())
    if shutil.disk_usage(home).free < size:
        raise FileError(
            out,
            f"needs {size / 1e9:.1f} GB, and the disk has less.",
            "Free some space or choose another folder.",
        )


def _data_tracks(clips: Sequence[Clip], out: Path) -> tuple[list[int], list[str]]:
    """Indices of the data tracks that the container can hold, and words about those it cannot."""
    kept: list[int] = []
    left_out: list[str] = []
    # A joined list of clips shows ffmpeg no data tracks that it could copy safely.
    for index, tag in data_tracks(clips[0].media.path):
        if tag == "gpmd" and out.suffix.lower() != ".mkv" and len(clips) == 1:
            kept.append(index)
        elif tag not in MADE_ANEW:
            left_out.append(f"data track {index} ({tag}) is left out: {out.suffix} cannot hold it here.")
    return kept, left_out


def data_tracks(path: Path) -> list[tuple[int, str]]:
    """Index and four-letter tag of each data track, as ffmpeg lists them (PyAV shows no tags of data)."""
    import av

    with av.open(str(path)) as container:
        if not container.streams.data:
            return []
    command = [find_ffmpeg(), "-hide_banner", "-nostdin", "-i", str(path)]
    done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, check=False)
    return [(int(index), tag) for index, tag in _DATA.findall(done.stderr.decode("utf-8", "replace"))]


def _maps(data: Sequence[int]) -> list[str]:
    maps = []
    for stream in ("0:v?", "0:a?", "0:s?", "0:t?", *(f"0:{index}" for index in data)):
        maps += ["-map", stream]
    return maps


def _tags(first: Path, out: Path) -> list[str]:
    """Tags stay; those that MP4 has no box for (a phone's make and place) go into its key list."""
    tags = [argument for brand in _BRANDS for argument in ("-metadata", f"{brand}=")]
    if out.suffix.lower() != ".mkv" and _has_keys(first):
        tags += ["-movflags", "use_metadata_tags"]
    return tags


def _subtitles(first: Path, out: Path) -> list[str]:
    """Text subtitles change their form only where the other container asks for it."""
    into, source = (path.suffix.lower() == ".mkv" for path in (out, first))
    if into == source:
        return []
    return ["-c:s", "srt" if into else "mov_text"]


def _has_keys(path: Path) -> bool:
    import av

    with av.open(str(path)) as container:
        return any(name.startswith("com.") for name in container.metadata)

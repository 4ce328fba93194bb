"""Chapters into footage without decoding it: every picture, sound and subtitle packet stays as it is.

One MP4 or QuickTime file that becomes another is copied and appended to, see `footage.append`. Everything
else goes through ffmpeg, which writes timed data of one kind only into MP4 and QuickTime (`gpmd`, camera
telemetry) and none into Matroska. A camera's time code is data too, but lives on as a tag from which the
container makes the track anew. An old chapter list gives way to the new one.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Sequence
from pathlib import Path

from reviewkit.errors import FileError, ReviewkitError
from reviewkit.files import whole, write_text
from reviewkit.footage.append import Mark, append_chapters, header_of
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.timeline import Clip, Timeline
from reviewkit.footage.tracks import MADE_ANEW, MATROSKA, Track, held, quicktime_name, tracks

CONTAINERS = (".mp4", ".m4v", ".mov", ".m4a", ".mkv")
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
    first = timeline.clips[0].media.path
    found = tracks(first)
    with tempfile.TemporaryDirectory(prefix="reviewkit-") as scratch:
        listing = Path(scratch) / "chapters.ffmeta"
        write_text(listing, chapters)
        source = clips_input(timeline.clips, Path(scratch))
        maps, notes = _choose(first, found, len(timeline.clips) > 1, Path(scratch), out)
        with whole(out) as part:
            arguments = ["-y", *source, "-i", listing, "-map_metadata", "0", "-map_chapters", "1"]
            form = [*_subtitles(first, out), *quicktime_name(found, first, out), *_tags(first, out)]
            if out.suffix.lower() == ".m4v":
                # By that name ffmpeg would make what an old player takes, without HEVC.
                form += ["-f", "mp4"]
            run([*arguments, *maps, "-c", "copy", *form, part], about=out)
    return notes


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


def _choose(
    first: Path, found: Sequence[Track], joined: bool, scratch: Path, out: Path
) -> tuple[list[str | Path], list[str]]:
    """ffmpeg's choice of tracks, and words about what the container does not hold or players do not take."""
    suffix = out.suffix.lower()
    maps: list[str | Path]
    if joined:
        # A joined list of clips shows ffmpeg no other tracks that it could copy safely.
        kept = [track for track in found if track.kind in ("video", "audio", "subtitle")]
        maps = [part for kind in "vas" for part in ("-map", f"0:{kind}?")]
    else:
        kept = held(found, out)
        maps = [part for track in kept for part in ("-map", f"0:{track.index}")]
    left = [track for track in found if track not in kept and track.codec not in MADE_ANEW]
    if suffix in MATROSKA:
        maps += _covers(first, left, sum(track.kind == "attachment" for track in kept), scratch)
        left = [track for track in left if track.kind != "cover"]
    notes = [f"{track.told} is left out: {suffix} cannot hold it here." for track in left]
    if suffix in (".mp4", ".m4v") and any(track.codec.startswith("pcm_") for track in kept):
        notes.append("few players take PCM sound from an MP4; .mov and .mkv hold it as usual.")
    return maps, notes


def _covers(first: Path, left: Sequence[Track], before: int, scratch: Path) -> list[str | Path]:
    """Cover pictures as Matroska wants them, attached; `before` attachments come from the file itself."""
    import av

    arguments: list[str | Path] = []
    covers = [track for track in left if track.kind == "cover"]
    for number, track in enumerate(covers, before):
        kind = {"mjpeg": "jpeg"}.get(track.codec, track.codec)
        picture = scratch / f"cover{number or ''}.{kind.replace('jpeg', 'jpg')}"
        with av.open(str(first)) as container:
            packets = container.demux(container.streams[track.index])
            picture.write_bytes(next(bytes(packet) for packet in packets if packet.size))
        arguments += ["-attach", picture, f"-metadata:s:t:{number}", f"mimetype=image/{kind}"]
        arguments += [f"-metadata:s:t:{number}", f"filename={picture.name}"]
    return arguments


def _tags(first: Path, out: Path) -> list[str]:
    """Tags stay; those that MP4 has no box for (a phone's make and place) go into its key list, named as a
    phone does, which Matroska spells in capitals."""
    import av

    tags = [argument for brand in _BRANDS for argument in ("-metadata", f"{brand}=")]
    with av.open(str(first)) as container:
        keys = {name: text for name, text in container.metadata.items() if name.lower().startswith("com.")}
    if out.suffix.lower() not in MATROSKA and keys:
        tags += ["-movflags", "use_metadata_tags"]
        for name, text in keys.items():
            if name != name.lower():
                tags += ["-metadata", f"{name}=", "-metadata", f"{name.lower()}={text}"]
    return tags


def _subtitles(first: Path, out: Path) -> list[str]:
    """Text subtitles change their form only where the other container asks for it."""
    into, source = (path.suffix.lower() in MATROSKA for path in (out, first))
    if into == source:
        return []
    return ["-c:s", "srt" if into else "mov_text"]

"""Stretches of footage as files of their own: copied as they are where a key frame allows, else encoded.

A copied stretch can begin at a key frame only. When one lies no more than `SLACK_S` before the wanted
start, the stretch begins there and nothing is encoded; otherwise it is encoded from the very frame.
"""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from reviewkit.files import whole, write_text
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.mux import same_form
from reviewkit.footage.timeline import Clip, Timeline
from reviewkit.footage.tracks import MATROSKA, Track, plain, quicktime_name, tracks

SLACK_S = 2.0
ENCODE = ("-c:v", "libx264", "-crf", "18", "-preset", "veryfast", "-pix_fmt", "yuv420p")
SOUND = ("-c:a", "aac", "-b:a", "160k", "-ar", "48000", "-ac", "2")
UPRIGHT = "crop=trunc(min(iw\\,ih*9/16)/2)*2:trunc(min(ih\\,iw*16/9)/2)*2"
# A hair after the key frame, or rounding makes ffmpeg take the one before it.
AFTER_KEY_S = 0.002
# Files without an index: ffmpeg may land past the wanted moment, so it is let in earlier and plays to it.
STREAMS = (".ts", ".mts", ".m2ts", ".m2t", ".mpg", ".mpeg", ".vob")
LEAD_S = 5.0
RATE = Fraction(30000, 1001)
"""Frames a second of a reel from footage whose rates differ or vary."""
SILENCE = "aresample=async=1:min_hard_comp=0.005"
# Picture and sound; a time code's data track is made anew from its tag.
TRACKS = ("-map", "0:v:0?", "-map", "0:a?")


@dataclass(frozen=True, slots=True)
class Stretch:
    """Seconds `start_s` to `end_s` of one file; `copied` when it can be taken as it is."""

    clip: Clip
    start_s: float
    end_s: float
    copied: bool


@dataclass(frozen=True, slots=True)
class Look:
    """How clips are made: `upright` crops to 9:16, `exact` cuts at the very frame, which encodes."""

    upright: bool = False
    exact: bool = False


@dataclass(frozen=True, slots=True)
class Frame:
    """Width and height in pixels, and frames a second."""

    wide: int
    high: int
    rate: Fraction


def plan(timeline: Timeline, spans: Sequence[tuple[float, float]], look: Look) -> list[Stretch]:
    """The stretches of files that show `spans` of the round, one after another.

    Either all are copied or all are encoded, because they end up in one file.
    """
    wanted = [Stretch(*part, copied=False) for span in spans for part in timeline.spans(*span)]
    clips = [item.clip for item in wanted]
    if all(clip.media.picture is None for clip in clips) and same_form(clips):
        # Sound can be cut nearly anywhere.
        return [replace(item, copied=True) for item in wanted]
    if look.exact or not same_form(clips) or (look.upright and any(not _upright(clip) for clip in clips)):
        return wanted
    moved = [_at_key_frame(item) for item in wanted]
    return [item for item in moved if item] if all(moved) else wanted


def cut(stretches: Sequence[Stretch], look: Look, out: Path) -> None:
    """Write stretches as one file at `out`. Raises SourceError when ffmpeg fails."""
    with whole(out) as part:
        if len(stretches) == 1:
            run(_arguments(stretches[0], look, None, part), about=out)
            return
        frame = None if stretches[0].copied else _frame(stretches, look)
        with tempfile.TemporaryDirectory(prefix=".reel-", dir=out.parent) as scratch:
            pieces = [Path(scratch) / f"{number:04d}{out.suffix}" for number in range(len(stretches))]
            for stretch, piece in zip(stretches, pieces, strict=True):
                run(_arguments(stretch, look, frame, piece), about=out)
            listing = Path(scratch) / "pieces.ffconcat"
            lines = [f"file '{piece.name}'" for piece in pieces]
            write_text(listing, "ffconcat version 1.0\n" + "\n".join(lines) + "\n")
            joined: list[str | Path] = ["-y", "-f", "concat", "-safe", "0", "-i", listing]
            media = stretches[0].clip.media.path
            form = [*_filled(tracks(media)), *quicktime_name(tracks(media), media, out)]
            run([*joined, *TRACKS, "-c", "copy", *(form if stretches[0].copied else []), part], about=out)


def suffix_for(stretches: Sequence[Stretch]) -> str:
    """The kind of file for stretches: MP4 where it plays, else the footage's own kind, or Matroska."""
    media = stretches[0].clip.media
    suffix = media.path.suffix.lower()
    if media.picture is None:
        return media.path.suffix
    if suffix in MATROSKA:
        return ".mkv"
    if not stretches[0].copied or plain(tracks(media.path)):
        return ".mp4"
    return ".mov" if suffix == ".mov" else ".mkv"


def key_frames(path: Path, start_s: float, end_s: float) -> list[float]:
    """Times of the key frames between two seconds of a file, counted from its start."""
    import av

    found: list[float] = []
    with av.open(str(path)) as container:
        stream = container.streams.video[0]
        zero = float((container.start_time or 0) / 1_000_000)
        container.seek(int(max(start_s + zero, 0) * 1_000_000))
        for packet in container.demux(stream):
            if packet.dts is None or packet.pts is None:
                continue
            at = float(packet.pts * packet.time_base) - zero
            if packet.is_keyframe and start_s <= at <= end_s:
                found.append(at)
            if float(packet.dts * packet.time_base) - zero > end_s:
                break
    return found


def _at_key_frame(stretch: Stretch) -> Stretch | None:
    keys = key_frames(stretch.clip.media.path, stretch.start_s - SLACK_S, stretch.start_s + 0.001)
    return replace(stretch, start_s=keys[-1] + AFTER_KEY_S, copied=True) if keys else None


def _arguments(stretch: Stretch, look: Look, frame: Frame | None, out: Path) -> list[str | Path]:
    source, length = stretch.clip.media.path, stretch.end_s - stretch.start_s
    lead = min(LEAD_S, stretch.start_s) if source.suffix.lower() in STREAMS and not stretch.copied else 0.0
    inner = ["-ss", f"{lead:.3f}", "-t", f"{length:.3f}"] if lead else []
    span = ["-ss", f"{stretch.start_s - lead:.3f}", "-t", f"{length + lead:.3f}"]
    opened: list[str | Path] = ["-y", *span, "-i", source, *inner]
    if stretch.copied:
        return [
            *opened,
            *TRACKS,
            "-c",
            "copy",
            "-avoid_negative_ts",
            "make_zero",
            *quicktime_name(tracks(source), source, out),
            out,
        ]
    return [*opened, *TRACKS, *_filters(look, frame), *ENCODE, *SOUND, "-movflags", "+faststart", out]


def _filled(given: Sequence[Track]) -> list[str]:
    """PCM sound has no room for the gap where a picture runs on to its last frame: silence goes there."""
    arguments = []
    for number, track in enumerate(track for track in given if track.kind == "audio"):
        if track.codec.startswith("pcm_"):
            arguments += [f"-c:a:{number}", track.codec, f"-filter:a:{number}", SILENCE]
    return arguments


def _filters(look: Look, frame: Frame | None) -> list[str]:
    chain = [UPRIGHT] if look.upright else []
    if frame:
        fit = f"scale={frame.wide}:{frame.high}:force_original_aspect_ratio=decrease"
        chain += [fit, f"pad={frame.wide}:{frame.high}:-1:-1", "setsar=1", f"fps={frame.rate}"]
    return ["-vf", ",".join(chain)] if chain else []


def _frame(stretches: Sequence[Stretch], look: Look) -> Frame | None:
    """What pieces of footage are fitted into: the first one's picture as shown, and the rate of all."""
    if stretches[0].clip.media.picture is None:
        return None
    wide, high = shown(stretches[0].clip)
    if look.upright:
        wide, high = min(wide, high * 9 // 16), min(high, wide * 16 // 9)
    pictures = [stretch.clip.media.picture for stretch in stretches]
    rates = {picture.fps for picture in pictures if picture and not picture.variable}
    even = len(rates) == 1 and all(picture and not picture.variable for picture in pictures)
    rate = Fraction(rates.pop()).limit_denominator(1001) if even else RATE
    return Frame(wide // 2 * 2, high // 2 * 2, rate)


def shown(clip: Clip) -> tuple[int, int]:
    """Width and height of the picture as it is shown, turned; (0, 0) without one."""
    picture = clip.media.picture
    if picture is None:
        return 0, 0
    turned = picture.rotation % 180 == 90
    return (picture.height, picture.width) if turned else (picture.width, picture.height)


def _upright(clip: Clip) -> bool:
    wide, high = shown(clip)
    return wide * 16 == high * 9

"""Many clips on one timeline, and the way back from a round's second to a clip's."""

from __future__ import annotations

import bisect
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from reviewkit.errors import ReviewkitError, SourceError
from reviewkit.footage.probe import Media, probe

OVERLAP_S = 1.0
"""Two cameras' clocks agree no better than this; a shorter overlap is not one."""


@dataclass(frozen=True, slots=True)
class Clip:
    """One file's place on the timeline: its seconds from `in_s` to `out_s` lie from `offset_s` on."""

    media: Media
    offset_s: float
    in_s: float
    out_s: float

    @property
    def length_s(self) -> float:
        return self.out_s - self.in_s

    @property
    def end_s(self) -> float:
        return self.offset_s + self.length_s


@dataclass(frozen=True, slots=True)
class Place:
    """A moment in a file: `second` counts from the file's own start."""

    clip: Clip
    second: float


@dataclass(frozen=True, slots=True)
class Timeline:
    """The clips of a round, joined without gaps in order. Clips that another covers wholly are `left_out`."""

    clips: tuple[Clip, ...]
    left_out: tuple[Media, ...] = ()

    @property
    def duration_s(self) -> float:
        return self.clips[-1].end_s if self.clips else 0.0

    @property
    def seams(self) -> tuple[float, ...]:
        """Where one clip ends and the next begins, in seconds of the round."""
        return tuple(clip.offset_s for clip in self.clips[1:])

    def at(self, second: float) -> Place:
        """The file and the second in it that show the round's `second`, the nearest one beyond the ends."""
        offsets = [clip.offset_s for clip in self.clips]
        clip = self.clips[max(bisect.bisect_right(offsets, second) - 1, 0)]
        inside = min(max(second - clip.offset_s, 0.0), clip.length_s)
        return Place(clip, clip.in_s + inside)

    def spans(self, start_s: float, end_s: float) -> list[tuple[Clip, float, float]]:
        """The stretches of files that make up a span of the round, in each file's own seconds."""
        found = []
        for clip in self.clips:
            first, last = max(start_s, clip.offset_s), min(end_s, clip.end_s)
            if first < last:
                shift = clip.in_s - clip.offset_s
                found.append((clip, first + shift, last + shift))
        return found


def join(paths: Sequence[Path], by_time: bool = False) -> Timeline:
    """Probe files and lay them end to end, in the order given or, `by_time`, in that of their recording.

    By time, a moment that two cameras filmed appears once, as the clip that began earlier shows it: heard
    twice, a stroke would count twice. Clips of one camera never overlap; what looks like it is a recording
    that the camera split, all parts stamped alike. Raises SourceError for a file that is no footage.
    """
    if not paths:
        raise ReviewkitError("No footage given.", "Name at least one video, sound or timed-text file.")
    files = [probe(path) for path in paths]
    if not by_time:
        return Timeline(_end_to_end([(media, 0.0) for media in files]))
    for media in files:
        if media.recorded_at is None:
            raise SourceError(
                media.path, "says no recording time.", "Give the clips in order, without --sort time."
            )
    files.sort(key=lambda media: (media.recorded_at, media.path.name))
    kept, left_out = _without_overlap(files)
    return Timeline(_end_to_end(kept), tuple(left_out))


def _without_overlap(files: Sequence[Media]) -> tuple[list[tuple[Media, float]], list[Media]]:
    """Each file with the second from which it shows something new, and those that show nothing new."""
    kept: list[tuple[Media, float]] = []
    left_out: list[Media] = []
    seen_until = datetime.min.replace(tzinfo=UTC)
    for media in files:
        assert media.recorded_at is not None
        begin, length = media.recorded_at, timedelta(seconds=media.duration_s)
        if kept and kept[-1][0].camera == media.camera:
            begin = max(begin, seen_until)
        covered = max((seen_until - begin).total_seconds(), 0.0)
        if covered >= media.duration_s:
            left_out.append(media)
            continue
        kept.append((media, covered if covered > OVERLAP_S else 0.0))
        seen_until = begin + length
    return kept, left_out


def _end_to_end(files: Sequence[tuple[Media, float]]) -> tuple[Clip, ...]:
    clips: list[Clip] = []
    offset = 0.0
    for media, in_s in files:
        clips.append(Clip(media, offset, in_s, media.duration_s))
        offset = clips[-1].end_s
    return tuple(clips)

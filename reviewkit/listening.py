"""Hearing a round: its clips from end to end, or stretches of it in another manner. Results are kept."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from reviewkit.cache import cache_dir, footage_hash
from reviewkit.errors import SourceError
from reviewkit.footage.sound import samples
from reviewkit.footage.timeline import Clip, Timeline
from reviewkit.model import Plan, Segment, Transcript, Word
from reviewkit.progress import Progress
from reviewkit.speech import decode, vocabulary, weights
from reviewkit.speech.listener import Listener, Recording
from reviewkit.speech.manner import FIRST, Manner

Span = tuple[float, float]
"""Start and end in seconds of the round."""


@dataclass(frozen=True, slots=True)
class Listening:
    """Footage to hear and how. `model` and `device` are as the user named them."""

    timeline: Timeline
    plan: Plan
    model: str
    device: str
    progress: Progress

    def whole(self) -> Transcript:
        """The words of all clips on the timeline. Raises SourceError where there is no sound or speech."""
        clips = [clip for clip in self.timeline.clips if clip.media.track is not None]
        first = self.timeline.clips[0].media.path
        if not clips:
            raise SourceError(first, "has no sound to listen to.", "Give footage with its sound.")
        name, listener = self._listener()
        heard = self._hear(f"Listening with {name}", listener, [_recording(clip, FIRST) for clip in clips])
        segments = tuple(
            piece for clip, found in zip(clips, heard, strict=True) for piece in placed(found, clip)
        )
        if not segments:
            raise SourceError(first, "holds no speech that could be heard.", "Check the microphone's track.")
        language = self.plan.language if self.plan.language != "auto" else "en"
        return Transcript(segments, name, language, self.timeline.duration_s, listener.settings)

    def stretches(self, spans: Sequence[Span], manner: Manner) -> list[tuple[Segment, ...]]:
        """The words of each span, on the timeline, heard in `manner`."""
        pieces = [
            (number, *piece)
            for number, span in enumerate(spans)
            for piece in self.timeline.spans(*span)
            if piece[0].media.track is not None
        ]
        recordings = [_recording(clip, manner, first, last) for _, clip, first, last in pieces]
        heard = self._hear(f"Listening again, {manner.name}", self._listener()[1], recordings)
        found: list[list[Segment]] = [[] for _ in spans]
        for (number, clip, first, _), segments in zip(pieces, heard, strict=True):
            part = replace(clip, in_s=0.0, offset_s=clip.offset_s + first - clip.in_s)
            found[number] += placed(_at_pace(segments, manner.pace), part)
        return [tuple(segments) for segments in found]

    def _listener(self) -> tuple[str, Listener]:
        """The weights' name, and a listener with them."""
        found = weights.find(self.model, cache_dir() / "models", self.progress.say)
        hint = vocabulary.prompt(self.plan.names)
        compute, root = decode.choose(self.device), cache_dir() / "speech"
        return found.name, Listener(found, compute, self.plan.language, hint, root)

    def _hear(
        self, title: str, listener: Listener, recordings: Sequence[Recording]
    ) -> list[tuple[Segment, ...]]:
        with self.progress.stage(title, sum(recording.length_s for recording in recordings)) as done:
            return listener.hear(recordings, done)


def placed(segments: Sequence[Segment], clip: Clip) -> list[Segment]:
    """A clip's words moved to the round's timeline; those outside the part that is shown are left out."""
    shift = clip.offset_s - clip.in_s
    moved = []
    for segment in segments:
        words = tuple(
            _moved(word, clip, shift)
            for word in segment.words
            if clip.in_s <= (word.start_s + word.end_s) / 2 < clip.out_s
        )
        if words:
            moved.append(Segment(words))
    return moved


def _recording(clip: Clip, manner: Manner, first_s: float = 0.0, last_s: float | None = None) -> Recording:
    """A clip's sound, or that between two of its file's seconds, which is kept apart from the whole.

    Its own seconds are those of the sound as it comes in that manner.
    """
    content, length = footage_hash(clip.media), clip.media.duration_s
    if last_s is None:
        return Recording(content, length, _opener(clip, manner, 0.0, None))
    named = f"{content} {first_s:.3f} {last_s:.3f} {manner.low_cut_hz:g} {manner.pace:g}"
    part = hashlib.sha256(named.encode()).hexdigest()
    length = last_s - first_s
    return Recording(part, length / manner.pace, _opener(clip, manner, first_s, length))


def _opener(clip: Clip, manner: Manner, start_s: float, length_s: float | None) -> Callable[[], Any]:
    return lambda: samples(
        clip.media.path,
        clip.media.track or 0,
        start_s,
        length_s,
        low_cut_hz=manner.low_cut_hz,
        pace=manner.pace,
    )


def _at_pace(segments: Sequence[Segment], pace: float) -> list[Segment]:
    """Words heard in sound that ran at `pace`, at the times when they were said."""
    return [
        Segment(
            tuple(
                replace(word, start_s=word.start_s * pace, end_s=word.end_s * pace) for word in segment.words
            )
        )
        for segment in segments
    ]


def _moved(word: Word, clip: Clip, shift: float) -> Word:
    start = min(max(word.start_s, clip.in_s), clip.out_s) + shift
    end = min(max(word.end_s, clip.in_s), clip.out_s) + shift
    return replace(word, start_s=max(start, 0.0), end_s=max(end, start, 0.0))

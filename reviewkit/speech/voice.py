"""Where there is talk: voice activity over a stream, cut into stretches that a speech model takes at once.

The detector is the Silero model that faster-whisper carries, run piece by piece with its state kept, so that
a stream of any length gives what the whole recording would give.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

import numpy as np
import numpy.typing as npt

RATE = 16_000
FRAME = 512
"""Samples a probability stands for, 32 ms: what the detector was trained on."""
_CONTEXT = 64

Samples = npt.NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class VoiceSettings:
    """Talk begins where the probability reaches `onset` and ends where it stays below `offset` for
    `silence_s`. A region is padded by `pad_s` on both sides and never longer than `longest_s`."""

    onset: float = 0.5
    offset: float = 0.35
    silence_s: float = 0.16
    pad_s: float = 0.4
    longest_s: float = 29.0


@dataclass(frozen=True, slots=True)
class Region:
    """A piece of talk: its first sample in the recording and its samples."""

    first: int
    samples: Samples

    @property
    def last(self) -> int:
        return self.first + len(self.samples)


class Detector:
    """Probability of talk, frame by frame, with the state kept between calls."""

    def __init__(self) -> None:
        from faster_whisper.vad import get_vad_model

        self._session: Any = get_vad_model().session
        self._h = np.zeros((1, 1, 128), np.float32)
        self._c = np.zeros((1, 1, 128), np.float32)
        self._context = np.zeros((1, _CONTEXT), np.float32)

    def __call__(self, samples: Samples) -> npt.NDArray[np.float32]:
        """One probability for each FRAME of `samples`, whose length is a multiple of FRAME."""
        frames = samples.reshape(-1, FRAME)
        context = np.concatenate([self._context, frames[:-1, -_CONTEXT:]])
        self._context = frames[-1:, -_CONTEXT:].copy()
        inputs = {"input": np.concatenate([context, frames], 1), "h": self._h, "c": self._c}
        output, self._h, self._c = self._session.run(None, inputs)
        return np.asarray(output, np.float32).reshape(-1)


@dataclass(slots=True)
class _Talk:
    """The walk over frames: where talk began, and since when it has been silent."""

    settings: VoiceSettings
    frame: int = 0
    began: int | None = None
    silent_since: int | None = None
    heard: list[float] = field(default_factory=list)

    def step(self, probability: float) -> tuple[int, int] | None:
        """Take one frame; return a finished piece of talk as frames, first included and last not."""
        now, self.frame = self.frame, self.frame + 1
        if self.began is None:
            if probability >= self.settings.onset:
                self.began, self.silent_since, self.heard = now, None, [probability]
            return None
        self.heard.append(probability)
        if probability >= self.settings.onset:
            self.silent_since = None
        elif probability < self.settings.offset and self.silent_since is None:
            self.silent_since = now
        if self.silent_since is not None:
            if (now - self.silent_since) * FRAME >= self.settings.silence_s * RATE:
                return self._end(self.silent_since)
            return None
        if (now + 1 - self.began) * FRAME >= (self.settings.longest_s - 2 * self.settings.pad_s) * RATE:
            return self._split()
        return None

    def close(self) -> tuple[int, int] | None:
        return None if self.began is None else self._end(self.frame)

    def _end(self, at: int) -> tuple[int, int]:
        assert self.began is not None
        piece, self.began, self.heard = (self.began, at), None, []
        return piece

    def _split(self) -> tuple[int, int]:
        """Cut talk without a pause at its quietest frame in the last third."""
        assert self.began is not None
        tail = len(self.heard) * 2 // 3
        quiet = tail + int(np.argmin(self.heard[tail:]))
        piece = (self.began, self.began + quiet)
        self.began, self.heard = self.began + quiet, self.heard[quiet:]
        return piece


def regions(chunks: Iterable[Samples], settings: VoiceSettings) -> Iterator[Region]:
    """Yield the pieces of talk in a recording given as chunks of any length, in order, not overlapping.

    Keeps only the samples of the piece being heard. Two pieces share the silence between them when it is too
    short for both paddings.
    """
    buffer = _Buffer()
    pad = int(settings.pad_s * RATE)
    held: tuple[int, int] | None = None
    for piece, heard_to in _pieces(chunks, settings, buffer):
        if held is not None and piece is not None:
            middle = (held[1] + piece[0]) // 2
            yield buffer.take(held[0], min(held[1] + pad, middle))
            held = (max(piece[0] - pad, middle), piece[1])
        elif held is not None and heard_to >= held[1] + 2 * pad:
            yield buffer.take(held[0], held[1] + pad)
            held = None
        elif piece is not None:
            held = (max(piece[0] - pad, 0), piece[1])
        buffer.forget(held[0] if held else heard_to - pad)
    if held is not None:
        yield buffer.take(held[0], held[1] + pad)


def _pieces(
    chunks: Iterable[Samples], settings: VoiceSettings, buffer: _Buffer
) -> Iterator[tuple[tuple[int, int] | None, int]]:
    """Finished pieces of talk as samples, and from time to time None; each with how far all is silent."""
    detector, talk = Detector(), _Talk(settings)
    rest = np.zeros(0, np.float32)
    for chunk in chunks:
        buffer.add(chunk)
        rest = np.concatenate([rest, chunk])
        whole = len(rest) // FRAME * FRAME
        if not whole:
            continue
        for probability in detector(rest[:whole]):
            piece = talk.step(float(probability))
            if piece:
                yield (piece[0] * FRAME, piece[1] * FRAME), talk.frame * FRAME
        rest = rest[whole:]
        yield None, (talk.frame if talk.began is None else talk.began) * FRAME
    if len(rest):
        padded = np.concatenate([rest, np.zeros(FRAME - len(rest), np.float32)])
        piece = talk.step(float(detector(padded)[0]))
        if piece:
            yield (piece[0] * FRAME, piece[1] * FRAME), talk.frame * FRAME
    piece = talk.close()
    if piece:
        yield (piece[0] * FRAME, piece[1] * FRAME), talk.frame * FRAME


class _Buffer:
    """The last samples of a stream, by their place in the recording."""

    def __init__(self) -> None:
        self._first = 0
        self._samples = np.zeros(0, np.float32)

    def add(self, chunk: Samples) -> None:
        self._samples = np.concatenate([self._samples, chunk])

    def take(self, first: int, last: int) -> Region:
        begin = max(first - self._first, 0)
        return Region(self._first + begin, self._samples[begin : max(last - self._first, begin)].copy())

    def forget(self, before: int) -> None:
        """Drop the samples before `before`."""
        drop = min(max(before - self._first, 0), len(self._samples))
        if drop:
            self._samples = self._samples[drop:].copy()
            self._first += drop

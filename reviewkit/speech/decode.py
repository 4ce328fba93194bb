"""A batch of windows through faster-whisper: words with times, in the recording's seconds."""

from __future__ import annotations

import bisect
import os
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from reviewkit.errors import ModelError, ReviewkitError
from reviewkit.model import Segment, Word
from reviewkit.speech.vocabulary import echoes
from reviewkit.speech.voice import RATE
from reviewkit.speech.weights import Weights
from reviewkit.speech.windows import Window

if TYPE_CHECKING:
    from faster_whisper.transcribe import Segment as Heard

BEAM = 5
"""Readings that the model follows at a time."""
PAUSE_S = 0.7
"""A silence this long between words begins a new segment."""
# The model's own measures of a failed window, with the limits published with Whisper.
_REPETITION, _SILENT, _UNSURE = 2.4, 0.6, -1.0


@dataclass(frozen=True, slots=True)
class Compute:
    """How the model runs on this machine. `threads` 0 lets CTranslate2 choose (on a GPU)."""

    device: str
    kind: str
    threads: int
    batch: int


def choose(device: str) -> Compute:
    """`device` is cpu, cuda or auto. Raises ReviewkitError for cuda where there is no GPU to use."""
    import ctranslate2

    gpus = ctranslate2.get_cuda_device_count()
    if device == "cuda" and not gpus:
        raise ReviewkitError("No CUDA GPU can be used here.", "Use --device cpu, or see: reviewkit doctor")
    if device == "cuda" or (device == "auto" and gpus):
        kinds = ctranslate2.get_supported_compute_types("cuda")
        return Compute("cuda", "float16" if "float16" in kinds else "float32", 0, 32)
    kinds = ctranslate2.get_supported_compute_types("cpu")
    return Compute("cpu", "int8" if "int8" in kinds else "float32", _cores(), 8)


class Decoder:
    """A loaded model. `language` is a code such as en, or auto: then the first batch decides."""

    def __init__(self, weights: Weights, compute: Compute, language: str, hint: str) -> None:
        from faster_whisper import BatchedInferencePipeline, WhisperModel

        try:
            self._model: Any = WhisperModel(
                str(weights.path),
                device=compute.device,
                compute_type=compute.kind,
                cpu_threads=compute.threads,
                local_files_only=True,
            )
        except (RuntimeError, ValueError, OSError) as error:
            raise ModelError(
                f"The speech weights in {weights.path} cannot be loaded ({str(error).splitlines()[0]}).",
                "Give a CTranslate2 Whisper model, or leave --model out.",
            ) from error
        known = self._model.supported_languages
        if language != "auto" and language not in known:
            if len(known) == 1:
                raise ModelError(f"The weights '{weights.name}' know English only.", "Use --model base.")
            raise ReviewkitError(f"'{language}' is no language code.", "Write a code such as en, de or auto.")
        self.language = None if language == "auto" else language
        self._pipeline: Any = BatchedInferencePipeline(self._model)
        self._hint = hint

    def __call__(self, windows: Sequence[Window]) -> list[tuple[Segment, ...]]:
        """The segments of each window, in the recording's seconds."""
        ends = np.cumsum([len(window.samples) for window in windows])
        starts = ends - [len(window.samples) for window in windows]
        # Half a sample up, because the pipeline rounds seconds down to samples.
        clips = [
            {"start": (a + 0.5) / RATE, "end": (b + 0.5) / RATE} for a, b in zip(starts, ends, strict=True)
        ]
        heard, info = self._pipeline.transcribe(
            np.concatenate([window.samples for window in windows]),
            language=self.language,
            clip_timestamps=clips,
            batch_size=len(windows),
            beam_size=BEAM,
            word_timestamps=True,
            hotwords=self._hint,
        )
        self.language = info.language
        frames = [int(clip["start"] * self._model.frames_per_second) for clip in clips]
        found: list[list[Heard]] = [[] for _ in windows]
        for item in heard:
            found[bisect.bisect_right(frames, item.seek) - 1].append(item)
        return [
            self._segments(window, items, clip["start"])
            for window, items, clip in zip(windows, found, clips, strict=True)
        ]

    def _segments(self, window: Window, heard: Sequence[Heard], start_s: float) -> tuple[Segment, ...]:
        if any(item.compression_ratio > _REPETITION for item in heard):
            heard, start_s = self._again(window), 0.0
        words: list[Word] = []
        for item in heard:
            silent = item.no_speech_prob > _SILENT and item.avg_logprob < _UNSURE
            if not silent and not echoes(item.text, self._hint):
                words += _words(window, item, start_s)
        return split_at_pauses(words)

    def _again(self, window: Window) -> list[Heard]:
        """A window that came out as one phrase over and over, once more with rising temperature, no hint."""
        heard, _ = self._model.transcribe(
            window.samples,
            language=self.language,
            beam_size=BEAM,
            word_timestamps=True,
            condition_on_previous_text=False,
        )
        return [item for item in heard if item.compression_ratio <= _REPETITION]


def split_at_pauses(words: Sequence[Word], pause_s: float = PAUSE_S) -> tuple[Segment, ...]:
    """Segments of words without a silence of `pause_s` inside, in time order."""
    groups: list[list[Word]] = []
    for word in words:
        if groups and word.start_s - groups[-1][-1].end_s < pause_s:
            groups[-1].append(word)
        else:
            groups.append([word])
    return tuple(Segment(tuple(group)) for group in groups)


def _words(window: Window, heard: Heard, start_s: float) -> list[Word]:
    """Words as written: what follows without a space (7, -iron) is joined to the word before it.

    Rounded as they are kept, so that a word just heard and one read back are the same.
    """
    words: list[Word] = []
    for item in heard.words or ():
        text = item.word.strip()
        start, end = window.place(item.start - start_s, max(item.end, item.start) - start_s)
        word = Word(text, round(start, 3), round(end, 3), round(min(max(item.probability, 0.0), 1.0), 3))
        if words and text and not item.word.startswith(" "):
            words.append(_joined(words.pop(), word))
        elif text:
            words.append(word)
    return words


def _joined(first: Word, second: Word) -> Word:
    end_s = max(first.end_s, second.end_s)
    return Word(first.text + second.text, first.start_s, end_s, min(first.probability, second.probability))


def _cores() -> int:
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1

"""Recordings in, words out: decoding and voice activity run ahead of the speech model, results are kept."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from reviewkit.model import Segment
from reviewkit.speech import decode
from reviewkit.speech.ahead import ahead
from reviewkit.speech.store import Store
from reviewkit.speech.voice import Samples, VoiceSettings, regions
from reviewkit.speech.weights import Weights
from reviewkit.speech.windows import Window, pack

Heard = Callable[[float], None]
"""Told how many seconds of all recordings are behind us."""


@dataclass(frozen=True, slots=True)
class Recording:
    """Sound to listen to: its content hash, its length, and how to open it as chunks of samples."""

    content: str
    length_s: float
    open: Callable[[], Iterator[Samples]]


@dataclass(frozen=True, slots=True)
class _Item:
    """A window of recording number `number`, or its end when `window` is None."""

    number: int
    window: Window | None


class Listener:
    """Hears recordings with one set of weights and settings; `root` is the folder where results are kept."""

    def __init__(
        self,
        weights: Weights,
        compute: decode.Compute,
        language: str,
        hint: str,
        root: Path,
    ) -> None:
        self._weights, self._compute, self._language = weights, compute, language
        self._hint, self._root = hint, root
        self._voice = VoiceSettings()

    @property
    def settings(self) -> dict[str, str]:
        """Everything that what is heard depends on, apart from the sound."""
        size = (self._weights.path / "model.bin").stat().st_size
        return {
            "weights": f"{self._weights.name} ({size} bytes)",
            "compute": self._compute.kind,
            "language": self._language,
            "hint": self._hint,
            "beam": str(decode.BEAM),
            "pause_s": str(decode.PAUSE_S),
            "voice": str(self._voice),
        }

    def hear(self, recordings: Sequence[Recording], heard: Heard) -> list[tuple[Segment, ...]]:
        """The segments of each recording in its own seconds. What was heard before is not heard again."""
        settings = repr(sorted(self.settings.items()))
        stores = [Store(self._root, recording.content, settings) for recording in recordings]
        found = {number: kept for number, store in enumerate(stores) if (kept := store.all()) is not None}
        before = sum(recordings[number].length_s for number in found)
        heard(before)
        missing = [number for number in range(len(recordings)) if number not in found]
        if missing:
            parts: dict[int, list[Segment]] = {number: [] for number in missing}
            items = ahead(_items(recordings, missing, self._voice), room=2 * self._compute.batch)
            with closing(items):
                for item in self._segments(items, stores, parts):
                    recording = recordings[item.number]
                    if item.window is None:
                        found[item.number] = tuple(parts.pop(item.number))
                        stores[item.number].finish(found[item.number])
                        before += recording.length_s
                        heard(before)
                    else:
                        heard(before + min(item.window.end_s, recording.length_s))
        return [found[number] for number in range(len(recordings))]

    def _segments(
        self, items: Iterable[_Item], stores: Sequence[Store], parts: dict[int, list[Segment]]
    ) -> Iterator[_Item]:
        """Fill `parts` batch by batch; yield each item once its segments are in there and on disk."""
        decoder: decode.Decoder | None = None
        for batch in _batches(items, stores, self._compute.batch):
            fresh = [(item.number, item.window) for item, kept in batch if item.window and kept is None]
            if fresh and decoder is None:
                decoder = decode.Decoder(self._weights, self._compute, self._language, self._hint)
            new = iter(decoder([window for _, window in fresh]) if decoder and fresh else [])
            for item, kept in batch:
                if item.window:
                    segments = next(new) if kept is None else kept
                    if kept is None:
                        stores[item.number].keep(item.window.name, segments)
                    parts[item.number] += segments
                yield item


def _items(recordings: Sequence[Recording], numbers: Sequence[int], voice: VoiceSettings) -> Iterator[_Item]:
    for number in numbers:
        for window in pack(regions(recordings[number].open(), voice)):
            yield _Item(number, window)
        yield _Item(number, None)


def _batches(
    items: Iterable[_Item], stores: Sequence[Store], size: int
) -> Iterator[list[tuple[_Item, tuple[Segment, ...] | None]]]:
    """Items in order, each with what is kept of it, cut so that at most `size` windows are still unheard."""
    batch: list[tuple[_Item, tuple[Segment, ...] | None]] = []
    unheard = 0
    for item in items:
        kept = stores[item.number].window(item.window.name) if item.window else None
        batch.append((item, kept))
        unheard += item.window is not None and kept is None
        if unheard == size:
            yield batch
            batch, unheard = [], 0
    if batch:
        yield batch

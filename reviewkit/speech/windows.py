"""Pieces of talk packed into windows of at most thirty seconds, the length a speech model takes at once.

A model spends the same on a window whether it is full or not, so the silence between pieces is left out and
the times are mapped back afterwards.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from reviewkit.speech.voice import RATE, Region, Samples

WINDOW_S = 30.0


@dataclass(frozen=True, slots=True)
class Window:
    """`pieces` are the first and last sample of each piece in the recording; `samples` holds them joined."""

    pieces: tuple[tuple[int, int], ...]
    samples: Samples

    @property
    def name(self) -> str:
        """Tells windows of one recording apart, and one and the same in every run."""
        return f"{self.pieces[0][0]:09d}-{self.pieces[-1][1]:09d}"

    @property
    def end_s(self) -> float:
        return self.pieces[-1][1] / RATE

    def place(self, start_s: float, end_s: float) -> tuple[float, float]:
        """Start and end in the recording of a word heard at `start_s` to `end_s` of the window.

        The piece is that of the word's middle, and the word is kept inside it.
        """
        middle = (start_s + end_s) / 2 * RATE
        joined = 0
        for first, last in self.pieces:
            if middle < joined + last - first or (first, last) == self.pieces[-1]:
                shift = first - joined
                return (
                    min(max(start_s * RATE + shift, first), last) / RATE,
                    min(max(end_s * RATE + shift, first), last) / RATE,
                )
            joined += last - first
        raise AssertionError("a window has pieces")


def pack(regions: Iterable[Region], longest_s: float = WINDOW_S) -> Iterator[Window]:
    """Fill windows with regions in order; a region is never divided, so none may be longer than a window."""
    waiting: list[Region] = []
    length = 0
    for region in regions:
        if waiting and length + len(region.samples) > longest_s * RATE:
            yield _window(waiting)
            waiting, length = [], 0
        waiting.append(region)
        length += len(region.samples)
    if waiting:
        yield _window(waiting)


def _window(regions: list[Region]) -> Window:
    samples = np.concatenate([region.samples for region in regions])
    return Window(tuple((region.first, region.last) for region in regions), samples)

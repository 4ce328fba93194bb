"""Candidate ball strikes in a camera's own sound: a broadband crack, soon over, with nothing like it near.

In three bands from 1 to 7.5 kHz, above wind and most of a voice, the power of every 2 ms is compared with
what lies just before it and just after it. A strike is far above both in at least two of the bands; so a
voice that goes on, a ring that lasts or a gust falls short. Claps, a rattling trolley and consonants are just
as short but come in series, and what has its like within a second on either side is left out. A single clap
or knock has not: it is told as a candidate too. For that reason no reading rests on candidates.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from reviewkit.footage.sound import RATE

BANDS_HZ = ((1000, 2500), (2500, 5000), (5000, 7500))
HOP = 32
"""Samples in a frame: 2 ms, shorter than a strike lasts."""
STRONG_DB = 12.0
"""The least strength of a strike."""
ALONE_DB = 8.0
"""How far a strike stands above all else within a second of it."""
_BEFORE, _SOON, _LATER = (-30, -4), (10, 30), (30, 75)
"""Frames it is compared with: 60 to 8 ms before the crack, 20 to 60 and 60 to 150 ms after it."""
_SOON_DB = 6.0
"""By so much a strike may still sound above the rest 20 to 60 ms later."""
_NEAR, _OWN, _ECHO = 500, 25, 75
"""Frames on either side in which a strike is alone; those around it that are its own; those of its echo."""
_CONTEXT = _NEAR + _LATER[1] + 5

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Strike:
    """A candidate: seconds from the beginning of the sound, and decibels above its surroundings."""

    at_s: float
    strength_db: float


def strikes(chunks: Iterable[npt.NDArray[np.float32]]) -> Iterator[Strike]:
    """Candidates in order, from mono sound at RATE in chunks of any length. Memory does not grow with it."""
    levels = np.empty((0, len(BANDS_HZ)))
    first, told = 0, 0
    for more in _powers(chunks):
        levels = np.concatenate([levels, more])
        ready = first + len(levels) - _CONTEXT
        if ready > told:
            yield from _found(levels, first, told, ready)
            told = ready
            keep = max(told - _CONTEXT - first, 0)
            levels, first = levels[keep:], first + keep
    yield from _found(levels, first, told, first + len(levels))


def _powers(chunks: Iterable[npt.NDArray[np.float32]]) -> Iterator[Floats]:
    """The power of each whole frame in each band, a row a frame; filters run on from chunk to chunk."""
    from scipy.signal import butter, sosfilt

    filters = [butter(2, band, "bandpass", fs=RATE, output="sos") for band in BANDS_HZ]
    states: list[Any] = [np.zeros((len(sos), 2)) for sos in filters]
    left = np.empty(0)
    for chunk in chunks:
        sound = np.concatenate([left, chunk.astype(np.float64)])
        whole = len(sound) // HOP * HOP
        left = sound[whole:]
        if not whole:
            continue
        columns = []
        for number, sos in enumerate(filters):
            heard, states[number] = sosfilt(sos, sound[:whole], zi=states[number])
            columns.append(np.mean(heard.reshape(-1, HOP) ** 2, axis=1))
        yield np.column_stack(columns)


def _found(levels: Floats, first: int, start: int, stop: int) -> Iterator[Strike]:
    """Strikes among frames `start` to `stop` of the sound, of which `levels` holds those from `first` on."""
    if not len(levels):
        return
    strength = strengths(levels)
    for near in np.flatnonzero(strength[start - first : stop - first] >= STRONG_DB):
        index = int(near) + start - first
        own = strength[max(index - _OWN, 0) : index + _OWN]
        if strength[index] < own.max() or index > max(index - _OWN, 0) + int(own.argmax()):
            continue
        before = strength[max(index - _NEAR, 0) : max(index - _OWN, 0)]
        after = strength[index + _ECHO : index + _NEAR]
        if max(before.max(initial=0.0), after.max(initial=0.0)) <= strength[index] - ALONE_DB:
            yield Strike(float((first + index) * HOP / RATE), float(strength[index]))


def strengths(levels: Floats) -> Floats:
    """For each frame, how many decibels it stands above what comes before and after it: the middle band's."""
    from scipy.ndimage import maximum_filter1d

    # Digital silence would make anything loud: 16-bit sound has a floor of its own.
    floor = 1e-9
    padded = np.pad(levels, ((-_BEFORE[0], _LATER[1]), (0, 0)), mode="edge")
    sums = np.vstack([np.zeros(levels.shape[1]), np.cumsum(padded, axis=0)])

    def around(span: tuple[int, int]) -> Floats:
        begin, end = span[0] - _BEFORE[0], span[1] - _BEFORE[0]
        count = len(levels)
        mean = (sums[end : end + count] - sums[begin : begin + count]) / (end - begin)
        return np.asarray(np.maximum(mean, 0.0) + floor)

    peak = maximum_filter1d(levels, 3, axis=0) + floor
    rise = 10 * np.log10(peak / around(_BEFORE))
    soon = 10 * np.log10(peak / around(_SOON)) + _SOON_DB
    later = 10 * np.log10(peak / around(_LATER))
    return np.asarray(np.median(np.minimum(np.minimum(rise, soon), later), axis=1))

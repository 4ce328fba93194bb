"""Generated sound with strikes at known times: invented cracks in wind, talk, claps and a trolley's rattle.

A model of the sounds, not recordings: a strike is a click and a few modes that ring for 3 to 25 ms, more or
less dull and soft, with an echo. Talk is the synthetic speech of the fixture rounds. No figure taken from it
says how well real strikes are found.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from scipy.signal import butter, sosfilt

from fixtures.makers.weather import birds, wind
from reviewkit.footage.sound import RATE, samples

Sound = np.ndarray[Any, np.dtype[np.float32]]
ROUNDS = Path(__file__).parents[2] / "fixtures" / "rounds"
SCENES = ("wind", "talk", "clapping", "trolley", "knocks")
APART_S = 4.0


@dataclass(frozen=True, slots=True)
class Take:
    """Sound at RATE, and the seconds at which a ball is struck in it."""

    sound: Sound
    strikes: tuple[float, ...]


def take(scene: str, seed: int, minutes: float = 5.0, count: int = 20) -> Take:
    """`count` strikes in weather of changing strength and, besides, what the scene is named for.

    Strikes in talk fall into its pauses or into it, as chance has it; claps and rattles come for a while and
    go; knocks are single ones, of a bag or a gate, as many as there are strikes.
    """
    dice = np.random.default_rng([seed, SCENES.index(scene)])
    seconds = 60 * minutes
    sound = dice.uniform(0.008, 0.03) * wind(seconds, dice) + 0.004 * birds(seconds, dice)
    sound = sound.astype(np.float64) + 0.0008 * dice.normal(size=len(sound))
    if scene == "talk":
        sound += dice.uniform(0.3, 1.0) * _talk(len(sound), dice)
    times = np.sort(_apart(seconds, count, dice))
    if scene == "clapping":
        _series(sound, dice, rate=(3, 12), length=(2, 6), every=20, make=_clap)
    if scene == "trolley":
        _series(sound, dice, rate=(5, 14), length=(8, 25), every=40, make=_rattle)
    if scene == "knocks":
        for at in dice.uniform(1, seconds - 1, size=count):
            _add(sound, at, 10 ** dice.uniform(-1.6, -0.5) * _rattle(dice))
    for at in times:
        _add(sound, at, _strike(dice))
    return Take(np.clip(sound, -1, 1).astype(np.float32), tuple(float(at) for at in times))


def _apart(seconds: float, count: int, dice: np.random.Generator) -> np.ndarray[Any, Any]:
    """Times with APART_S between them, as strokes have."""
    room = seconds - 4 - APART_S * count
    return np.sort(dice.uniform(0, room, size=count)) + 2 + APART_S * np.arange(count)


def _strike(dice: np.random.Generator) -> np.ndarray[Any, Any]:
    """Peak from 0.03 (a putt, or far away) to 0.6 of full scale."""
    time = np.arange(int(0.12 * RATE)) / RATE
    sound = dice.normal(size=len(time)) * np.exp(-time / dice.uniform(0.0008, 0.003))
    for _ in range(dice.integers(2, 6)):
        pitch, ring = dice.uniform(900, 7000), dice.uniform(0.003, 0.025)
        turn = dice.uniform(0, 6)
        sound += dice.uniform(0.2, 0.9) * np.sin(2 * np.pi * pitch * time + turn) * np.exp(-time / ring)
    far = sosfilt(butter(1, dice.uniform(2500, 7500), "low", fs=RATE, output="sos"), sound)
    late = int(dice.uniform(0.004, 0.06) * RATE)
    far[late:] += dice.uniform(0, 0.3) * far[:-late]
    return np.asarray(far / np.abs(far).max() * 10 ** dice.uniform(-1.5, -0.22))


def _clap(dice: np.random.Generator) -> np.ndarray[Any, Any]:
    time = np.arange(int(0.08 * RATE)) / RATE
    noise = dice.normal(size=len(time)) * np.exp(-time / dice.uniform(0.003, 0.012))
    shaped = sosfilt(butter(1, [700, 5000], "band", fs=RATE, output="sos"), noise)
    return np.asarray(shaped / np.abs(shaped).max())


def _rattle(dice: np.random.Generator) -> np.ndarray[Any, Any]:
    """Metal or plastic knocking: a click and modes that ring a little longer than a strike's."""
    time = np.arange(int(0.25 * RATE)) / RATE
    sound = 0.6 * dice.normal(size=len(time)) * np.exp(-time / 0.002)
    for _ in range(dice.integers(2, 5)):
        pitch, ring = dice.uniform(600, 6000), dice.uniform(0.004, 0.06)
        sound += dice.uniform(0.3, 1.0) * np.sin(2 * np.pi * pitch * time) * np.exp(-time / ring)
    return np.asarray(sound / np.abs(sound).max())


def _series(
    sound: np.ndarray[Any, Any],
    dice: np.random.Generator,
    *,
    rate: tuple[float, float],
    length: tuple[float, float],
    every: float,
    make: Any,
) -> None:
    """Spells of `length` seconds about `every` so many seconds, with `rate` sounds a second, uneven."""
    at = dice.uniform(0, every)
    while at < len(sound) / RATE - length[1]:
        level, pace, end = 10 ** dice.uniform(-1.5, -0.6), dice.uniform(*rate), at + dice.uniform(*length)
        while at < end:
            _add(sound, at, level * dice.uniform(0.3, 1.0) * make(dice))
            at += dice.exponential(0.5 / pace) + 0.5 / pace
        at += dice.exponential(every)


def _add(sound: np.ndarray[Any, Any], at_s: float, made: np.ndarray[Any, Any]) -> None:
    start = int(at_s * RATE)
    part = sound[start : start + len(made)]
    part += made[: len(part)]


def _talk(count: int, dice: np.random.Generator) -> np.ndarray[Any, Any]:
    """Passages of the fixtures' speech of 3 to 15 seconds, about half of the time."""
    speech, talk = _speech(), np.zeros(count)
    at = int(dice.uniform(0, 5) * RATE)
    while at < count:
        length = int(dice.uniform(3, 15) * RATE)
        begin = int(dice.integers(0, len(speech) - length))
        part = talk[at : at + length]
        part += speech[begin : begin + len(part)]
        at += length + int(dice.uniform(3, 15) * RATE)
    return talk


@cache
def _speech() -> Sound:
    files = [ROUNDS / name / "narration.opus" for name in ("burnside", "demo", "league")]
    return np.concatenate([chunk for path in files for chunk in samples(path)])

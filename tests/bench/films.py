"""A long day's footage, made here: a moving 1080p picture with cuts, talk from the fixtures, and wind."""

from __future__ import annotations

import wave
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from reviewkit.footage import ffmpeg
from reviewkit.footage.sound import RATE, samples

NARRATIONS = sorted((Path(__file__).parents[2] / "fixtures" / "rounds").glob("*/narration.opus"))
MINUTE = 60 * RATE


def day(folder: Path, minutes: int, talk_minutes: int) -> tuple[Path, Path]:
    """A film of `minutes` with talk spread evenly in stretches of a minute, and its sound alone as WAV."""
    film, sound = folder / f"day{minutes}.mp4", folder / f"day{minutes}.wav"
    if not film.is_file():
        with wave.open(str(sound), "wb") as out:
            out.setparams((1, 2, RATE, 0, "NONE", ""))
            for block in _sound(minutes, talk_minutes):
                out.writeframes((np.clip(block, -1, 1) * 32767).astype("<i2").tobytes())
        # Four hours at a phone's bit rate would fill a small disk.
        picture = _minute(folder / f"minute{minutes}.mp4", "10M" if minutes <= 60 else "2M")
        looped = ["-stream_loop", "-1", "-i", picture, "-i", sound, "-map", "0:v", "-map", "1:a"]
        ffmpeg.run(["-y", *looped, "-c:v", "copy", "-c:a", "aac", "-t", minutes * 60, film], film)
    return film, sound


def _sound(minutes: int, talk_minutes: int) -> Iterator[np.ndarray]:
    wind = np.random.default_rng(7)
    talk = _talk()
    for minute in range(minutes):
        speaks = (minute + 1) * talk_minutes // minutes > minute * talk_minutes // minutes
        gusts = np.convolve(wind.normal(0, 1, MINUTE + 99), np.ones(100) / 100, "valid")[:MINUTE] * 0.03
        yield gusts.astype(np.float32) + (next(talk) if speaks else 0)


def _talk() -> Iterator[np.ndarray]:
    """Minutes of narration, round after round."""
    rest = np.zeros(0, np.float32)
    while True:
        for path in NARRATIONS:
            for chunk in samples(path):
                rest = np.concatenate([rest, chunk])
                while len(rest) >= MINUTE:
                    yield rest[:MINUTE]
                    rest = rest[MINUTE:]


def _minute(path: Path, bitrate: str) -> Path:
    """A minute of 1080p at 30 frames a second: four shots that move, a key frame every two seconds."""
    shots = [f"testsrc2=s=1920x1080:r=30:d=15,hue=h={90 * n},noise=alls=6:allf=t" for n in range(4)]
    graph = ";".join(f"{shot}[s{n}]" for n, shot in enumerate(shots))
    graph += ";" + "".join(f"[s{n}]" for n in range(4)) + "concat=n=4:v=1:a=0[v]"
    codec = ["-c:v", "libx264", "-preset", "ultrafast", "-b:v", bitrate, "-g", "60", "-pix_fmt", "yuv420p"]
    ffmpeg.run(["-y", "-filter_complex", graph, "-map", "[v]", *codec, path], path)
    return path

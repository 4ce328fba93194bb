"""The sound of a file as a stream of samples, never whole in memory."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from reviewkit.footage import ffmpeg

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

RATE = 16_000
"""Samples a second, mono: what speech models hear."""


def fingerprint(path: Path, track: int = 0) -> str:
    """sha256 in hex over a sound track's packets and their times, as ffmpeg's framehash lists them.

    It is the same for the same sound wherever the file lies and whatever its tags, and costs a tenth of
    hashing the picture too. Raises SourceError where ffmpeg cannot read the file.
    """
    arguments = ["-i", str(path), "-map", f"0:a:{track}", "-c", "copy"]
    arguments += ["-f", "framehash", "-hash", "murmur3", "-"]
    digest = hashlib.sha256()
    with ffmpeg.stream(arguments, path) as output:
        for line in output:
            # The head names versions of ffmpeg's libraries.
            if not line.startswith(b"#software"):
                digest.update(line)
    return digest.hexdigest()


def samples(
    path: Path,
    track: int = 0,
    start_s: float = 0.0,
    length_s: float | None = None,
    chunk_s: float = 30.0,
    low_cut_hz: float = 0.0,
    pace: float = 1.0,
) -> Iterator[npt.NDArray[np.float32]]:
    """Yield the sound as float32 mono chunks of `chunk_s` seconds at RATE, the last one shorter.

    Sample 0 is the file's own second `start_s`: sound that begins later than the picture, or has holes, is
    filled with silence. What is lower than `low_cut_hz` is taken out, and at a `pace` of 1.1 ten seconds of
    the file come as 9.1, higher as a record is that turns too fast. Raises SourceError where ffmpeg cannot
    decode.
    """
    import numpy as np

    seek = ["-ss", f"{start_s:.6f}"] if start_s > 0 else []
    limit = ["-t", f"{length_s:.6f}"] if length_s is not None else []
    arguments = [*seek, *limit, "-i", str(path), "-map", f"0:a:{track}", "-vn", "-sn", "-dn"]
    filters = ["aresample=async=1:first_pts=0"]
    if low_cut_hz:
        filters.append(f"highpass=f={low_cut_hz:g}")
    if pace != 1.0:
        filters += [f"aresample={RATE}", f"asetrate={round(RATE * pace)}"]
    arguments += ["-af", ",".join(filters), "-ac", "1", "-ar", str(RATE), "-f", "f32le", "-"]
    size = int(chunk_s * RATE) * 4
    with ffmpeg.stream(arguments, path) as output:
        while block := output.read(size):
            yield np.frombuffer(block[: len(block) // 4 * 4], np.float32).copy()

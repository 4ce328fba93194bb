"""Small films made by ffmpeg for the tests: shots of known length, tones, tags."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.footage import ffmpeg

COLOURS = ("green", "white", "blue", "orange", "black", "purple")


def film(
    path: Path,
    shots: Sequence[float] = (1.0,),
    *,
    tones: Sequence[int] = (440,),
    fps: int = 25,
    size: str = "320x180",
    key_every: int = 50,
    options: Sequence[str] = (),
) -> Path:
    """A film of still, noisy shots of the given seconds, with one sound track a tone; .mp3 has no picture."""
    if path.suffix == ".mp3":
        ffmpeg.run(
            ["-y", "-f", "lavfi", "-i", f"sine=frequency={tones[0]}:duration={sum(shots)}", path], path
        )
        return path
    inputs: list[str] = []
    for number, length in enumerate(shots):
        colour = COLOURS[number % len(COLOURS)]
        inputs += ["-f", "lavfi", "-i", f"color={colour}:size={size}:rate={fps}:duration={length}"]
    for tone in tones:
        inputs += ["-f", "lavfi", "-i", f"sine=frequency={tone}:duration={sum(shots)}:sample_rate=48000"]
    joined = "".join(f"[{n}:v]" for n in range(len(shots)))
    graph = f"{joined}concat=n={len(shots)}:v=1:a=0,noise=alls=12:allf=t[v]"
    maps = ["-map", "[v]"] + [part for n in range(len(tones)) for part in ("-map", f"{len(shots) + n}:a")]
    # Key frames at even distances only, as cameras write them: none falls on a cut by chance.
    codec = ["-c:v", "libx264", "-preset", "ultrafast", "-g", str(key_every), "-sc_threshold", "0"]
    ffmpeg.run(["-y", *inputs, "-filter_complex", graph, *maps, *codec, *options, path], path)
    return path

"""Reading against bare faster-whisper, side by side in one run: ratios of time, and peak memory.

On a machine that does other work too, the ratio of processor time is the one to trust.

    python -m tests.bench [hour] [day] [rules] [--keep DIR] [--model NAME]

hour   60 minutes of 1080p, talk half of the time: `reviewkit read` against bare faster-whisper, batched, with
       voice detection and the same settings, on the extracted sound.
day    four hours with 20 minutes of talk: against bare faster-whisper without voice detection, which is run
       on the first hour and taken four times; peak memory against the hour's.
rules  the same footage read again, and again with other rules.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from tests.bench.films import day

BARE = """
import sys
from faster_whisper import BatchedInferencePipeline, WhisperModel
from reviewkit.speech import decode, vocabulary
from reviewkit.speech.decode import BEAM
path, sound, voice = sys.argv[1:]
compute = decode.choose("cpu")
model = WhisperModel(path, device="cpu", compute_type=compute.kind, cpu_threads=compute.threads)
settings = dict(language="en", beam_size=BEAM, word_timestamps=True, hotwords=vocabulary.prompt())
if voice == "voice":
    pipeline = BatchedInferencePipeline(model)
    heard, _ = pipeline.transcribe(sound, batch_size=compute.batch, **settings)
else:
    from faster_whisper.audio import decode_audio
    heard, _ = model.transcribe(decode_audio(sound)[: 3600 * 16000], vad_filter=False, **settings)
print(sum(len(segment.words) for segment in heard), "words")
"""


@dataclass(frozen=True, slots=True)
class Run:
    seconds: float
    cpu_s: float
    peak_mb: float


def timed(title: str, command: list[str], cache: Path) -> Run:
    """Run a program and print its time and the peak memory of its largest process."""
    began = time.monotonic()
    process = subprocess.Popen(command, env={**os.environ, "REVIEWKIT_CACHE": str(cache)})
    _, status, usage = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    if process.returncode:
        raise SystemExit(f"{title} failed")
    run = Run(time.monotonic() - began, usage.ru_utime + usage.ru_stime, usage.ru_maxrss / 1024)
    times = f"{run.seconds:8.1f} s, {run.cpu_s:8.1f} s of processor"
    print(f"{title:<38} {times}, peak {run.peak_mb:5.0f} MB", flush=True)
    return run


def read(film: Path, out: Path, model: str, *more: str) -> list[str]:
    return [sys.executable, "-m", "reviewkit", "read", str(film), "--out", str(out), "--model", model, *more]


def weights_path(model: str, cache: Path) -> str:
    from reviewkit.speech import weights

    return str(weights.find(model, cache / "models", print).path)


def main() -> None:
    cli = argparse.ArgumentParser(prog="python -m tests.bench")
    cli.add_argument("parts", nargs="*", default=["hour", "rules", "day"])
    cli.add_argument("--keep", type=Path, help="keep the footage here")
    cli.add_argument("--model", default="tiny.en")
    given = cli.parse_args()
    with tempfile.TemporaryDirectory() as scratch:
        home = given.keep or Path(scratch)
        home.mkdir(parents=True, exist_ok=True)
        cache = Path(scratch) / "cache"
        weights = weights_path(given.model, cache)
        hour: Run | None = None
        if "hour" in given.parts:
            film, sound = day(home, 60, 30)
            bare = timed("bare, batched, an hour", bare_command(weights, sound, "voice"), cache)
            once = read(film, home / "hour", given.model, "--no-again")
            hour = timed("read, an hour, heard once", once, cache)
            ratios = f"{hour.seconds / bare.seconds:.2f}, of processor {hour.cpu_s / bare.cpu_s:.2f}"
            print(f"  read / bare: {ratios} (bar: at most 1.10)")
            more = timed("what is doubtful heard again", read(film, home / "hour", given.model), cache)
            print(f"  more / read: {more.seconds / hour.seconds:.2f}")
        if "rules" in given.parts:
            again(day(home, 60, 30)[0], home, given.model, cache, hour)
        if "day" in given.parts:
            film, sound = day(home, 240, 20)
            whole = timed("read, four hours", read(film, home / "day", given.model), cache)
            if hour:
                print(f"  peak memory over the hour's: {whole.peak_mb - hour.peak_mb:+.0f} MB (bar: +150)")
            bare = timed("bare, no voice detection, first hour", bare_command(weights, sound, "no"), cache)
            wall, cpu = 4 * bare.seconds / whole.seconds, 4 * bare.cpu_s / whole.cpu_s
            ratios = f"{wall:.1f}, of processor {cpu:.1f}"
            print(f"  bare / read: {ratios} (bar: at least 5)")


def again(film: Path, home: Path, model: str, cache: Path, hour: Run | None) -> None:
    """A second read, and one with a rules file of one's own."""
    second = timed("read, an hour, again", read(film, home / "hour", model), cache)
    if hour:
        print(f"  second / first: {second.seconds / hour.seconds:.3f} (bar: at most 0.1)")
    rules = home / "own.toml"
    rules.write_text("", encoding="utf-8")
    timed(
        "read, an hour, other rules (bar: 3 s)",
        read(film, home / "hour", model, "--rules", str(rules)),
        cache,
    )


def bare_command(weights: str, sound: Path, voice: str) -> list[str]:
    return [sys.executable, "-c", BARE, weights, str(sound), voice]


if __name__ == "__main__":
    main()

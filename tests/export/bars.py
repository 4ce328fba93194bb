"""How long the heavy exports take: `PYTHONPATH=tests python -m tests.export.bars [FOLDER]`; footage is made.

Chapters into 2 GB against copying the file, with the memory of both programs; a reel of twelve clips from
ten minutes of 1080p against ffmpeg called by hand; every quick format of the longest round at hand, with that
film for its pictures. What is compared takes turns, and the ratio is that of all rounds together: a disk has
moods, and may well be slow and fast by turns itself. The times of commands count what it takes to start them.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

import psutil
from support.hostile import small_round
from support.truth import save_truth, truth_files

from reviewkit.export.clips import Pick, write_reel
from reviewkit.files import whole
from reviewkit.footage.cut import Look
from reviewkit.footage.ffmpeg import find_ffmpeg, run
from reviewkit.footage.timeline import join

ROUNDS = 8
COMMAND = [sys.executable, "-m", "reviewkit"]


def main(home: Path) -> None:
    mux_bar(home)
    film = ten_minutes(home)
    reel_bar(home, film)
    formats_bar(home, film)


def mux_bar(home: Path) -> None:
    block, film, out = home / "noise.mp4", home / "film.mp4", home / "out.mp4"
    noise = ["-f", "lavfi", "-i", "nullsrc=s=1280x720:r=30:d=5,geq=random(1)*255:128:128"]
    coding = ["-preset", "ultrafast", "-b:v", "60M", "-g", "30", "-c:a", "aac"]
    run(["-y", *noise, "-f", "lavfi", "-i", "sine=d=5", *coding, block], block)
    repeats = str(int(2e9 // block.stat().st_size))
    run(["-y", "-stream_loop", repeats, "-i", block, "-c", "copy", film], film)
    length = join([film]).duration_s
    folder = small_round(home / "long", tuple(length * n / 19 for n in range(1, 19)), length)
    command = [*COMMAND, "chapters", str(folder.path), "--into", str(out), "--footage", str(film)]

    def mux() -> None:
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
        out.unlink()

    peak = watched(command)
    copied, muxed = in_turn(lambda: _copy(film, home / "copy.mp4"), mux)
    print(f"chapters into {film.stat().st_size / 1e9:.2f} GB: {told(muxed)}, copy {told(copied)}")
    print(f"  ratio {sum(muxed) / sum(copied):.2f}; peak memory of both programs {peak:.0f} MB")
    film.unlink()


def ten_minutes(home: Path) -> Path:
    block, film = home / "block.mp4", home / "ten.mp4"
    coding = ["-preset", "ultrafast", "-b:v", "8M", "-g", "30", "-c:a", "aac"]
    picture = ["-f", "lavfi", "-i", "testsrc2=s=1920x1080:r=30:d=10"]
    run(["-y", *picture, "-f", "lavfi", "-i", "sine=d=10", *coding, block], block)
    run(["-y", "-stream_loop", "59", "-i", block, "-c", "copy", film], film)
    return film


def reel_bar(home: Path, film: Path) -> None:
    picks = [Pick(f"{n:02d}", 20.37 + 48 * n, 28.37 + 48 * n) for n in range(12)]
    hand, ours = in_turn(
        lambda: _by_hand(film, picks, home / "hand"),
        lambda: write_reel(join([film]), picks, home / "reel", 1.0, Look()),
    )
    print(f"reel of 12 clips: {told(ours)}, by hand {told(hand)}, ratio {sum(ours) / sum(hand):.2f}")


def formats_bar(home: Path, film: Path) -> None:
    longest = max(truth_files(), key=lambda path: path.stat().st_size)
    folder = save_truth(longest, home / "round")
    words = longest.parent / "asr.json"
    if words.exists():
        shutil.copy(words, folder.transcript_json)
    command = [*COMMAND, "export", str(folder.path), "--as", "all", "--footage", str(film)]
    times = [
        timed(lambda: subprocess.run(command, check=True, stdout=subprocess.DEVNULL)) for _ in range(ROUNDS)
    ]
    print(f"all quick formats of {longest.parent.name}: {told(times)}")


def in_turn(first: Callable[[], object], second: Callable[[], object]) -> tuple[list[float], list[float]]:
    """Seconds of two works in each round; who begins changes from round to round, and the disk has nothing
    left to write when a work begins. The first round only fills the disk's memory, and does not count."""
    times: tuple[list[float], list[float]] = ([], [])
    for number in range(ROUNDS + 1):
        pair = ((0, first), (1, second))
        for place, work in pair if number % 2 else pair[::-1]:
            os.sync()
            times[place].append(timed(work))
    return times[0][1:], times[1][1:]


def told(times: list[float]) -> str:
    return f"{median(times):.2f} s ({min(times):.2f} to {max(times):.2f})"


def timed(work: Callable[[], object]) -> float:
    begin = time.perf_counter()
    work()
    return time.perf_counter() - begin


def _copy(source: Path, out: Path) -> None:
    with whole(out) as part:
        shutil.copyfile(source, part)
    out.unlink()


def watched(command: list[str]) -> float:
    """Run a command; the peak of its and its children's memory together in MB."""
    process = psutil.Popen(command, stdout=subprocess.DEVNULL)
    peak = 0.0
    done = threading.Event()
    while not done.wait(0.02):
        try:
            family = [process, *process.children(recursive=True)]
            peak = max(peak, sum(each.memory_info().rss for each in family if each.is_running()) / 1e6)
        except psutil.Error:
            pass  # A child may end between being listed and being asked.
        if process.poll() is not None:
            done.set()
    return peak


def _by_hand(film: Path, picks: list[Pick], home: Path) -> None:
    home.mkdir(exist_ok=True)
    quiet = [find_ffmpeg(), "-v", "error", "-y"]
    for pick in picks:
        span = ["-ss", str(pick.start_s - 1), "-t", str(pick.end_s - pick.start_s + 2)]
        maps = ["-map", "0:v:0", "-map", "0:a", "-c", "copy"]
        subprocess.run([*quiet, *span, "-i", film, *maps, home / f"{pick.name}.mp4"], check=True)
    (home / "list.txt").write_text("".join(f"file '{pick.name}.mp4'\n" for pick in picks))
    joined = ["-f", "concat", "-safe", "0", "-i", home / "list.txt", "-c", "copy", home / "reel.mp4"]
    subprocess.run([*quiet, *joined], check=True)


if __name__ == "__main__":
    with tempfile.TemporaryDirectory(dir=sys.argv[1] if sys.argv[1:] else None) as scratch:
        main(Path(scratch))

"""How soon the parts that a person waits for answer, and how that grows.

    PYTHONPATH=tests python -m tests.bench.answers

Seconds are of this machine at this moment; the ratios, taken side by side in one run, are what to compare.
"""

from __future__ import annotations

import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from starlette.testclient import TestClient
from support.desks import TOKEN, chromium, desk_of
from support.truth import load as load_truth
from support.truth import round_of, truth_files

from reviewkit.desk.server import build
from reviewkit.desk.session import Session
from reviewkit.language.tokens import said, sentences
from reviewkit.log import RoundFolder
from reviewkit.log.amended import publish
from reviewkit.model import Plan, Segment, Transcript, Word
from reviewkit.reasoning import reason
from reviewkit.rereading import again
from reviewkit.shots.chart import readings
from reviewkit.stats.series import series_of
from reviewkit.stats.stored import NAME, round_folders, save, stamp, summaries
from tests.eval.rounds import read_text

TALK = "So that's 152 to the flag, smooth 8-iron, and two pots for a par four, lovely stuff, right. "
PORT = 45_454
REPEATS = 5


def main() -> None:
    with tempfile.TemporaryDirectory() as scratch:
        home = Path(scratch)
        words_bar()
        reading_bar()
        desk_bar(home / "desk")
        series_bar(home)


def cpu(work: Callable[[], object]) -> float:
    """The least processor time of a few goes that know nothing of one another, after one that warms up; s."""
    work()
    took = []
    for _ in range(REPEATS):
        for kept in (said, readings):
            kept.cache_clear()
        begun = time.process_time()
        work()
        took.append(time.process_time() - begun)
    return min(took)


def words_bar() -> None:
    text = (TALK * 118).split()

    def transcript(times: int) -> Transcript:
        said = enumerate(text * times)
        return Transcript((Segment(tuple(Word(word, at * 0.3, at * 0.3 + 0.2, 0.5) for at, word in said)),))

    once = cpu(lambda: sentences(transcript(1)))
    for times in (2, 4, 8):
        ratio = cpu(lambda times=times: sentences(transcript(times))) / once
        print(f"repair of {times} times {len(text)} words: {ratio:.1f} times the time of once ({once:.3f} s)")


def reading_bar() -> None:
    """A whole reading of the longest round, its words clean and as a small model heard them."""
    path = longest()
    for name in ("clean.vtt", "asr.json"):
        transcript = read_text(path.parent / name)
        took = cpu(lambda transcript=transcript: reason(transcript, Plan()))
        words = len(transcript.words)
        print(
            f"reading {words} words of {name}: {took:.2f} s of processor (bar: under 0.5 s for 2,000 words)"
        )


def longest() -> Path:
    return max(truth_files(), key=lambda file: len(load_truth(file)["holes"]))


def desk_bar(place: Path) -> None:
    place.mkdir()
    folder = RoundFolder(place)
    publish(folder, round_of(load_truth(longest())), {"sources": []})
    holes = len(folder.holes)
    host = f"http://127.0.0.1:{PORT}"
    own = {"host": host.removeprefix("http://"), "origin": host}
    client = TestClient(build(Session(folder, again), TOKEN, PORT), base_url=host)
    edit: dict[str, object] = {"action": "set", "hole": int(folder.holes["hole"].iloc[0]), "stroke": 1}
    took = []
    for value in range(300, 321):
        asked = {**edit, "field": "distance_yd", "value": str(value)}
        begun = time.perf_counter()
        client.post(f"/{TOKEN}/amend", headers=own, json=asked).raise_for_status()
        took.append(time.perf_counter() - begun)
    print(f"desk of {holes} holes: an edit answers in {statistics.median(took) * 1000:.0f} ms (bar: 100 ms)")
    with chromium() as browser, desk_of(folder) as (address, _):
        page = browser.new_page()
        page.goto(address)
        page.wait_for_selector("#card button")
        paint = page.evaluate("performance.getEntriesByName('first-contentful-paint')[0].startTime")
        print(f"desk of {holes} holes: first paint after {paint:.0f} ms (bar: 1 s)")


def series_bar(home: Path) -> None:
    """A thousand folders, linked to a few real ones, whose summaries are stored; and a hundred."""
    sources = []
    for path in truth_files():
        place = home / "few" / path.parent.name
        place.mkdir(parents=True)
        publish(RoundFolder(place), round_of(load_truth(path)), {"sources": []})
        sources.append(place)
    known = list(summaries(round_folders([home / "few"]), home / NAME))
    took = {}
    for count in (100, 1000):
        folders = round_folders([linked(sources, home / str(count), count)])
        stored = home / f"{count}.parquet"
        rows = {str(path.resolve()): (stamp(path), known[at % len(known)]) for at, path in enumerate(folders)}
        save(stored, rows)
        begun = time.perf_counter()
        series_of(summaries(folders, stored))
        took[count] = time.perf_counter() - begun
    ratio = took[1000] / took[100]
    print(f"a thousand stored rounds: {took[1000]:.2f} s (bar: 10 s), {ratio:.1f} times a hundred")


def linked(sources: list[Path], many: Path, count: int) -> Path:
    for number in range(count):
        copied = many / f"r{number:04d}"
        copied.mkdir(parents=True)
        for name in ("holes.csv", "shots.csv", "round.json"):
            (copied / name).hardlink_to(sources[number % len(sources)] / name)
    return many


if __name__ == "__main__":
    main()

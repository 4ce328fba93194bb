"""Two Dask workers against one over eight rounds of speech, each worker with one core and one thread.

    python -m tests.bench.cluster [--model NAME] [--seconds N] [--times N]

Scheduler and workers are processes of their own, as on a cluster, and run before the clock starts; so do the
imports of the workers. Every run listens anew. A worker is pinned to a core, so that the second one brings
what a second machine would. The machine needs two free cores for that. Where other work runs too, look at the
ratio of processor time, one worker's to that of the busier of two: what free cores would give, waits aside.
"""

from __future__ import annotations

import argparse
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from distributed import Client, LocalCluster

from reviewkit.batching import Job, Outcome
from reviewkit.cli.batch import job_of
from reviewkit.cluster import read_on, worker_state
from reviewkit.footage import ffmpeg
from reviewkit.plan import Wish

NARRATIONS = Path(__file__).parents[2] / "fixtures" / "rounds"
ROUNDS = 8
STEP_S = 17
"""How far from each other two rounds begin on their tape."""


def season(home: Path, seconds: int, model: str) -> list[Job]:
    """Eight rounds of so many seconds of talk, cut from endless tapes: no two alike, so nothing is cached."""
    jobs = []
    for number in range(ROUNDS):
        name = ("burnside", "tweekoppies")[number % 2]
        path = home / f"round{number}" / "talk.wav"
        path.parent.mkdir(parents=True)
        source = NARRATIONS / name / "narration.opus"
        tape = ["-stream_loop", "-1", "-i", str(source)]
        cut = [*tape, "-ss", str(number * STEP_S), "-t", str(seconds)]
        ffmpeg.run(["-y", *cut, path], path)
        jobs.append(job_of(path.parent.name, (path,), Wish(model=model, device="cpu")))
    return jobs


@contextmanager
def cluster(workers: int, scratch: Path) -> Iterator[str]:
    """The address of a scheduler with so many workers, each on a core of its own."""
    cores = sorted(os.sched_getaffinity(0))
    with LocalCluster(n_workers=0, dashboard_address=None) as started, Client(started) as client:
        command = [sys.executable, "-m", "distributed.cli.dask_worker", started.scheduler_address]
        command += ["--nthreads", "1", "--no-dashboard", "--no-nanny", "--local-directory", str(scratch)]
        running = [
            subprocess.Popen(
                command, stderr=subprocess.DEVNULL, preexec_fn=partial(os.sched_setaffinity, 0, {cores[n]})
            )
            for n in range(workers)
        ]
        try:
            client.wait_for_workers(workers, timeout=60)
            client.run(worker_state, [])
            client.run(partial(subprocess.run, [sys.executable, "-c", "import faster_whisper"]))
            yield started.scheduler_address
        finally:
            for process in running:
                process.terminate()
                process.wait()


def timed(workers: int, seconds: int, model: str) -> tuple[float, float]:
    """Seconds that a batch takes from its first task to its last round, and the busiest worker's seconds of
    processor."""
    with tempfile.TemporaryDirectory() as scratch:
        os.environ["REVIEWKIT_CACHE"] = f"{scratch}/cache"
        jobs, outcomes = season(Path(scratch) / "season", seconds, model), list[Outcome]()
        with cluster(workers, Path(scratch)) as address:
            idle, began = busy(address), time.monotonic()
            read_on(address, jobs, outcomes.append)
            took = time.monotonic() - began
            most = max(after - idle[worker] for worker, after in busy(address).items())
    failed = [item for item in outcomes if item.state != "read"]
    if failed or len(outcomes) != ROUNDS:
        raise SystemExit(f"failed: {failed}")
    return took, most


def busy(address: str) -> dict[str, float]:
    """Seconds of processor that each worker and its programs have used."""
    with Client(address) as client:
        used: dict[str, float] = client.run(lambda: sum(os.times()[:4]))
        return used


def main() -> None:
    cli = argparse.ArgumentParser(prog="python -m tests.bench.cluster")
    cli.add_argument("--model", default="tiny.en")
    cli.add_argument("--seconds", type=int, default=150)
    cli.add_argument("--times", type=int, default=1)
    given = cli.parse_args()
    for _ in range(given.times):
        before = os.getloadavg()[0]
        one, one_cpu = timed(1, given.seconds, given.model)
        two, two_cpu = timed(2, given.seconds, given.model)
        print(f"one worker {one:.1f} s, two {two:.1f} s; one / two: {one / two:.2f} (bar: at least 1.7)")
        print(f"of processor {one_cpu:.1f} s, {two_cpu:.1f} s: {one_cpu / two_cpu:.2f}")
        print(f"load before: {before:.1f} on {len(os.sched_getaffinity(0))} cores", flush=True)


if __name__ == "__main__":
    main()

"""Reading rounds on an existing Dask cluster: a task a clip for its speech, then a task a round.

The workers reach the footage at the same paths and share one cache: what a clip's task hears lies there for
its round's task. Both are checked before any work.
"""

from __future__ import annotations

import importlib
import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any

from reviewkit import __version__
from reviewkit.batching import Job, Outcome, Told, attempt, read_one
from reviewkit.cache import cache_dir
from reviewkit.errors import ReviewkitError
from reviewkit.footage.probe import probe
from reviewkit.footage.timeline import Clip, Timeline, join
from reviewkit.model import Plan
from reviewkit.pipeline import Options, listening, timed_text_in
from reviewkit.progress import Silence

ANSWER_S = 10
"""How long a scheduler is waited for."""


def read_on(address: str, jobs: Sequence[Job], told: Told) -> None:
    """Read rounds on the cluster whose scheduler is at `address`; what fails is told and stops no other.

    Raises ReviewkitError where there is no such cluster or it cannot do the work.
    """
    with _client(address) as client:
        _check_workers(client, address, jobs)
        clips: dict[Job, list[Path]] = {}
        for job in jobs:
            try:
                clips[job] = clips_of(job)
            except ReviewkitError as error:
                told(Outcome(job.name, "failed", str(error)))
        waiting = _submit(client, clips)
        for future in _dask().as_completed(list(waiting)):
            if future.status == "finished":
                told(future.result())
            else:
                # What fails in a round comes back as its outcome; what is raised befell its worker.
                told(attempt(waiting[future].name, future.result))


def _submit(client: Any, clips: Mapping[Job, Sequence[Path]]) -> dict[Any, Job]:
    """Each round's task, as a future, once those of all clips are on their way.

    The clips go out together under one name: the scheduler then hands a clip to whichever worker is free
    and learns how long one takes. Sent one by one they are dealt out beforehand, and a worker may run dry.
    """
    asked = [(job, clip) for job, own in clips.items() for clip in own]
    heard = iter(
        client.map(
            hear_clip,
            [clip for _, clip in asked],
            [job.plan for job, _ in asked],
            [job.options for job, _ in asked],
            key=_keys("hear", [clip for _, clip in asked]),
            pure=False,
        )
        if asked
        else ()
    )
    needs = [[next(heard) for _ in own] for own in clips.values()]
    names = _keys("read", [job.out for job in clips])
    rounds = client.map(read_heard, list(clips), needs, key=names, pure=False)
    return dict(zip(rounds, clips, strict=True))


def clips_of(job: Job) -> list[Path]:
    """The clips of a round that have sound to listen to; none where its words are there already."""
    if timed_text_in(job.sources):
        return []
    timeline = join(job.sources, job.options.by_time)
    return [clip.media.path for clip in timeline.clips if clip.media.track is not None]


def hear_clip(path: Path, plan: Plan, options: Options) -> None:
    """Hear one clip, so that its words lie in the cache."""
    media = probe(path)
    clip = Clip(media, 0.0, 0.0, media.duration_s)
    try:
        listening(Timeline((clip,)), plan, options, Silence()).whole()
    except ReviewkitError:
        # A clip without talk is no fault in a round; whatever else is wrong, the round's own task tells it.
        return


def read_heard(job: Job, heard: list[None]) -> Outcome:
    """Read a round once its clips are `heard`; what fails is words, which travel better than errors do."""
    return attempt(job.name, partial(read_one, job))


def _dask() -> Any:
    try:
        return importlib.import_module("distributed")
    except ImportError as error:
        raise ReviewkitError(
            "A cluster needs Dask, which is not installed.", "Install it: pip install 'reviewkit[cluster]'"
        ) from error


@contextmanager
def _client(address: str) -> Iterator[Any]:
    distributed = _dask()
    try:
        client = distributed.Client(address, timeout=ANSWER_S)
    except (OSError, ValueError, TypeError) as error:
        raise ReviewkitError(
            f"No Dask scheduler answers at {address}.",
            "Start one with: dask scheduler, and name its address like tcp://host:8786.",
        ) from error
    with client:
        yield client


def _check_workers(client: Any, address: str, jobs: Sequence[Job]) -> None:
    """Raise ReviewkitError where there are no workers, or some cannot do what this machine could."""
    paths = [job.sources[0] for job in jobs]
    try:
        answers = client.run(worker_state, paths)
    except Exception as error:
        raise ReviewkitError(
            f"The workers of {address} cannot run reviewkit ({type(error).__name__}: {error}).",
            f"Install reviewkit {__version__} and the same Python where they run.",
        ) from error
    if not answers:
        raise ReviewkitError(
            f"The scheduler at {address} has no workers.", f"Start some with: dask worker {address}"
        )
    own = worker_state(paths)
    for worker, answer in answers.items():
        for what, mine, theirs in zip(("reviewkit", "cache", "footage not found"), own, answer, strict=True):
            if mine != theirs:
                raise ReviewkitError(
                    f"The worker {worker} differs: {what} is {theirs or 'none'}, here {mine or 'none'}.",
                    "Give all machines the same version, $REVIEWKIT_CACHE and paths to the footage.",
                )


def worker_state(paths: Sequence[Path]) -> tuple[str, str, str]:
    """Version, place of the cache and the first of `paths` that is not there, where this runs."""
    missing = [str(path) for path in paths if not path.exists()]
    return __version__, str(cache_dir()), missing[0] if missing else ""


def _keys(work: str, paths: Sequence[Path]) -> list[tuple[str, int, str]]:
    """Names of tasks of one kind, as the cluster's pages show them; a part of them is new every time, so that
    no old result counts."""
    group = f"{work}-{os.urandom(4).hex()}"
    return [(group, number, f"{path.parent.name}/{path.name}") for number, path in enumerate(paths)]

"""Many rounds at once: which folders hold one, which of them are read already, and reading the others.

A round is a sub-folder with video in it, else with sound, else with one timed text. Clips come in the order
of their names, numbers in them by value.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from reviewkit.cache import cache_dir
from reviewkit.errors import FolderError, ReviewkitError, SourceError
from reviewkit.files import write_text
from reviewkit.log import RoundFolder
from reviewkit.model import Plan
from reviewkit.pipeline import TEXTS, WORDS_JSON, Options, read_round, versions
from reviewkit.progress import Progress
from reviewkit.speech.timed_text import FORMATS

VIDEO = (".mp4", ".mov", ".m4v", ".mkv", ".webm", ".avi", ".mts", ".m2ts", ".3gp")
SOUND = (".wav", ".mp3", ".m4a", ".aac", ".flac", ".ogg", ".opus", ".wma")
KINDS: tuple[tuple[str, ...], ...] = (VIDEO, SOUND, tuple(FORMATS), (WORDS_JSON,))


@dataclass(frozen=True, slots=True)
class Job:
    """One round to read; its paths are absolute, so that another machine finds them too."""

    name: str
    sources: tuple[Path, ...]
    out: Path
    plan: Plan
    options: Options


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a round: `state` is read, kept (read before, nothing has changed) or failed, and why."""

    name: str
    state: str
    why: str = ""


Told = Callable[[Outcome], None]
"""Called with each round's outcome as soon as it is known."""


def rounds_in(folder: Path) -> dict[str, tuple[Path, ...]]:
    """The sub-folders of `folder` that hold a round, in the order of their names, each with its sources.

    A round folder, that is a reading, is none. Raises FolderError.
    """
    if not folder.is_dir():
        raise FolderError(folder, "is not a folder.", "Name the folder that holds a folder for each round.")
    places = sorted((path for path in folder.absolute().iterdir() if path.is_dir()), key=_by_name)
    found = {place.name: _sources(place) for place in places if not _is_reading(RoundFolder(place))}
    rounds = {name: sources for name, sources in found.items() if sources}
    if not rounds:
        raise FolderError(
            folder, "holds no folder with footage in it.", "Give each round a folder of its own there."
        )
    return rounds


def check_sources(sources: Sequence[Path]) -> None:
    """Raise SourceError where a round's folder holds several timed texts: which one counts is not guessed."""
    if sources[0].suffix.lower() in TEXTS and len(sources) > 1:
        names = ", ".join(path.name for path in sources)
        raise SourceError(sources[0].parent, f"holds several timed texts ({names}).", "Leave one there.")


def is_read(job: Job) -> bool:
    """Whether an earlier batch has read the round and nothing that it follows from has changed since."""
    return RoundFolder(job.out).round_json.is_file() and _mark(job).is_file()


def read_one(job: Job, progress: Progress | None = None) -> None:
    """Read a round and note that it is read."""
    # What changes while the round is being read is not in this reading.
    mark = _mark(job)
    read_round(job.sources, job.out, job.plan, job.options, progress)
    write_text(mark, f"{job.out}\n")


def read_here(jobs: Sequence[Job], progress: Progress, told: Told) -> None:
    """Read rounds one after the other: the speech model uses every core by itself."""
    for job in jobs:
        progress.say(f"Reading {job.name}")
        told(attempt(job.name, partial(read_one, job, progress)))


def attempt(name: str, work: Callable[[], object]) -> Outcome:
    """The outcome of `work`, whatever happens in it: one round must not stop the others."""
    try:
        work()
    except ReviewkitError as error:
        return Outcome(name, "failed", str(error))
    except Exception as error:
        why = " ".join(str(error).split())
        return Outcome(name, "failed", f"{type(error).__name__}: {why}")
    return Outcome(name, "read")


def _is_reading(folder: RoundFolder) -> bool:
    return folder.round_json.exists() or folder.transcript_json.exists()


def _sources(place: Path) -> tuple[Path, ...]:
    files = sorted((path for path in place.iterdir() if path.is_file()), key=_by_name)
    for kind in KINDS:
        found = tuple(path for path in files if path.suffix.lower() in kind and path.name[0] != ".")
        if found:
            return found
    return ()


def _by_name(path: Path) -> list[tuple[int, str]]:
    parts = re.findall(r"\d+|\D+", path.name.lower())
    return [(int(part), "") if part.isdecimal() else (-1, part) for part in parts]


def _mark(job: Job) -> Path:
    """A file in the cache, there when the round was read from just these files, plan, settings and code."""
    states = [_state(path) for path in (*job.sources, *([job.options.rules] if job.options.rules else []))]
    text = "\n".join([str(job.out), *states, repr(job.plan), repr(job.options), repr(versions())])
    return cache_dir() / "read" / hashlib.sha256(text.encode()).hexdigest()[:32]


def _state(path: Path) -> str:
    if not path.exists():
        return f"{path} is missing"
    state = path.stat()
    return f"{path} {state.st_size} {state.st_mtime_ns}"

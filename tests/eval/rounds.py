"""The invented rounds of a folder, and their readings at each level.

Levels, each with more that can go wrong: `clean` (clean.vtt, a perfect transcript), `asr` (asr.json, what a
small speech model heard), `narration` (narration.opus, listened to by reviewkit itself).
"""

from __future__ import annotations

import csv
import subprocess
import sys
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from reviewkit.log import RoundFolder
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan, Transcript, Word
from reviewkit.speech import timed_text
from tests.eval.score import Row, Truth, load_truth

LEVELS = {"clean": "clean.vtt", "asr": "asr.json", "narration": "narration.opus"}
UNREAD = "unread.txt"
"""Names the rounds of a folder whose words and errors nobody looks at: they tell what is left to learn."""


@dataclass(frozen=True)
class Case:
    """One invented round on disk."""

    path: Path

    @property
    def id(self) -> str:
        return self.path.name

    @cached_property
    def truth(self) -> Truth:
        return load_truth(self.path / "truth.json")


@dataclass(frozen=True, slots=True)
class Reading:
    """Rows of holes.csv and shots.csv as text, and why there are none if reading failed."""

    holes: tuple[Row, ...] = ()
    shots: tuple[Row, ...] = ()
    failure: str = ""


def find_cases(folder: Path, level: str, only: frozenset[str] = frozenset()) -> list[Case]:
    """The rounds of `folder` that have this level's source, in order of their names."""
    cases = [Case(path.parent) for path in sorted(folder.glob("*/truth.json"))]
    return [case for case in cases if (case.path / LEVELS[level]).is_file() and (not only or case.id in only)]


def find_unread(folder: Path) -> frozenset[str]:
    """The rounds of `folder` that only count."""
    path = folder / UNREAD
    return frozenset(path.read_text(encoding="utf-8").split()) if path.is_file() else frozenset()


def read_case(case: Case, level: str, keep: Path) -> Reading:
    """The round folder of one case under `keep`. An error of the reader is a reading of nothing.

    Narration goes through the command line, whose transcript in `keep` is used again by a later run.
    """
    folder = RoundFolder(keep / level / case.id)
    source = case.path / LEVELS[level]
    if level == "narration":
        command = [sys.executable, "-m", "reviewkit", "read", str(source), "--out", str(folder.path)]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        if done.returncode:
            return Reading(failure=done.stderr.strip()[-500:])
    else:
        from reviewkit.reasoning import reason

        try:
            folder.save(reason(read_text(source), Plan()), {})
        except Exception as error:  # a crash in one round must not hide the others' figures
            return Reading(failure=f"{type(error).__name__}: {error}")
    return Reading(rows(folder.holes_csv), rows(folder.shots_csv))


def heard_words(case: Case, level: str, keep: Path) -> tuple[Word, ...]:
    """The words the reader was given; none where reading failed before there were any."""
    if level == "narration":
        path = RoundFolder(keep / level / case.id).transcript_json
        return load_transcript(path).words if path.is_file() else ()
    return read_text(case.path / LEVELS[level]).words


def read_text(source: Path) -> Transcript:
    """The transcript in a timed text or a words JSON."""
    return load_transcript(source) if source.suffix == ".json" else timed_text.read(source)


def rows(path: Path) -> tuple[Row, ...]:
    with path.open(newline="", encoding="utf-8") as handle:
        return tuple(csv.DictReader(handle))

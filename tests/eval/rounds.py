"""The invented rounds of a folder, and their readings at each level.

Levels, each with more that can go wrong: `clean` (clean.vtt, a perfect transcript), `asr` (asr.json, what a
small speech model heard), `narration` (narration.opus, listened to by reviewkit itself).
"""

from __future__ import annotations

import csv
import json
import subprocess
import sys
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from reviewkit.log import RoundFolder
from reviewkit.model import Plan, Segment, Transcript, Word
from reviewkit.timecode import parse
from tests.eval.score import Row, Truth, load_truth

LEVELS = {"clean": "clean.vtt", "asr": "asr.json", "narration": "narration.opus"}


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

        transcript = read_vtt(source) if level == "clean" else read_words(source)
        try:
            folder.save(reason(transcript, Plan()), {})
        except Exception as error:  # a crash in one round must not hide the others' figures
            return Reading(failure=f"{type(error).__name__}: {error}")
    return Reading(rows(folder.holes_csv), rows(folder.shots_csv))


def heard_words(case: Case, level: str, keep: Path) -> tuple[Word, ...]:
    """The words the reader was given; none where reading failed before there were any."""
    if level == "narration":
        path = RoundFolder(keep / level / case.id).transcript_json
        return read_words(path).words if path.is_file() else ()
    source = case.path / LEVELS[level]
    return (read_vtt(source) if level == "clean" else read_words(source)).words


def rows(path: Path) -> tuple[Row, ...]:
    with path.open(newline="", encoding="utf-8") as handle:
        return tuple(csv.DictReader(handle))


def read_vtt(path: Path) -> Transcript:
    """A cue an utterance; its time is shared out among its words by their letters."""
    segments = []
    for block in path.read_text(encoding="utf-8").split("\n\n")[1:]:
        span, _, text = block.strip().partition("\n")
        if " --> " in span and text.split():
            start, end = (parse(part) for part in span.split(" --> "))
            segments.append(Segment(_share_out(text.split(), start, end)))
    return Transcript(tuple(segments), model="vtt", duration_s=segments[-1].end_s)


def _share_out(texts: list[str], start: float, end: float) -> tuple[Word, ...]:
    letters = sum(len(text) + 1 for text in texts)
    words, at = [], start
    for text in texts:
        until = at + (end - start) * (len(text) + 1) / letters
        words.append(Word(text, at, until))
        at = until
    return tuple(words)


def read_words(path: Path) -> Transcript:
    """Segments and words with times and probabilities, as asr.json holds them."""
    data = json.loads(path.read_text(encoding="utf-8"))
    segments = tuple(
        Segment(
            tuple(
                Word(word["word"].strip(), word["start_s"], word["end_s"], word["probability"])
                for word in segment["words"]
            )
        )
        for segment in data["segments"]
        if segment["words"]
    )
    return Transcript(segments, data["model"], data["language"], data["duration_s"])

"""Timestamp list for a video's description: `0:00 Opening`, a line a chapter.

The rules that video hosts document for such lists: the first line is 0:00, three lines or more, times in
ascending order, ten seconds or more each. Hosts read whole seconds, so lengths are counted in them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import floor
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.chapters import Chapter, chapters_of, join_short
from reviewkit.files import write_text
from reviewkit.timecode import clock

LEAST_S = 10
LEAST_LINES = 3
# From memory: the description box of a common host holds 5000 characters, and titles show 100 at most.
MOST_CHARACTERS = 5000
MOST_TITLE = 100


def write(job: Job, path: Path) -> Sequence[str]:
    text, told = lines_of(job)
    write_text(path, text)
    return told


def lines_of(job: Job) -> tuple[str, list[str]]:
    """The list as text, and what a person should know about it."""
    whole = [
        replace(chapter, start_s=floor(chapter.start_s), end_s=floor(chapter.end_s))
        for chapter in chapters_of(job)
    ]
    lines = join_short(whole, LEAST_S)
    text = "".join(f"{clock(chapter.start_s)} {chapter.title}\n" for chapter in lines)
    return text, notes(whole, lines, text)


def notes(before: Sequence[Chapter], after: Sequence[Chapter], text: str) -> list[str]:
    """What hosts may not take, and what was done so that they do."""
    told = []
    if len(after) < len(before):
        told.append(f"chapters shorter than {LEAST_S} s joined their neighbours: {len(before) - len(after)}.")
    if len(after) < LEAST_LINES:
        told.append(f"hosts show chapters from {LEAST_LINES} on; this list has {len(after)}.")
    if len(text) > MOST_CHARACTERS:
        told.append(f"the list has {len(text)} characters; a description may hold {MOST_CHARACTERS}.")
    long = sum(len(chapter.title) > MOST_TITLE for chapter in after)
    if long:
        told.append(f"titles longer than {MOST_TITLE} characters, which hosts cut: {long}.")
    return told

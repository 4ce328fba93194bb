"""Captions from the words as meant: when each appears, and where its lines break.

Two lines of 42 characters at most, between one and seven seconds, at a reading speed of 20 characters a
second or less where the speech leaves room for it (common practice of broadcasters; figures from memory).
A caption never shows before its first word is spoken nor while the next one is.
"""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from reviewkit.export.base import Job, one_line
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Word

LINE = 42
LINES = 2
LEAST_S, MOST_S = 1.0, 7.0
READING = 20.0
"""Characters a second."""
PAUSE_S = 0.7
GAP_S = 0.08
ENDS = (".", "?", "!", "…")
_PIECES = re.compile(
    r"(?i)\d [,.]\d+[,.?!]*$|\d -\d|\bpar -\d|\w -(?-i:[a-z])|\w ['’](?:s|t|d|m|re|ve|ll)\b|\d %"
)
ENOUGH = 30
"""Characters from which a caption ends with its sentence."""


@dataclass(frozen=True, slots=True)
class Caption:
    """One caption; times in seconds on the round's timeline, lines of plain text."""

    start_s: float
    end_s: float
    lines: tuple[str, ...]

    @property
    def speed(self) -> float:
        """Characters a second."""
        return sum(map(len, self.lines)) / max(self.end_s - self.start_s, 0.001)


def captions_of(job: Job) -> tuple[list[Caption], list[str]]:
    """The round's captions and notes. Raises FolderError when the folder holds no transcript."""
    words = list(_fitting(_whole(_as_meant(load_transcript(job.folder.transcript_json).words))))
    found = _timed([_caption(group) for group in _groups(words)])
    fast = sum(caption.speed > READING * 1.25 for caption in found)
    notes = (
        [f"captions faster to read than {READING * 1.25:.0f} characters a second: {fast}."] if fast else []
    )
    return found, notes


def _as_meant(words: Iterable[Word]) -> Iterator[Word]:
    """Misheard words put right; one that its neighbour's repair takes in lends it its time."""
    shown: Word | None = None
    for word in words:
        if shown and word.meant == "":
            shown = replace(shown, end_s=max(shown.end_s, word.end_s))
            continue
        if shown:
            yield shown
        shown = word if word.meant is None else replace(word, text=word.meant)
    if shown:
        yield shown


def _whole(words: Iterable[Word]) -> Iterator[Word]:
    """Words that a listener cut in pieces ("6", ",740", "T", "-shot") as one again."""
    before: Word | None = None
    for word in words:
        if before and _PIECES.search(f"{before.text[-4:]} {word.text}"):
            before = replace(before, text=before.text + word.text, end_s=max(before.end_s, word.end_s))
            continue
        if before:
            yield before
        before = word
    if before:
        yield before


def _fitting(words: Iterable[Word]) -> Iterator[Word]:
    """Words on one line each, longer ones cut into pieces that fit a line and share the word's time."""
    for word in words:
        pieces = textwrap.wrap(one_line(word.text), LINE)
        step = (word.end_s - word.start_s) / max(len(pieces), 1)
        for number, piece in enumerate(pieces):
            start = word.start_s + step * number
            yield Word(piece, start, max(start + step, start), word.probability)


def _groups(words: Sequence[Word]) -> Iterator[list[Word]]:
    group: list[Word] = []
    for word in words:
        if group and (_closed(group, word) or not _fits([*group, word])):
            yield group
            group = []
        group.append(word)
    if group:
        yield group


def _closed(group: Sequence[Word], word: Word) -> bool:
    """Whether the talk itself ends a caption here: a pause, or a sentence of some length."""
    last = group[-1]
    sentence = last.text.endswith(ENDS) and len(_text(group)) >= ENOUGH
    return sentence or word.start_s - last.end_s > PAUSE_S


def _fits(group: Sequence[Word]) -> bool:
    return len(textwrap.wrap(_text(group), LINE)) <= LINES and group[-1].end_s - group[0].start_s <= MOST_S


def _text(group: Sequence[Word]) -> str:
    return " ".join(word.text for word in group)


def _caption(group: Sequence[Word]) -> Caption:
    return Caption(group[0].start_s, group[-1].end_s, _balanced(_text(group)))


def _balanced(text: str) -> tuple[str, ...]:
    """One line where it fits, else two of lengths as even as the words allow."""
    if len(text) <= LINE:
        return (text,)
    # A width just over half the text tries the most even break first.
    for width in range(len(text) // 2 + 1, LINE + 1):
        lines = textwrap.wrap(text, width)
        if len(lines) <= LINES:
            return tuple(lines)
    return tuple(textwrap.wrap(text, LINE))


def _timed(captions: Sequence[Caption]) -> list[Caption]:
    """Captions held long enough to be read, as far as the next one leaves room."""
    timed = []
    for number, caption in enumerate(captions):
        needed = max(LEAST_S, sum(map(len, caption.lines)) / READING)
        end = max(caption.end_s, caption.start_s + min(needed, MOST_S))
        if number + 1 < len(captions):
            # Words may overlap where two people speak; a caption still gives way to the next.
            end = max(min(end, captions[number + 1].start_s - GAP_S), caption.start_s + 0.05)
        timed.append(replace(caption, end_s=end))
    return timed

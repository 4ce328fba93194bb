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
from itertools import pairwise
from math import inf

from reviewkit.export.base import Job, one_line
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Word

LINE = 42
LINES = 2
LEAST_S, MOST_S = 1.0, 7.0
READING = 20.0
"""Characters a second."""
PAUSE_S = 0.7
GAP_S, BLINK_S = 0.08, 0.05
ENDS = (".", "?", "!", "…")
_PIECES = re.compile(
    r"(?i)\d [,.]\d+[,.?!]*$|\d -\d|\bpar -\d|\w -(?-i:[a-z])|\w ['’](?:s|t|d|m|re|ve|ll)\b|\d %"
)
BREATHS = (",", ";", ":", "–", "—")
ENOUGH, SHORT = 30, 16
"""Characters from which a caption had better end with its sentence, and below which it is a scrap."""


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


def _groups(words: Sequence[Word]) -> Iterator[Sequence[Word]]:
    """The words of each caption. Pauses part them; between pauses they part where it costs least: at the end
    of a sentence rather than at a comma, there rather than anywhere, and seldom."""
    first = 0
    for end in range(1, len(words) + 1):
        if end == len(words) or words[end].start_s - words[end - 1].end_s > PAUSE_S:
            yield from _parted(words[first:end])
            first = end


def _parted(words: Sequence[Word]) -> Iterator[Sequence[Word]]:
    """Words without a pause in captions of the least cost together."""
    costs, begins = [0.0], [0]
    for end in range(1, len(words) + 1):
        best, begin = inf, end - 1
        for start in range(end - 1, -1, -1):
            if start < end - 1 and not _fits(words[start:end]):
                break
            cost = costs[start] + _cost(words[start:end], end == len(words))
            if cost < best:
                best, begin = cost, start
        costs.append(best)
        begins.append(begin)
    bounds = [len(words)]
    while bounds[-1]:
        bounds.append(begins[bounds[-1]])
    bounds.reverse()
    return (words[start:end] for start, end in pairwise(bounds))


def _cost(group: Sequence[Word], at_pause: bool) -> float:
    """What one caption costs: each its due, more for an end that parts a sentence, for a sentence's end
    within it, and for a short one."""
    last, length = group[-1].text, len(_text(group))
    ending = 0.0 if at_pause or last.endswith(ENDS) else 1.0 if last.endswith(BREATHS) else 3.0
    inner = sum(word.text.endswith(ENDS) for word in group[:-1])
    hidden = 0.5 * inner if length >= ENOUGH else 0.0
    return 1.5 + ending + hidden + max(0.0, (SHORT - length) / SHORT) * 2


def _fits(group: Sequence[Word]) -> bool:
    """Whether the words find room in the lines, filled one after another, and are said quickly enough."""
    if group[-1].end_s - group[0].start_s > MOST_S:
        return False
    lines, room = 1, LINE
    for word in group:
        need = len(word.text) + (room < LINE)
        if need > room:
            lines, room, need = lines + 1, LINE, len(word.text)
        room -= need
    return lines <= LINES


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
        lines = textwrap.wrap(text, width, break_on_hyphens=False)
        if len(lines) <= LINES:
            return tuple(lines)
    return tuple(textwrap.wrap(text, LINE, break_on_hyphens=False))


def _timed(captions: Sequence[Caption]) -> list[Caption]:
    """Captions held long enough to be read, as far as the next one leaves room."""
    timed = []
    for number, caption in enumerate(captions):
        needed = max(LEAST_S, sum(map(len, caption.lines)) / READING)
        end = max(caption.end_s, caption.start_s + min(needed, MOST_S))
        if number + 1 < len(captions):
            # Words may overlap where two people speak; a caption still gives way to the next.
            following = captions[number + 1].start_s
            least = caption.start_s + BLINK_S
            least = min(least, following) if following > caption.start_s else least
            end = max(min(end, following - GAP_S), least)
        timed.append(replace(caption, end_s=end))
    return timed

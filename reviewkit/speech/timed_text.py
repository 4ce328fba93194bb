"""WebVTT and SubRip in, words out.

WebVTT as the W3C draws it (https://www.w3.org/TR/webvtt1/, sections 4.1 and 6): a signature line, then blocks
apart by blank lines; NOTE, STYLE and REGION blocks are no cues; a cue may have an identifier, has a timing
line, and its text may hold tags, character references and inline times. SubRip has no standard: numbered
blocks with a comma in the times, `{...}` and `<...>` as markup.

Stricter than players are: times that cannot be read or run backwards are an error that names the line.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from reviewkit.errors import SourceError
from reviewkit.model import Segment, Transcript, Word

FORMATS = {".vtt": "WebVTT", ".srt": "SubRip"}
_ARROW = "-->"
_TIME = {
    "WebVTT": re.compile(r"(?:(\d{2,}):)?([0-5]\d):([0-5]\d)\.(\d{3})"),
    "SubRip": re.compile(r"(\d{1,3}):([0-5]\d):([0-5]\d)[,.](\d{1,3})"),
}
_INLINE = re.compile(r"<((?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3})>")
_MARKUP = re.compile(r"<[^>]*>|\{\\[^}]*\}")
_SOUND = re.compile(r"^\s*[\[(♪].*[\])♪]\s*$")
_REMEDY = "Correct the file, or read the footage itself."


@dataclass(frozen=True, slots=True)
class Cue:
    """A block of text shown from `start_s` to `end_s`; `text` with its markup, lines apart."""

    line: int
    start_s: float
    end_s: float
    text: tuple[str, ...]


def read(path: Path) -> Transcript:
    """The words of a .vtt or .srt file, a cue a segment. Raises SourceError for what breaks the format."""
    form = FORMATS[path.suffix.lower()]
    try:
        lines = path.read_text(encoding="utf-8-sig").splitlines()
    except OSError as error:
        raise SourceError(path, f"cannot be read ({error.strerror}).", "Check the name.") from error
    except UnicodeDecodeError as error:
        raise SourceError(path, "is not UTF-8 text.", f"Save it again as UTF-8 {form}.") from error
    if form == "WebVTT" and not (lines and re.match(r"WEBVTT(?:[ \t]|$)", lines[0])):
        raise SourceError(path, "does not begin with WEBVTT.", _REMEDY)
    cues = list(_cues(path, lines, form))
    segments = tuple(Segment(words) for words in _spoken(cues) if words)
    if not segments:
        raise SourceError(path, "holds no words.", _REMEDY)
    return Transcript(segments, form, duration_s=max(cue.end_s for cue in cues))


def _cues(path: Path, lines: list[str], form: str) -> Iterator[Cue]:
    before = 0.0
    for first, block in _blocks(lines, form):
        if form == "WebVTT" and re.match(r"(WEBVTT|NOTE|STYLE|REGION)(\s|$)", block[0]):
            continue
        at = next((n for n, line in enumerate(block[:2]) if _ARROW in line), None)
        if at is None:
            raise SourceError(path, f"line {first}: no times where a cue should have them.", _REMEDY)
        number = first + at
        start_s, end_s = _times(path, number, block[at], form)
        if end_s < start_s:
            raise SourceError(path, f"line {number}: the cue ends before it starts.", _REMEDY)
        if start_s < before:
            raise SourceError(path, f"line {number}: the cue starts before the one above it.", _REMEDY)
        before = start_s
        yield Cue(number, start_s, end_s, tuple(block[at + 1 :]))


def _blocks(lines: list[str], form: str) -> Iterator[tuple[int, list[str]]]:
    """Runs of lines that are not blank, each with the number of its first line.

    A line of spaces belongs to the cue in WebVTT (rolling captions have them) and is blank in SubRip.
    """
    block: list[str] = []
    for number, line in enumerate([*lines, ""], start=1):
        if line if form == "WebVTT" else line.strip():
            block.append(line)
        elif block:
            yield number - len(block), block
            block = []


def _times(path: Path, number: int, line: str, form: str) -> tuple[float, float]:
    left, _, right = line.partition(_ARROW)
    # After the end time WebVTT allows settings such as align:start.
    found = [_TIME[form].fullmatch(text) for text in (left.strip(), (right.split() or [""])[0])]
    if not (found[0] and found[1]):
        raise SourceError(path, f"line {number}: '{line.strip()}' are not {form} times.", _REMEDY)
    return _seconds(found[0]), _seconds(found[1])


def _seconds(found: re.Match[str]) -> float:
    hours, minutes, seconds, fraction = found.groups()
    return int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds) + float(f"0.{fraction}")


def _spoken(cues: list[Cue]) -> Iterator[tuple[Word, ...]]:
    """The words of each cue. Captions that roll show each line twice; the second time it is not said."""
    shown = ""
    for cue in cues:
        fresh = [line for line in cue.text if _plain(line) and not _SOUND.match(_plain(line))]
        if fresh and _plain(fresh[0]) == shown and (len(fresh) > 1 or len(cue.text) > 1):
            fresh = fresh[1:]
        if cue.text and _plain(cue.text[-1]):
            shown = _plain(cue.text[-1])
        yield tuple(_timed(" ".join(fresh), cue.start_s, cue.end_s))


def _timed(text: str, start_s: float, end_s: float) -> Iterator[Word]:
    """Words between inline times, each run spread over its own stretch."""
    parts = _INLINE.split(text)
    starts = [start_s]
    for part in parts[1::2]:
        found = _TIME["WebVTT"].fullmatch(part)
        starts.append(min(max(_seconds(found) if found else start_s, starts[-1]), end_s))
    for run, begin, end in zip(parts[::2], starts, [*starts[1:], end_s], strict=True):
        yield from spread(_plain(run).split(), begin, end)


def spread(words: list[str], start_s: float, end_s: float) -> Iterator[Word]:
    """Words laid over a stretch of time, each with time by its length and one letter's for the gap."""
    total = sum(len(word) + 1 for word in words)
    letters = 0
    for word in words:
        begin = start_s + (end_s - start_s) * letters / total
        letters += len(word) + 1
        yield Word(word, begin, start_s + (end_s - start_s) * letters / total)


def _plain(line: str) -> str:
    return " ".join(html.unescape(_MARKUP.sub("", line)).split())

"""Matroska chapter XML, as mkvmerge reads it and as the Matroska specification names its elements.

UIDs are made from time and title, so that the same round always gives the same file.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from pathlib import Path
from xml.sax.saxutils import escape

from reviewkit.export.base import Job
from reviewkit.export.chapters import Chapter, chapters_of
from reviewkit.files import write_text
from reviewkit.timecode import stamp

HEAD = (
    '<?xml version="1.0" encoding="UTF-8"?>\n'
    '<!DOCTYPE Chapters SYSTEM "matroskachapters.dtd">\n'
    "<Chapters>\n <EditionEntry>\n  <EditionFlagDefault>1</EditionFlagDefault>\n"
)
TAIL = " </EditionEntry>\n</Chapters>\n"


def write(job: Job, path: Path) -> Sequence[str]:
    write_text(path, text_of(chapters_of(job)))
    return ()


def text_of(chapters: Sequence[Chapter]) -> str:
    return HEAD + "".join(_atom(chapter) for chapter in chapters) + TAIL


def _atom(chapter: Chapter) -> str:
    # The specification counts in nanoseconds; the round is known to the millisecond.
    start, end = f"{stamp(chapter.start_s)}000000", f"{stamp(chapter.end_s)}000000"
    return (
        "  <ChapterAtom>\n"
        f"   <ChapterUID>{uid(chapter)}</ChapterUID>\n"
        f"   <ChapterTimeStart>{start}</ChapterTimeStart>\n"
        f"   <ChapterTimeEnd>{end}</ChapterTimeEnd>\n"
        "   <ChapterDisplay>\n"
        f"    <ChapterString>{escape(chapter.title)}</ChapterString>\n"
        "    <ChapterLanguage>und</ChapterLanguage>\n"
        "   </ChapterDisplay>\n"
        "  </ChapterAtom>\n"
    )


def uid(chapter: Chapter) -> int:
    """A number that is not 0 and fits 63 bits, which some readers keep signed."""
    digest = hashlib.sha256(f"{chapter.start_s:.3f} {chapter.title}".encode()).digest()
    return int.from_bytes(digest[:8]) >> 1 or 1

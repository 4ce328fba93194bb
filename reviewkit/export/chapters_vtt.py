"""WebVTT chapters: one cue a chapter, numbered from 1, as W3C WebVTT says for chapter tracks.

The text is chapter title text: one line, `&`, `<` and `>` written as character references, so that no
title can hold `-->`.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.chapters import chapters_of
from reviewkit.files import write_text
from reviewkit.timecode import stamp


def write(job: Job, path: Path) -> Sequence[str]:
    cues = (
        f"\n{number}\n{stamp(chapter.start_s)} --> {stamp(chapter.end_s)}\n{escape(chapter.title)}\n"
        for number, chapter in enumerate(chapters_of(job), 1)
    )
    write_text(path, "WEBVTT\n" + "".join(cues))
    return ()


def escape(text: str) -> str:
    """Cue text with the three characters that WebVTT gives a meaning written as references."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")

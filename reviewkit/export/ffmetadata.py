"""FFMETADATA chapters, which ffmpeg reads beside a video.

The time base must be written, or times are read as nanoseconds; times are whole numbers; the file has no
byte-order mark; `=`, `;`, `#`, `\\` and line breaks in a value carry a backslash. MP4 drops a chapter
without a title and stretches the first one to 0, so chapters here have titles and no gaps. ffmpeg takes
a backslash before a line feed for a continued line even when it is itself escaped; a space keeps the two
apart, and stays in that title.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.chapters import Chapter, chapters_of
from reviewkit.files import write_text

SPECIAL = re.compile(r"([=;#\\\n])")


def write(job: Job, path: Path) -> Sequence[str]:
    write_text(path, text_of(chapters_of(job)))
    return ()


def text_of(chapters: Sequence[Chapter]) -> str:
    return ";FFMETADATA1\n" + "".join(_entry(chapter) for chapter in chapters)


def _entry(chapter: Chapter) -> str:
    start, end = round(chapter.start_s * 1000), round(chapter.end_s * 1000)
    title = SPECIAL.sub(r"\\\1", chapter.title)
    close = " \n" if title.endswith("\\") else "\n"
    return f"\n[CHAPTER]\nTIMEBASE=1/1000\nSTART={start}\nEND={end}\ntitle={title}{close}"

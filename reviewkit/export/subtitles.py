"""Captions as subtitle files, written by pysubs2.

pysubs2 takes `{…}` for style and `\\N`, `\\n`, `\\h` for breaks whatever the file, and writes `<`, `&` and
`-->` as they are. Braces become round ones; a word joiner, which no one sees, goes where a backslash, a tag,
an arrow or a clock time to the second would otherwise mean something; WebVTT gets character references.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.captions import captions_of
from reviewkit.export.chapters_vtt import escape
from reviewkit.files import write_text

JOINER = "\u2060"
_BRACES = str.maketrans({"{": "(", "}": ")", "\\": f"\\{JOINER}"})
_STAMP = re.compile(r"(\d:)(?=\d\d:\d\d)")


def write_as(form: str, job: Job, path: Path) -> Sequence[str]:
    """Write the captions in pysubs2's format `form`."""
    import pysubs2

    captions, notes = captions_of(job)
    file = pysubs2.SSAFile()
    file.styles["Default"].fontsize = 48
    file.styles["Default"].marginv = 40
    file.info |= {"PlayResX": "1920", "PlayResY": "1080", "Title": "Narration"}
    for caption in captions:
        text = "\\N".join(safe(line, form) for line in caption.lines)
        file.append(
            pysubs2.SSAEvent(start=round(caption.start_s * 1000), end=round(caption.end_s * 1000), text=text)
        )
    write_text(path, file.to_string(form))
    return notes


def safe(line: str, form: str) -> str:
    """A line that every reader of the format shows as text."""
    line = line.translate(_BRACES)
    if form == "vtt":
        return escape(line)
    line = _STAMP.sub(rf"\1{JOINER}", line)
    return line.replace("<", f"<{JOINER}").replace("->", f"-{JOINER}>")

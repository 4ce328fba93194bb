"""JSON chapters 1.2, the format that podcast feeds link to (`application/json+chapters`)."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.chapters import chapters_of
from reviewkit.files import write_text

VERSION = "1.2.0"


def write(job: Job, path: Path) -> Sequence[str]:
    chapters = [
        {"startTime": round(item.start_s, 3), "endTime": round(item.end_s, 3), "title": item.title}
        for item in chapters_of(job)
    ]
    text = json.dumps({"version": VERSION, "chapters": chapters}, ensure_ascii=False, indent=1)
    write_text(path, text + "\n")
    return ()

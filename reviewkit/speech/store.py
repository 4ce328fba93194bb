"""What was heard, kept on disk window by window, so that a killed run loses a batch at most.

One folder a recording and settings: a file a window while it is being listened to, one file `heard.json` when
it is done. Times in it are seconds of the recording.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from pathlib import Path

from reviewkit.files import write_text
from reviewkit.model import Segment, Word


class Store:
    """The folder for one recording (by its content hash) and one set of settings."""

    def __init__(self, root: Path, content: str, settings: str) -> None:
        self._folder = root / content[:24] / hashlib.sha256(settings.encode()).hexdigest()[:12]
        self._done = self._folder / "heard.json"

    def all(self) -> tuple[Segment, ...] | None:
        """Everything heard in the recording, or None while it has not been heard to its end."""
        return _load(self._done)

    def window(self, name: str) -> tuple[Segment, ...] | None:
        return _load(self._folder / f"{name}.json")

    def keep(self, name: str, segments: Sequence[Segment]) -> None:
        write_text(self._folder / f"{name}.json", _text(segments))

    def finish(self, segments: Sequence[Segment]) -> None:
        """Keep the whole, then drop the windows it was made of."""
        write_text(self._done, _text(segments))
        for path in self._folder.glob("*.json"):
            if path != self._done:
                path.unlink(missing_ok=True)


def _text(segments: Sequence[Segment]) -> str:
    rows = [
        [[w.text, round(w.start_s, 3), round(w.end_s, 3), round(w.probability, 3)] for w in segment.words]
        for segment in segments
    ]
    return json.dumps(rows, ensure_ascii=False) + "\n"


def _load(path: Path) -> tuple[Segment, ...] | None:
    """None for what is not there or not readable: it is then heard again."""
    try:
        rows = json.loads(path.read_text(encoding="utf-8"))
        return tuple(Segment(tuple(Word(*word) for word in row)) for row in rows)
    except (OSError, ValueError, TypeError):
        return None

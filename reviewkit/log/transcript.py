"""transcript.json: what was heard, with times.

    {"schema": 1, "model": "...", "language": "en", "duration_s": 350.4, "settings": {"name": "text"},
     "segments": [{"start_s": 1.5, "end_s": 9.0, "text": "Opening hole,",
                   "words": [{"start_s": 1.5, "end_s": 1.9, "word": "Opening", "probability": 0.98}, ...]}]}

Times are seconds on the round's timeline, to the millisecond; probabilities 0 to 1. A word holds its
punctuation and no spaces around it; `word` is always what was heard. Where that was misheard, an optional
key `meant` holds the words meant ("word": "pots", "meant": "putts"), with its punctuation; it is empty for a
word that the one before takes in ("put her", meant "putter" and "").

A stretch that was listened to again stands in a further key, `again`, as

    {"start_s": 61.0, "end_s": 98.4, "hearings": {"low cut": [{"start_s": 61.2, ...}]}}

with the segments heard in each other manner. The file can itself be read as timed text, and a file without
`schema`, `settings`, `again` and `meant` is read the same way.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from reviewkit.errors import FolderError
from reviewkit.files import write_text
from reviewkit.model import HeardAgain, Segment, Transcript, Word

SCHEMA = 1
REMEDY = "Read the footage again with: reviewkit read"


def save_transcript(path: Path, transcript: Transcript) -> None:
    """Write transcript.json whole, a segment a line so that two runs compare well."""
    head = {
        "schema": SCHEMA,
        "model": transcript.model,
        "language": transcript.language,
        "duration_s": round(transcript.duration_s, 3),
        "settings": dict(transcript.settings),
    }
    if transcript.again:
        head["again"] = [_stretch(stretch) for stretch in transcript.again]
    lines = ",\n".join(json.dumps(_segment(item), ensure_ascii=False) for item in transcript.segments)
    write_text(path, json.dumps(head, ensure_ascii=False)[:-1] + f', "segments": [\n{lines}\n]}}\n')


def load_transcript(path: Path) -> Transcript:
    """The transcript at `path`. Raises FolderError when it is missing or not of the documented shape."""
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
        return Transcript(
            segments=_segments(data["segments"]),
            model=str(data.get("model", "")),
            language=str(data.get("language", "en")),
            duration_s=float(data.get("duration_s", 0.0)),
            settings={str(key): str(value) for key, value in data.get("settings", {}).items()},
            again=tuple(_again(stretch) for stretch in data.get("again", ())),
        )
    except FileNotFoundError as error:
        raise FolderError(path, "is missing.", REMEDY) from error
    except (OSError, ValueError, KeyError, TypeError, AttributeError) as error:
        raise FolderError(path, f"is not a transcript ({type(error).__name__}: {error}).", REMEDY) from error


def _segments(found: list[dict[str, Any]]) -> tuple[Segment, ...]:
    return tuple(
        Segment(tuple(_word(word) for word in segment["words"])) for segment in found if segment["words"]
    )


def _segment(segment: Segment) -> dict[str, Any]:
    return {
        "start_s": round(segment.start_s, 3),
        "end_s": round(segment.end_s, 3),
        "text": " ".join(word.text for word in segment.words),
        "words": [_plain(word) for word in segment.words],
    }


def _plain(word: Word) -> dict[str, Any]:
    plain = {
        "start_s": round(word.start_s, 3),
        "end_s": round(word.end_s, 3),
        "word": word.text,
        "probability": round(word.probability, 3),
    }
    return plain if word.meant is None else plain | {"meant": word.meant}


def _word(word: dict[str, Any]) -> Word:
    meant = word.get("meant")
    return Word(
        text=str(word["word"]).strip(),
        start_s=float(word["start_s"]),
        end_s=float(word["end_s"]),
        probability=float(word.get("probability", 1.0)),
        meant=None if meant is None else str(meant).strip(),
    )


def _stretch(stretch: HeardAgain) -> dict[str, Any]:
    return {
        "start_s": round(stretch.start_s, 3),
        "end_s": round(stretch.end_s, 3),
        "hearings": {
            manner: [_segment(segment) for segment in segments]
            for manner, segments in stretch.hearings.items()
        },
    }


def _again(stretch: dict[str, Any]) -> HeardAgain:
    found = stretch.get("hearings", {})
    return HeardAgain(
        start_s=float(stretch["start_s"]),
        end_s=float(stretch["end_s"]),
        hearings={str(manner): _segments(segments) for manner, segments in found.items()},
    )

"""The round as chapters: one a hole, in order, without gaps, from the start to the end of the footage."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from reviewkit.errors import FolderError
from reviewkit.export.base import Choices, Job, one_line, records
from reviewkit.export.titles import PLAIN, WITH_SCORE, fill, relative, score_word
from reviewkit.log import RoundFolder

OPENING, CLOSING = "Opening", "Closing"
LEAST_CLOSING_S = 1.0


@dataclass(frozen=True, slots=True)
class Chapter:
    """Seconds on the round's timeline; `title` is one line and never empty; `hole` is None off the holes."""

    title: str
    start_s: float
    end_s: float
    hole: int | None = None


def chapters_of(job: Job) -> list[Chapter]:
    """Chapters in order, each ending where the next begins, none shorter than a millisecond.

    Raises FolderError when no hole of the round has a time.
    """
    rows = [row for row in records(job.folder.holes) if row["start_s"] is not None]
    if not rows:
        raise FolderError(job.folder.path, "has no hole with a time.", "Run: reviewkit doubts ROUND")
    rows.sort(key=lambda row: row["start_s"])
    last = rows[-1]
    ending = last["start_s"] if last["end_s"] is None else last["end_s"]
    length = max(length_of(job.folder), ending)
    starts = [Chapter(OPENING, 0.0, 0.0)] if rows[0]["start_s"] > 0 else []
    starts += [Chapter(_title(row, job.choices), row["start_s"], 0.0, row["hole"]) for row in rows]
    if last["end_s"] is not None and length - ending >= LEAST_CLOSING_S:
        starts.append(Chapter(CLOSING, ending, 0.0))
    ends = [later.start_s for later in starts[1:]] + [length]
    closed = [replace(chapter, end_s=end) for chapter, end in zip(starts, ends, strict=True)]
    return join_short(closed, 0.001)


def join_short(chapters: Sequence[Chapter], least_s: float) -> list[Chapter]:
    """Chapters of at least `least_s` each: a shorter one joins the next, the last one the one before.

    A joined title names both holes; `Opening` and `Closing` give way to the hole's own title.
    """
    joined: list[Chapter] = []
    for chapter in chapters:
        if joined and joined[-1].end_s - joined[-1].start_s < least_s:
            joined.append(_join(joined.pop(), chapter))
        else:
            joined.append(chapter)
    if len(joined) > 1 and joined[-1].end_s - joined[-1].start_s < least_s:
        last = joined.pop()
        joined.append(_join(joined.pop(), last))
    return joined


def within(chapters: Sequence[Chapter], length_s: float) -> list[Chapter]:
    """Chapters cut at `length_s`: an end past the media makes some containers longer than their streams."""
    kept = [replace(item, end_s=min(item.end_s, length_s)) for item in chapters if item.start_s < length_s]
    return [*kept[:-1], replace(kept[-1], end_s=length_s)] if kept else []


def length_of(folder: RoundFolder) -> float:
    """Length of the round in seconds by round.json, 0.0 when that does not say."""
    ends = [float(item["offset_s"]) + float(item["duration_s"]) for item in folder.meta.get("sources") or ()]
    return max([*ends, float(folder.meta.get("duration_s") or 0.0)])


def _join(first: Chapter, second: Chapter) -> Chapter:
    if first.hole is None:
        title = second.title
    elif second.hole is None:
        title = first.title
    else:
        title = f"{first.title} / {second.title}"
    hole = first.hole if first.hole is not None else second.hole
    return Chapter(title, first.start_s, second.end_s, hole)


def _title(row: dict[str, Any], choices: Choices) -> str:
    template = choices.title or (WITH_SCORE if choices.scores else PLAIN)
    return one_line(fill(template, hole_fields(row))) or f"Hole {row['hole']}"


def hole_fields(row: dict[str, Any]) -> dict[str, str]:
    """A row of holes.csv as title fields; a score that a person should still check carries a `?`."""
    doubt = "" if row["status"] == "sure" else "?"
    fields = {"hole": str(row["hole"])}
    plain = {"par": "par", "order": "play_order", "putts": "putts"}
    fields |= {name: str(row[column]) for name, column in plain.items() if row[column] is not None}
    if row["strokes"] is not None:
        fields["strokes"] = f"{row['strokes']}{doubt}"
        if row["par"] is not None:
            fields["score"] = score_word(row["strokes"], row["par"]) + doubt
    if row["to_par"] is not None:
        fields["to_par"] = relative(row["to_par"]) + doubt
    if row["running_to_par"] is not None:
        fields["running"] = relative(row["running_to_par"]) + doubt
    return fields

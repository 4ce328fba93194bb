"""What every format is given, and the recipe for adding one.

A format is one file of this folder with a function

    def write(job: Job, path: Path) -> Sequence[str]

that writes `path` whole (see `reviewkit.files`) and returns notes: short sentences about what a person
should know (a chapter that was merged, a limit that is passed), empty when there is nothing to tell. A
format of several files gets a folder as `path`. Then add one line to `registry.FORMATS`; the command
line's list, docs/formats.md and the tests follow from that line.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reviewkit.log import RoundFolder

if TYPE_CHECKING:
    import pandas as pd

UNSAFE = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]+")


@dataclass(frozen=True, slots=True)
class Choices:
    """What a person may choose. `title` is a chapter title template, empty for the usual one.

    `scores` puts the score into titles; off by default, because a title gives the ending away. `rate` is
    the frame rate of editor markers and overlays as text ("25", "29.97df"), empty for the footage's own.
    `size` is width and height in pixels of an overlay. `footage` stands in for the files
    that the round names, once a clip.
    """

    title: str = ""
    scores: bool = False
    rate: str = ""
    size: tuple[int, int] = (1920, 1080)
    footage: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class Job:
    """One round to be written out, with the choices made for it."""

    folder: RoundFolder
    choices: Choices = field(default_factory=Choices)


Writer = Callable[[Job, Path], Sequence[str]]


def records(table: pd.DataFrame) -> list[dict[str, Any]]:
    """A table's rows as plain values; what is not known is None."""
    rows = table.astype(object).where(table.notna(), None).to_dict("records")
    return [{str(name): value for name, value in row.items()} for row in rows]


def one_line(text: str) -> str:
    """`text` without line breaks, control characters or anything XML cannot hold; blanks run together."""
    return " ".join(UNSAFE.sub(" ", text).split())


def shorten(text: str, most: int) -> str:
    """`text` in at most `most` bytes of UTF-8, cut between characters and marked with an ellipsis."""
    data = text.encode("utf-8")
    if len(data) <= most:
        return text
    return data[: most - 3].decode("utf-8", "ignore").rstrip() + "…"

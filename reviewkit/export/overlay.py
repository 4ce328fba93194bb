"""The running score as a graphic over the footage, timed so that it never runs ahead of the ball.

A hole's panel appears where the talk turns to the hole, with the score up to the hole before. The hole's own
score joins when the words that tell of the holed stroke have ended. When no such words are known it waits for
the end of the hole. It stands for a moment at least before the next hole's panel. Times are moved to the next
frame, never to an earlier one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil
from pathlib import Path
from typing import Any

from reviewkit.errors import FolderError
from reviewkit.export.base import Job, records
from reviewkit.export.chapters import length_of
from reviewkit.export.drawing import Box, Shape, Text, pixels
from reviewkit.export.frames import Rate, rate_of
from reviewkit.export.titles import UNKNOWN, relative
from reviewkit.files import whole, write_text

USUAL_RATE = Rate(Fraction(5), 5)
LISTING = "overlay.ffconcat"
# Without it ffmpeg counts a picture's time in twenty-fifths of a second.
PRECISE = "option framerate 1000"
REPEAT_S = 5
"""A picture that stands longer is given again, so that players can jump into it."""
MOMENT_S = 3.0
"""How long a score stands at least, into the next hole by no more than a third of that."""
PANEL, INK, QUIET, ACCENT = "#10231ce0", "#ffffff", "#b9c9c0", "#e6b422f2"


@dataclass(frozen=True, slots=True)
class State:
    """What the graphic says from `start_s` on: `hole` empty for nothing at all."""

    start_s: float
    hole: str = ""
    par: str = ""
    made: str = ""
    running: str = ""
    through: int = 0


def states_of(job: Job) -> tuple[list[State], float]:
    """The states in order, the first at 0, and the length of the round in seconds.

    Raises FolderError when no hole has a time.
    """
    rows = [row for row in records(job.folder.holes) if row["start_s"] is not None]
    if not rows:
        raise FolderError(job.folder.path, "has no hole with a time.", "Run: reviewkit doubts ROUND")
    rows.sort(key=lambda row: row["start_s"])
    drops = _drops(records(job.folder.shots))
    length = max(length_of(job.folder), *(row["end_s"] or row["start_s"] for row in rows))
    states = [State(0.0)]
    running, through, free_s = "", 0, 0.0
    for row in rows:
        moment = min(MOMENT_S, ((row["end_s"] or row["start_s"]) - row["start_s"]) / 3)
        start = max(row["start_s"], min(free_s, row["start_s"] + moment))
        before = State(start, str(row["hole"]), _known(row["par"]), "", running, through)
        states.append(before)
        if row["strokes"] is None or row["end_s"] is None:
            running = UNKNOWN if row["running_to_par"] is None else running
            continue
        doubt = "" if row["status"] == "sure" else "?"
        through += 1
        running = UNKNOWN if row["running_to_par"] is None else relative(row["running_to_par"]) + doubt
        # A stroke told past the hole's end is told no later than the next hole may show it.
        drop = min(max(drops.get(row["hole"], row["end_s"]), start), row["end_s"])
        free_s = drop + MOMENT_S
        states.append(State(drop, before.hole, before.par, f"{row['strokes']}{doubt}", running, through))
    return _one_at_a_time(states), length


def on_frames(states: Sequence[State], length_s: float, rate: Rate) -> list[tuple[int, int, State]]:
    """First frame, frame after the last, and state; states shorter than a frame are left out."""
    firsts = [ceil(Fraction(state.start_s).limit_denominator(1_000_000) * rate.fps) for state in states]
    ends = [*firsts[1:], max(ceil(Fraction(length_s).limit_denominator(1000) * rate.fps), firsts[-1] + 1)]
    return [(a, b, state) for a, b, state in zip(firsts, ends, states, strict=True) if a < b]


def overlay_rate(job: Job) -> Rate:
    """The rate asked for, or five frames a second: the graphic stands still nearly all the time."""
    return rate_of(job.choices.rate, job.folder) if job.choices.rate else USUAL_RATE


def write_pictures(job: Job, folder: Path, rate: Rate, size: tuple[int, int]) -> tuple[Path, list[int]]:
    """A PNG a state in `folder` and the ffconcat list that plays them.

    Returns the list's path and each picture's length in frames of `rate`.
    """
    states, length = states_of(job)
    lines, name, frames = ["ffconcat version 1.0"], "", []
    for number, (first, end, state) in enumerate(on_frames(states, length, rate), 1):
        name = f"{number:04d}.png"
        frames.append(end - first)
        with whole(folder / name) as part:
            pixels(panel(state, *size), *size).save(part, format="PNG", compress_level=1)
        seconds = float((end - first) / rate.fps)
        for start in range(0, ceil(seconds), REPEAT_S):
            lines += [f"file {name}", PRECISE, f"duration {min(seconds - start, REPEAT_S):.6f}"]
    for stale in folder.glob("[0-9][0-9][0-9][0-9].png"):
        if int(stale.stem) > len(frames):
            stale.unlink()
    # ffmpeg counts the last duration only when another picture follows.
    lines += [f"file {name}", PRECISE]
    write_text(folder / LISTING, "\n".join(lines) + "\n")
    return folder / LISTING, frames


def panel(state: State, wide: int, high: int) -> list[Shape]:
    """The graphic for a picture of `wide` by `high`: bottom left, inside the safe area, large enough to
    be read on a phone (figures a twentieth of the short side or more)."""
    if not state.hole:
        return []
    unit = min(wide, high) / 20
    x, tall = wide * 0.05, unit * 3.2
    y = high * 0.95 - tall
    middle = "PAR " + state.par if not state.made else f"PAR {state.par} · MADE {state.made}"
    across = unit * (5.4 if not state.made else 10.4)
    whole = unit * 3.4 + across + unit * (4.2 if state.through else -1.0)
    shapes: list[Shape] = [Box(x, y, whole, tall, PANEL, radius=unit * 0.5)]
    shapes.append(Text(x + unit * 1.8, y + tall * 0.26, "HOLE", unit * 0.72, QUIET, bold=True))
    shapes.append(Text(x + unit * 1.8, y + tall * 0.63, state.hole, unit * 1.6, INK, bold=True))
    shapes.append(Text(x + unit * 3.6, y + tall / 2, middle, unit * 1.1, INK, "start", True))
    right = x + unit * 3.4 + across
    if state.through:
        shapes.append(Box(right, y, unit * 4.2, tall, ACCENT, radius=unit * 0.5))
        shapes.append(
            Text(right + unit * 2.1, y + tall * 0.37, state.running, unit * 1.5, "#10231c", bold=True)
        )
        words = f"THRU {state.through}"
        shapes.append(Text(right + unit * 2.1, y + tall * 0.78, words, unit * 0.72, "#10231c", bold=True))
    return shapes


def _drops(shots: Sequence[dict[str, Any]]) -> dict[int, float]:
    """By hole, when the words that tell of the holed stroke have ended; an implied one has no words."""
    told = [row for row in shots if row["told"] and row["holed"] and row["end_s"] is not None]
    return {row["hole"]: row["end_s"] for row in told}


def _one_at_a_time(states: Sequence[State]) -> list[State]:
    """States without those that another at the very same moment replaces."""
    return [a for a, b in pairwise(states) if a.start_s < b.start_s] + list(states[-1:])


def _known(value: int | None) -> str:
    return UNKNOWN if value is None else str(value)

"""The overlay as Advanced SubStation text, which players show and ffmpeg burns in."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job
from reviewkit.export.frames import Rate
from reviewkit.export.overlay import State, on_frames, states_of
from reviewkit.files import write_text

TICKS = 100
"""The format counts hundredths of a second."""


def write(job: Job, path: Path) -> Sequence[str]:
    import pysubs2

    wide, high = job.choices.size
    file = pysubs2.SSAFile()
    file.info |= {"PlayResX": str(wide), "PlayResY": str(high), "Title": "Running score"}
    file.styles = {"Score": _style(wide, high)}
    states, length = states_of(job)
    for first, end, state in on_frames(states, length, Rate(Fraction(TICKS), TICKS)):
        if state.hole:
            event = pysubs2.SSAEvent(first * 1000 // TICKS, end * 1000 // TICKS, words(state), style="Score")
            file.append(event)
    write_text(path, file.to_string("ass"))
    return ()


def words(state: State) -> str:
    """`HOLE 7 · PAR 4 · MADE 5 · +3 THRU 7`, on one line."""
    parts = [f"HOLE {state.hole}", f"PAR {state.par}"]
    if state.made:
        parts.append(f"MADE {state.made}")
    if state.through:
        parts.append(f"{state.running} THRU {state.through}")
    return " · ".join(parts)


def _style(wide: int, high: int) -> Any:
    import pysubs2

    return pysubs2.SSAStyle(
        fontname="DejaVu Sans",
        fontsize=min(wide, high) / 20,
        bold=True,
        primarycolor=pysubs2.Color(255, 255, 255),
        outlinecolor=pysubs2.Color(16, 35, 28, 40),
        borderstyle=3,
        outline=min(wide, high) / 90,
        shadow=0,
        alignment=pysubs2.Alignment.BOTTOM_LEFT,
        marginl=round(wide * 0.05),
        marginv=round(high * 0.05),
    )

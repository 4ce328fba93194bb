"""Which stretches of the round become clips, and what they are called."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from reviewkit.errors import ReviewkitError
from reviewkit.export.base import records
from reviewkit.footage.cut import Look, cut, plan, suffix_for
from reviewkit.footage.timeline import Timeline
from reviewkit.log import RoundFolder

REEL = "reel"


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a person asks for: hole numbers, (hole, stroke) pairs, how many best and worst strokes by
    strokes gained. `every` adds all holes."""

    every: bool = False
    holes: tuple[int, ...] = ()
    strokes: tuple[tuple[int, int], ...] = ()
    best: int = 0
    worst: int = 0


@dataclass(frozen=True, slots=True)
class Pick:
    """One clip to be: its file name without suffix, which sorts in order of play, and its seconds."""

    name: str
    start_s: float
    end_s: float


def picks_of(folder: RoundFolder, wanted: Wanted) -> list[Pick]:
    """The clips asked for, in order of play, best and worst strokes last.

    Raises ReviewkitError for a hole or stroke that the round does not have or that has no time.
    """
    picks = [*_holes(folder, wanted), *_strokes(folder, wanted), *_ranked(folder, wanted)]
    if not picks:
        raise ReviewkitError(
            "No clips were asked for.", "Choose --holes, --hole, --stroke, --best or --worst."
        )
    return picks


def write_clips(
    timeline: Timeline, picks: Sequence[Pick], out: Path, pad_s: float, look: Look
) -> Iterator[tuple[Path, bool]]:
    """Write each pick with `pad_s` seconds around it into `out`; yields each file and whether it was
    copied as it is."""
    for pick in picks:
        stretches = plan(timeline, [_padded(pick, pad_s, timeline)], look)
        path = out / f"{pick.name}{suffix_for(stretches)}"
        cut(stretches, look, path)
        yield path, stretches[0].copied


def write_reel(
    timeline: Timeline, picks: Sequence[Pick], out: Path, pad_s: float, look: Look
) -> tuple[Path, bool]:
    """Write all picks one after another as one file in `out`."""
    stretches = plan(timeline, [_padded(pick, pad_s, timeline) for pick in picks], look)
    path = out / f"{REEL}{suffix_for(stretches)}"
    cut(stretches, look, path)
    return path, stretches[0].copied


def _padded(pick: Pick, pad_s: float, timeline: Timeline) -> tuple[float, float]:
    start, end = max(pick.start_s - pad_s, 0.0), min(pick.end_s + pad_s, timeline.duration_s)
    if start >= end:
        raise ReviewkitError(
            f"{pick.name} lies past the end of the footage.", "Give all clips of the round, in their order."
        )
    return start, end


def _holes(folder: RoundFolder, wanted: Wanted) -> list[Pick]:
    rows = records(folder.holes)
    known = {row["hole"]: row for row in rows if row["start_s"] is not None and row["end_s"] is not None}
    for hole in wanted.holes:
        if hole not in known:
            raise ReviewkitError(f"hole {hole} has no time in this round.", _choices("Holes", known))
    return [
        Pick(f"h{row['play_order']:02d}-hole-{hole:02d}", row["start_s"], row["end_s"])
        for hole, row in known.items()
        if wanted.every or hole in wanted.holes
    ]


def _strokes(folder: RoundFolder, wanted: Wanted) -> list[Pick]:
    known = _timed(folder)
    for hole, stroke in wanted.strokes:
        if (hole, stroke) not in known:
            strokes = [number for at, number in known if at == hole]
            raise ReviewkitError(
                f"stroke {stroke} of hole {hole} has no time in this round.",
                _choices("Strokes told", strokes),
            )
    return [pick for key, pick in known.items() if key in wanted.strokes]


def _ranked(folder: RoundFolder, wanted: Wanted) -> list[Pick]:
    """Strokes that gained most and lost most; those that are only inferred have no picture to show."""
    if not (wanted.best or wanted.worst):
        return []
    from reviewkit.stats import strokes_gained

    known = _timed(folder)
    gains = [item for item in strokes_gained(folder).strokes if (item.hole, item.stroke) in known]
    gains.sort(key=lambda item: item.mean)
    picks = []
    for word, chosen in (("best", gains[::-1][: wanted.best]), ("worst", gains[: wanted.worst])):
        for place, item in enumerate(chosen, 1):
            pick = known[item.hole, item.stroke]
            picks.append(Pick(f"{word}-{place:02d}-{pick.name}", pick.start_s, pick.end_s))
    return picks


def _timed(folder: RoundFolder) -> dict[tuple[int, int], Pick]:
    """Told strokes with a time, by hole and stroke, in order of play."""
    order = {row["hole"]: row["play_order"] for row in records(folder.holes)}
    picks = {}
    for row in records(folder.shots):
        if row["told"] and row["start_s"] is not None and row["end_s"] is not None:
            words = [
                f"h{order.get(row['hole'], 0):02d}",
                f"hole-{row['hole']:02d}",
                f"stroke-{row['stroke']:02d}",
            ]
            name = "-".join(filter(None, [*words, row["kind"], row["club"]]))
            name = re.sub(r"[^0-9A-Za-z-]", "", name)
            picks[row["hole"], row["stroke"]] = Pick(name, row["start_s"], row["end_s"])
    return picks


def _choices(what: str, found: object) -> str:
    numbers = ", ".join(map(str, found)) if isinstance(found, dict | list) else ""
    return f"{what}: {numbers or 'none'}."

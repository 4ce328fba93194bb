"""Rounds and titles that are hard on file formats."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from hypothesis import strategies as st

from reviewkit.log import RoundFolder
from reviewkit.model import HoleScore, Round, Shot

PIECES = (
    *("⛳️🏌🏽‍♀️", "=;#\\", "line\nbreak", "\r", "\t", "x" * 300, "é" * 150, "שלום", "مرحبا", "-->"),
    *("<script>alert(1)</script>", "<4>", "&amp;", "&", "]]>", '"', "'", ",", "{\\an8}", "\\N", "{{", "}"),
    *(
        "\u2028",
        "\x00",
        "\x1b[31m",
        "\ufeff",
        "NOTE",
        "[CHAPTER]",
        "00:00:01.000 --> 00:00:02.000",
        "=1+1",
        "%",
    ),
)
titles = st.lists(
    st.one_of(st.sampled_from(PIECES), st.text(st.characters(exclude_categories=("Cs",)), max_size=8)),
    min_size=0,
    max_size=4,
).map("".join)
"""Text that may stand in a title; no `{name}` of an unknown field, because that is an error by itself."""


@st.composite
def starts(draw: st.DrawFn) -> list[float]:
    """Hole starts in seconds, ascending, to the millisecond; gaps from 1 ms to a quarter of an hour."""
    gaps = draw(st.lists(st.integers(1, 900_000), min_size=1, max_size=18))
    clock = draw(st.integers(0, 60_000))
    times = []
    for gap in gaps:
        times.append(clock / 1000)
        clock += gap
    return times


def small_round(
    folder: Path,
    times: Sequence[float] = (3.0, 20.0, 41.5),
    length_s: float | None = None,
    evidence: str = "driver, down the left side",
    sources: Sequence[dict[str, object]] = (),
) -> RoundFolder:
    """A round folder with a par 4 in five strokes (the last holed) at each of `times`."""
    end = times[-1] + 17.0 if length_s is None else length_s
    ends = [*times[1:], min(times[-1] + 15.0, end)]
    scores, shots = [], []
    for order, (start, until) in enumerate(zip(times, ends, strict=True), 1):
        scores.append(HoleScore(order, order, start, until, 4, 5, 1, order, 2, 0, True, False, 0.97, "sure"))
        shots += _strokes(order, start, until, evidence)
    saved = RoundFolder(folder)
    meta: dict[str, object] = {
        "sources": list(sources) or [{"path": "round.mp4", "offset_s": 0.0, "duration_s": end}],
        "plan": {},
        "doubts": [],
        "settings": {},
    }
    saved.save(Round(tuple(scores), tuple(shots)), meta)
    return saved


def _strokes(hole: int, start: float, until: float, evidence: str) -> list[Shot]:
    plan = (
        ("tee", "D", "tee", 380.0, "fairway"),
        ("approach", "7I", "fairway", 150.0, "rough"),
        ("chip", "56", "rough", 15.0, "green"),
        ("putt", "", "green", 4.0, "green"),
        ("putt", "", "green", 1.0, "holed"),
    )
    step = (until - start) / (len(plan) + 1)
    return [
        Shot(
            hole=hole,
            stroke=number,
            start_s=start + step * (number - 1),
            end_s=start + step * (number - 0.5),
            kind=kind,
            club=club,
            lie=lie,
            distance_yd=distance,
            result=result,
            holed=result == "holed",
            evidence=evidence,
        )
        for number, (kind, club, lie, distance, result) in enumerate(plan, 1)
    ]

"""The odds of the target as the round went, as a picture."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reviewkit.errors import FileError
from reviewkit.files import whole
from reviewkit.stats.odds import HoleOdds

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SUFFIXES = (".svg", ".png")
INK, LINE, FILL = "#26323a", "#1b6e5a", "#cfe3db"


def plot_odds(rows: Sequence[HoleOdds], title: str = "") -> Figure:
    """The chance of the target after each hole, start included; needs at least one row."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(7.2, 3.2), layout="constrained")
    axes = figure.subplots()
    places = range(len(rows))
    chances = [row.probability for row in rows]
    axes.fill_between(places, chances, step="post", color=FILL)
    axes.step(places, chances, where="post", color=LINE, linewidth=1.8)
    axes.plot(places, chances, "o", color=LINE, markersize=4)
    axes.set_xticks(places, [str(row.hole or "start") for row in rows])
    axes.set_ylim(0, 1)
    axes.yaxis.set_major_formatter(lambda share, _: f"{share:.0%}")
    axes.set_xlabel("after hole")
    axes.set_ylabel("chance of the target")
    axes.set_title(title, loc="left", color=INK)
    axes.grid(axis="y", alpha=0.3)
    return figure


def save_plot(figure: Figure, path: Path) -> None:
    """Write an SVG (text as text, the same bytes each time) or PNG, by suffix. Raises FileError."""
    import matplotlib

    if path.suffix.lower() not in SUFFIXES:
        raise FileError(path, "is no picture we write.", f"End its name in {' or '.join(SUFFIXES)}.")
    svg = path.suffix.lower() == ".svg"
    with matplotlib.rc_context({"svg.fonttype": "none", "svg.hashsalt": "reviewkit"}), whole(path) as part:
        figure.savefig(
            part, format=path.suffix.lower()[1:], dpi=150, metadata={"Date": None} if svg else None
        )

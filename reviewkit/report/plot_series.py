"""A series as pictures: scores against targets, and what to practise."""

from __future__ import annotations

from typing import TYPE_CHECKING

from reviewkit.report.plot_odds import FILL, INK, LINE
from reviewkit.stats.series import Series

if TYPE_CHECKING:
    from matplotlib.figure import Figure


def plot_scores(series: Series) -> Figure:
    """Score to par a round, with its target where it has one; rounds without a score leave a gap."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(7.2, 3.2), layout="constrained")
    axes = figure.subplots()
    places = range(len(series.rounds))
    scores = [float("nan") if r.to_par is None else r.to_par for r in series.rounds]
    targets = [float("nan") if r.target is None else r.target for r in series.rounds]
    axes.plot(places, scores, "o-", color=LINE, label="score to par")
    axes.plot(places, targets, "_", color=INK, markersize=16, markeredgewidth=2, label="target")
    if len(places) <= 30:
        axes.set_xticks(places, [r.name for r in series.rounds], rotation=45, ha="right")
    axes.grid(axis="y", alpha=0.3)
    axes.legend(frameon=False)
    return figure


def plot_practice(series: Series) -> Figure:
    """Strokes lost on eighteen holes by skill with the 80 % interval, most lost on top."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(7.2, 2.6), layout="constrained")
    axes = figure.subplots()
    lines = list(reversed(series.practice))
    lost = [line.lost for line in lines]
    ends = [[line.lost - line.low for line in lines], [line.high - line.lost for line in lines]]
    axes.barh([line.category for line in lines], lost, color=FILL, edgecolor=LINE)
    axes.errorbar(lost, range(len(lines)), xerr=ends, fmt="none", color=INK, capsize=4)
    axes.axvline(0, color=INK, linewidth=0.8)
    axes.set_xlabel("strokes lost to the benchmark on eighteen holes")
    return figure

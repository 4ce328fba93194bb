"""Figures from the log, each with its definition, unit, source and what it rests on.

A new statistic is one function decorated with `registry.statistic`, in the module of its group below.
"""

from __future__ import annotations

from collections.abc import Iterable

from reviewkit.log import RoundFolder
from reviewkit.stats import around, faults, greens, putting, scores, skills
from reviewkit.stats.gained import StrokesGained, gained_of, strokes_gained
from reviewkit.stats.odds import HoleOdds, target_odds
from reviewkit.stats.play import Play, play_of
from reviewkit.stats.registry import GROUPS, STATISTICS, Figure, Statistic, chosen
from reviewkit.stats.series import Series, series

MODULES = (scores, greens, around, putting, faults, skills)

__all__ = [
    "GROUPS",
    "MODULES",
    "STATISTICS",
    "Figure",
    "HoleOdds",
    "Play",
    "Series",
    "Statistic",
    "StrokesGained",
    "figures",
    "gained_of",
    "play_of",
    "series",
    "strokes_gained",
    "target_odds",
]


def figures(folder: RoundFolder, names: Iterable[str] = ()) -> tuple[Figure, ...]:
    """Every figure of a round, or those of the statistics named, in the order of STATISTICS."""
    play = play_of(folder)
    return tuple(figure for statistic in chosen(names) for figure in statistic.figures(play))

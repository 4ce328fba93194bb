"""Strokes gained as figures, and what penalties cost beyond their strokes."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from reviewkit.stats.benchmark import SOURCE
from reviewkit.stats.gained import StrokesGained, gained_of
from reviewkit.stats.play import Play
from reviewkit.stats.registry import Reading, statistic

GROUP = "Strokes gained"


@lru_cache(maxsize=4)
def gained_once(play: Play) -> StrokesGained:
    """Strokes gained of a round, computed once for the figures that share it."""
    return gained_of(play)


@statistic(
    "strokes_gained",
    "Strokes gained",
    group=GROUP,
    unit="strokes",
    counts="strokes' distances",
    definition="Benchmark before a stroke minus benchmark after it minus what it cost, summed in all and by "
    "skill: off the tee (tee shots on par 4 and longer), approach, around the green (within about 30 yards "
    "of its edge), putting; with the 80 % interval left by untold distances.",
    source=f"benchmark: {SOURCE}; categories: PGA TOUR definition, from memory",
)
def strokes_gained_by_skill(play: Play) -> Sequence[Reading]:
    gained = gained_once(play)
    sums = [(gained.total, ""), *((skill, skill.category) for skill in gained.categories)]
    return [
        Reading(
            skill.mean if skill.strokes else None,
            skill.strokes,
            skill.exact,
            skill.strokes,
            part,
            skill.low if skill.strokes else None,
            skill.high if skill.strokes else None,
        )
        for skill, part in sums
    ]


@statistic(
    "penalty_cost",
    "Lost with penalties",
    group=GROUP,
    unit="strokes",
    counts="strokes' distances",
    definition="Strokes gained of the strokes that incurred a penalty, the penalty strokes included.",
    source=f"benchmark: {SOURCE}",
)
def penalty_cost(play: Play) -> Reading:
    penalised = {(shot.hole, shot.stroke) for _, shot in play.strokes if shot.penalty_strokes}
    gains = [gain for gain in gained_once(play).strokes if (gain.hole, gain.stroke) in penalised]
    value = sum(gain.mean for gain in gains)
    return Reading(value, len(gains), sum(gain.exact for gain in gains), len(gains))

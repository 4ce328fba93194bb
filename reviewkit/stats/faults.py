"""What went wrong: penalties, contact, misses by direction for each kind of stroke and each club."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from reviewkit.model.values import CLUBS, CONTACTS, KINDS, MISSES
from reviewkit.stats.play import Play
from reviewkit.stats.registry import Reading, statistic, total

GROUP = "Faults"
COUNTED = "counted from shots.csv"
CAUSES = {
    "ob": "out of bounds",
    "lost": "lost ball",
    "penalty": "penalty area",
    "unplayable": "unplayable ball",
}


@statistic(
    "penalties",
    "Penalty strokes",
    group=GROUP,
    unit="strokes",
    counts="holes",
    definition="Penalty strokes on the holes where they are known, then by what caused them.",
    source="Rules of Golf 2023: 17.1d, 18.1, 18.2, 19.2",
)
def penalties(play: Play) -> Sequence[Reading]:
    causes: Counter[str] = Counter()
    for _, shot in play.strokes:
        causes[CAUSES.get(shot.result, "other")] += shot.penalty_strokes
    every = total(hole.score.penalty_strokes for hole in play.holes)
    return [every, *(_count(causes[cause], cause) for cause in (*CAUSES.values(), "other") if causes[cause])]


@statistic(
    "contact",
    "Contact",
    group=GROUP,
    unit="times",
    counts="strokes",
    definition="Strokes by how the ball was struck, of the strokes where the talk says so.",
    source=COUNTED,
)
def contact(play: Play) -> Sequence[Reading]:
    struck = [shot.contact for _, shot in play.strokes if shot.kind != "putt"]
    told = Counter(filter(None, struck))
    known = sum(told.values())
    return [Reading(told[name], known, known, len(struck), name) for name in CONTACTS if told[name]]


@statistic(
    "misses",
    "Missed",
    group=GROUP,
    unit="times",
    counts="strokes",
    definition="Strokes by the side of the target on which they missed, for each kind of stroke; "
    "a stroke with no miss told may have been on target or not told.",
    source=COUNTED,
)
def misses(play: Play) -> Sequence[Reading]:
    pairs = Counter((shot.kind, shot.miss) for _, shot in play.strokes)
    return [
        _count(pairs[kind, side], f"{kind} {side}") for kind in KINDS for side in MISSES if pairs[kind, side]
    ]


@statistic(
    "misses_by_club",
    "Missed",
    group=GROUP,
    unit="times",
    counts="strokes",
    definition="Strokes by the side of the target on which they missed, for each club told.",
    source=COUNTED,
)
def misses_by_club(play: Play) -> Sequence[Reading]:
    pairs = Counter((shot.club, shot.miss) for _, shot in play.strokes)
    return [
        _count(pairs[club, side], f"{club} {side}") for club in CLUBS for side in MISSES if pairs[club, side]
    ]


def _count(number: int, part: str) -> Reading:
    return Reading(number, None, number, number, part)

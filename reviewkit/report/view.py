"""What the report shows of one round, gathered from the folder before any of it is drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.log import RoundFolder
from reviewkit.log.amended import doubts, saved_round
from reviewkit.model import Doubt, HoleScore, Plan, Shot
from reviewkit.report.footage import Clip, clips_of
from reviewkit.stats import Figure, StrokesGained, figures, strokes_gained
from reviewkit.stats.gained import HoleGain, StrokeGain


@dataclass(frozen=True, slots=True)
class StrokeView:
    """A stroke with what it gained, None where its hole is not counted."""

    shot: Shot
    gain: StrokeGain | None


@dataclass(frozen=True, slots=True)
class HoleView:
    """A hole with its strokes, doubts and strokes gained; `odds` of the target once it is played."""

    score: HoleScore
    strokes: tuple[StrokeView, ...]
    doubts: tuple[Doubt, ...]
    gain: HoleGain | None
    odds: float | None = None

    @property
    def inferred(self) -> bool:
        return any(not stroke.shot.told for stroke in self.strokes)


@dataclass(frozen=True, slots=True)
class Half:
    """Up to nine holes of the card. Sums are None where a hole's value is not known."""

    name: str
    holes: tuple[HoleView, ...]
    par: int | None
    strokes: int | None
    putts: int | None


@dataclass(frozen=True, slots=True)
class RoundView:
    """A round as the page shows it. `odds_before` is before the first stroke, None without a target."""

    title: str
    plan: Plan
    holes: tuple[HoleView, ...]
    doubts: tuple[Doubt, ...]
    halves: tuple[Half, ...]
    figures: tuple[Figure, ...]
    gained: StrokesGained
    clips: tuple[Clip, ...]
    odds_before: float | None = None

    @property
    def total(self) -> Half:
        return half("Total", self.holes)

    @property
    def to_par(self) -> int | None:
        return self.holes[-1].score.running_to_par if self.holes else None

    @property
    def length_s(self) -> float:
        return max((hole.score.end_s for hole in self.holes), default=0.0)

    @property
    def inferred(self) -> int:
        return sum(not stroke.shot.told for hole in self.holes for stroke in hole.strokes)

    @property
    def strokes(self) -> tuple[StrokeView, ...]:
        return tuple(stroke for hole in self.holes for stroke in hole.strokes)


def view_of(folder: RoundFolder) -> RoundView:
    """Gather everything about the round in `folder`."""
    reading = saved_round(folder)
    gained = strokes_gained(folder)
    odds = _odds(folder)
    open_doubts = doubts(folder)
    by_stroke = {(gain.hole, gain.stroke): gain for gain in gained.strokes}
    by_hole = {gain.hole: gain for gain in gained.holes}
    holes = tuple(
        HoleView(
            score=score,
            strokes=tuple(
                StrokeView(shot, by_stroke.get((shot.hole, shot.stroke)))
                for shot in reading.shots
                if shot.hole == score.hole
            ),
            doubts=tuple(doubt for doubt in open_doubts if doubt.hole == score.hole),
            gain=by_hole.get(score.hole),
            odds=odds.get(score.hole),
        )
        for score in reading.scores
    )
    return RoundView(
        title=reading.plan.card.course or folder.path.resolve().name,
        plan=reading.plan,
        holes=holes,
        doubts=open_doubts,
        halves=_halves(holes),
        figures=tuple(figure for figure in figures(folder) if figure.value is not None),
        gained=gained,
        clips=clips_of(folder),
        odds_before=odds.get(None),
    )


def _odds(folder: RoundFolder) -> dict[int | None, float]:
    from reviewkit.stats.odds import target_odds

    return {row.hole: row.probability for row in target_odds(folder)}


def _halves(holes: tuple[HoleView, ...]) -> tuple[Half, ...]:
    """Nines in order of play, called out and in where they are the card's."""
    parts = [holes[start : start + 9] for start in range(0, len(holes), 9)]
    names = {tuple(range(1, 10)): "Out", tuple(range(10, 19)): "In"}
    plain = ("First nine", "Second nine", "Third nine", "Fourth nine")
    return tuple(
        half(names.get(tuple(hole.score.hole for hole in part), plain[place]), part)
        for place, part in enumerate(parts)
    )


def half(name: str, holes: tuple[HoleView, ...]) -> Half:
    return Half(
        name=name,
        holes=holes,
        par=_sum([hole.score.par for hole in holes]),
        strokes=_sum([hole.score.strokes for hole in holes]),
        putts=_sum([hole.score.putts for hole in holes]),
    )


def _sum(values: Sequence[int | None]) -> int | None:
    known = [value for value in values if value is not None]
    return sum(known) if known and len(known) == len(values) else None

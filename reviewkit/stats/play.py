"""A round folder as the statistics see it: holes with their strokes, in order of play."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from reviewkit.errors import FolderError, ValueRuleError
from reviewkit.log import RoundFolder
from reviewkit.model import Card, CardHole, HoleScore, Plan, Shot

if TYPE_CHECKING:
    import pandas as pd


@dataclass(frozen=True, slots=True)
class Hole:
    """One hole's row and its strokes by stroke number."""

    score: HoleScore
    shots: tuple[Shot, ...]

    @property
    def number(self) -> int:
        return self.score.hole

    @property
    def par(self) -> int | None:
        return self.score.par

    @property
    def to_par(self) -> int | None:
        """Strokes minus par; None when either is not known."""
        if self.score.to_par is not None:
            return self.score.to_par
        if self.score.strokes is None or self.score.par is None:
            return None
        return self.score.strokes - self.score.par

    def following(self, shot: Shot) -> Shot | None:
        """The stroke played after `shot` on this hole."""
        later = [other for other in self.shots if other.stroke > shot.stroke]
        return later[0] if later else None


@dataclass(frozen=True, slots=True)
class Play:
    """A round: `holes` in order of play, and the plan that round.json keeps."""

    name: str
    holes: tuple[Hole, ...]
    plan: Plan

    @property
    def strokes(self) -> Iterator[tuple[Hole, Shot]]:
        """Every stroke with its hole, in order of play."""
        return ((hole, shot) for hole in self.holes for shot in hole.shots)


def play_of(folder: RoundFolder) -> Play:
    """The folder's tables as model objects. Raises FolderError for a value outside the documented sets."""
    try:
        scores = [_score(row) for row in rows(folder.holes)]
        shots = [_shot(row) for row in rows(folder.shots)]
    except (ValueRuleError, TypeError) as error:
        raise FolderError(
            folder.path,
            f"holds a value that the log does not allow ({error}).",
            "Correct it or read the round again.",
        ) from error
    scores.sort(key=lambda score: score.play_order)
    by_hole: dict[int, list[Shot]] = {score.hole: [] for score in scores}
    for shot in shots:
        if shot.hole not in by_hole:
            raise FolderError(
                folder.shots_csv,
                f"has a stroke on hole {shot.hole}, which holes.csv lacks.",
                "Add the hole or read the round again.",
            )
        by_hole[shot.hole].append(shot)
    holes = (Hole(score, tuple(sorted(by_hole[score.hole], key=lambda s: s.stroke))) for score in scores)
    return Play(folder.path.name, tuple(holes), plan_of(folder))


def plan_of(folder: RoundFolder) -> Plan:
    """The plan in round.json; an empty one where there is none."""
    kept: dict[str, Any] = folder.meta.get("plan") or {}
    card = kept.get("card") or {}
    try:
        lines = tuple(
            CardHole(line["hole"], line.get("par"), line.get("yards"), line.get("stroke_index"))
            for line in card.get("holes") or ()
        )
        order = tuple(int(number) for number in kept.get("order") or ())
        return Plan(card=Card(lines, card.get("course") or ""), order=order, target=kept.get("target"))
    except (ValueRuleError, TypeError, KeyError, AttributeError, ValueError) as error:
        raise FolderError(
            folder.round_json, f"holds a plan that cannot be used ({error}).", "Read the round again."
        ) from error


def rows(table: pd.DataFrame) -> Iterator[dict[str, Any]]:
    """Rows as plain Python values, None for an empty cell."""
    plain = {name: table[name].astype(object).where(table[name].notna(), None) for name in table.columns}
    names = list(plain)
    for values in zip(*plain.values(), strict=True):
        yield dict(zip(names, values, strict=True))


def _score(row: dict[str, Any]) -> HoleScore:
    known = {name: value for name, value in row.items() if value is not None}
    known["doubts"] = tuple(filter(None, str(known.get("doubts", "")).split("; ")))
    return HoleScore(**{"start_s": 0.0, "end_s": 0.0, **known})


def _shot(row: dict[str, Any]) -> Shot:
    known = {name: value for name, value in row.items() if value is not None}
    return Shot(**{"start_s": 0.0, "end_s": 0.0, "kind": "", **known})

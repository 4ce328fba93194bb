"""A round while corrections are worked into it: holes with their strokes, and the arithmetic that follows."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from reviewkit.model import Doubt, HoleScore, HoleSpan, Round, Shot

ON_GREEN = ("green", "holed")
MOST = 30
"""Strokes a hole can have; a hole whose strokes a person has all moved away has no score."""


@dataclass(slots=True, eq=False)
class Stroke:
    """A stroke in work; `origin` is its number in the reading, None for one that a person added."""

    shot: Shot
    origin: tuple[int, int] | None = None


@dataclass(slots=True, eq=False)
class Hole:
    """One hole in work, `origin` its number in the reading.

    `pinned` names the columns a person has settled, `touched` says that strokes were edited, `whole` that the
    reading's strokes added up to its score before anything was corrected.
    """

    score: HoleScore
    strokes: list[Stroke]
    origin: int | None = None
    pinned: set[str] = field(default_factory=set)
    touched: bool = False
    whole: bool = True

    @property
    def shots(self) -> list[Shot]:
        return [stroke.shot for stroke in self.strokes]

    def count(self) -> int:
        """Strokes and penalty strokes of the rows at hand."""
        return len(self.strokes) + sum(shot.penalty_strokes for shot in self.shots)

    def pin(self, name: str, value: object) -> None:
        changed: dict[str, object] = {name: value}
        self.score = replace(self.score, **changed)  # type: ignore[arg-type]
        self.pinned.add(name)

    def renumber(self) -> None:
        """Number the strokes anew; penalty strokes count in the number of the stroke after them."""
        number = 1
        for stroke in self.strokes:
            stroke.shot = replace(stroke.shot, hole=self.score.hole, stroke=number)
            number += 1 + stroke.shot.penalty_strokes


@dataclass(slots=True)
class Settled:
    """Which doubts of the reading are answered: (hole, stroke or None, field or empty for all)."""

    keys: set[tuple[int, int | None, str]] = field(default_factory=set)

    def hole(self, hole: Hole, name: str = "") -> None:
        if hole.origin is not None:
            self.keys.add((hole.origin, None, name))

    def stroke(self, stroke: Stroke, name: str = "") -> None:
        if stroke.origin is not None:
            self.keys.add((*stroke.origin, name))

    def answers(self, doubt: Doubt) -> bool:
        row = (doubt.hole, doubt.stroke)
        return any(key in self.keys for key in ((*row, doubt.field), (*row, ""), (doubt.hole, None, "")))


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of one correction: a note when it clashes, and the row it was worked into."""

    note: str = ""
    hole: Hole | None = None
    stroke: Stroke | None = None
    now: str = ""


@dataclass(slots=True)
class Draft:
    """Holes in order of play, and the doubts that the corrections so far have answered."""

    holes: list[Hole]
    settled: Settled = field(default_factory=Settled)

    @classmethod
    def of(cls, reading: Round) -> Draft:
        scores = sorted(reading.scores, key=lambda score: score.play_order)
        holes = [_hole(score, reading) for score in scores]
        return cls(holes)

    def numbered(self, number: int | None) -> Hole | None:
        return next((hole for hole in self.holes if hole.score.hole == number), None)

    def holding(self, at_s: float) -> Hole | None:
        """The hole under way at a moment."""
        begun = [hole for hole in self.holes if hole.score.start_s <= at_s]
        return begun[-1] if begun else None

    def before(self, hole: Hole) -> Hole | None:
        place = self.holes.index(hole)
        return self.holes[place - 1] if place else None

    def after(self, hole: Hole) -> Hole | None:
        place = self.holes.index(hole) + 1
        return self.holes[place] if place < len(self.holes) else None

    def round(self, reading: Round) -> Round:
        """The finished round: derived columns, order of play, running total and spans follow the holes."""
        running: int | None = 0
        scores: list[HoleScore] = []
        for place, hole in enumerate(self.holes, start=1):
            score = derive(hole)
            to_par = None if score.strokes is None or score.par is None else score.strokes - score.par
            running = None if running is None or to_par is None else running + to_par
            hole.score = replace(score, play_order=place, to_par=to_par, running_to_par=running)
            scores.append(hole.score)
        shots = tuple(shot for hole in self.holes for shot in hole.shots)
        return replace(reading, scores=tuple(scores), shots=shots, spans=_spans(scores, reading.spans))


def _hole(score: HoleScore, reading: Round) -> Hole:
    shots = (shot for shot in reading.shots if shot.hole == score.hole)
    strokes = [Stroke(shot, (shot.hole, shot.stroke)) for shot in shots]
    hole = Hole(score, strokes, origin=score.hole)
    hole.whole = score.strokes == hole.count()
    return hole


def derive(hole: Hole) -> HoleScore:
    """The hole's row with what its corrected strokes decide, save for what a person has settled."""
    score = hole.score
    if not hole.touched:
        return score
    count = hole.count()
    found: dict[str, object] = {}
    if "strokes" not in hole.pinned and (hole.whole or score.strokes is None or count > score.strokes):
        found["strokes"] = count if 1 <= count <= MOST else None
    strokes = found.get("strokes", score.strokes)
    if strokes == count:
        found["putts"] = sum(shot.kind == "putt" and shot.lie == "green" for shot in hole.shots)
        found["penalty_strokes"] = sum(shot.penalty_strokes for shot in hole.shots)
        found |= _reached(score.par, hole.shots)
    free = {name: value for name, value in found.items() if name not in hole.pinned}
    return replace(score, **free)  # type: ignore[arg-type]


def _reached(par: int | None, shots: list[Shot]) -> dict[str, object]:
    """Fairway and green in regulation, as the trade counts them; None where par or a lie is not known."""
    if par is None or not shots:
        return {}
    first = shots[0].result
    at = next((shot.stroke for shot in shots if shot.result in ON_GREEN), None)
    return {
        "fairway_hit": None if par < 4 or first == "unknown" else first == "fairway",
        "green_in_regulation": None if at is None else at <= par - 2,
    }


def _spans(scores: list[HoleScore], spans: tuple[HoleSpan, ...]) -> tuple[HoleSpan, ...]:
    """The spans of the holes that are left, with their new bounds."""
    if not spans:
        return ()
    kept: list[HoleSpan] = []
    for score in scores:
        near = min(spans, key=lambda span: (abs(span.start_s - score.start_s), span.hole != score.hole))
        bounds = {"start_s": score.start_s, "end_s": score.end_s}
        kept.append(replace(near, hole=score.hole, play_order=score.play_order, **bounds))  # type: ignore[arg-type]
    return tuple(kept)

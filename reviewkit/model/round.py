"""A round as read: holes, strokes, scores and what is doubtful about them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reviewkit.model.course import Plan
from reviewkit.model.values import (
    CLUBS,
    CONTACTS,
    KINDS,
    LIES,
    MAX_HOLE,
    MISSES,
    RESULTS,
    STATUSES,
    between,
    one_of,
)


@dataclass(frozen=True, slots=True)
class HoleSpan:
    """One hole's stretch of the round. Times in seconds; `first` and `last` are word indices, both included.

    `told` is False when no words name the hole and its number follows from the order of play.
    `probability` is that of the start lying here, `reason` the words or the rule it rests on. `others` are
    the first and last words of where the hole may be told instead, with the probability of that; `played`
    is the probability that this hole is told at all. `score_first` is True where the round tells each hole's
    score before its strokes, and this hole's talk begins with that.
    """

    hole: int
    play_order: int
    start_s: float
    end_s: float
    first: int
    last: int
    told: bool = True
    probability: float = 1.0
    reason: str = ""
    others: tuple[tuple[int, int, float], ...] = ()
    played: float = 1.0
    score_first: bool = False

    def __post_init__(self) -> None:
        between("hole", self.hole, 1, MAX_HOLE)
        between("probability", self.probability, 0.0, 1.0)
        between("played", self.played, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Shot:
    """One stroke, a row of shots.csv. Empty text and None mean not known.

    `distance_yd` is to the hole before the stroke, in yards. `told` is False for an inferred stroke.
    `evidence` is the words it rests on. `penalty_strokes` are those this stroke incurred.
    """

    hole: int
    stroke: int
    start_s: float
    end_s: float
    kind: str
    club: str = ""
    lie: str = ""
    distance_yd: float | None = None
    result: str = "unknown"
    miss: str = ""
    contact: str = ""
    penalty_strokes: int = 0
    holed: bool = False
    told: bool = True
    confidence: float = 1.0
    evidence: str = ""

    def __post_init__(self) -> None:
        between("hole", self.hole, 1, MAX_HOLE)
        between("stroke", self.stroke, 1, 40)
        one_of("kind", self.kind, KINDS)
        one_of("club", self.club, CLUBS)
        one_of("lie", self.lie, LIES)
        one_of("result", self.result, RESULTS)
        one_of("miss", self.miss, MISSES)
        one_of("contact", self.contact, CONTACTS)
        between("distance_yd", self.distance_yd, 0.0, 1000.0)
        between("penalty_strokes", self.penalty_strokes, 0, 4)
        between("confidence", self.confidence, 0.0, 1.0)


@dataclass(frozen=True, slots=True)
class Doubt:
    """Something a person should look at: where, the words it rests on, and how much it matters (0 to 1).

    `alternatives` are other readings, likeliest first, as text that could be entered instead.
    """

    hole: int
    at_s: float
    text: str
    words: str = ""
    weight: float = 0.5
    stroke: int | None = None
    field: str = "strokes"
    alternatives: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class HoleScore:
    """One hole's score, a row of holes.csv. None means not known. `confidence` is that `strokes` is right."""

    hole: int
    play_order: int
    start_s: float
    end_s: float
    par: int | None = None
    strokes: int | None = None
    to_par: int | None = None
    running_to_par: int | None = None
    putts: int | None = None
    penalty_strokes: int | None = None
    fairway_hit: bool | None = None
    green_in_regulation: bool | None = None
    confidence: float = 0.0
    status: str = "check"
    doubts: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        between("hole", self.hole, 1, MAX_HOLE)
        between("par", self.par, 3, 6)
        between("strokes", self.strokes, 1, 30)
        between("confidence", self.confidence, 0.0, 1.0)
        one_of("status", self.status, STATUSES)


@dataclass(frozen=True, slots=True)
class Round:
    """Everything read from one round, in order of play.

    `spans` and `odds`, hole -> strokes -> probability, are there on a fresh reading only. So is `taken`, the
    hearing by which each hole is told where talk was heard more than once.
    """

    scores: tuple[HoleScore, ...]
    shots: tuple[Shot, ...]
    doubts: tuple[Doubt, ...] = ()
    spans: tuple[HoleSpan, ...] = ()
    plan: Plan = field(default_factory=Plan)
    odds: Mapping[int, Mapping[int, float]] = field(default_factory=dict)
    taken: Mapping[int, str] = field(default_factory=dict)

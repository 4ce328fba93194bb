"""What is known before a word is heard: the course card and the plan of the round."""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.errors import ValueRuleError
from reviewkit.model.values import MAX_HOLE, between, one_of


@dataclass(frozen=True, slots=True)
class CardHole:
    """One line of a course card. Yardage in yards; None where the card does not say."""

    hole: int
    par: int | None = None
    yards: float | None = None
    stroke_index: int | None = None

    def __post_init__(self) -> None:
        between("hole", self.hole, 1, MAX_HOLE)
        between("par", self.par, 3, 6)
        between("yards", self.yards, 30, 1000)
        between("stroke index", self.stroke_index, 1, MAX_HOLE)


@dataclass(frozen=True, slots=True)
class Card:
    """A course card: each hole at most once."""

    holes: tuple[CardHole, ...] = ()
    course: str = ""

    def __post_init__(self) -> None:
        numbers = [line.hole for line in self.holes]
        for number in numbers:
            if numbers.count(number) > 1:
                raise ValueRuleError(f"hole {number} stands on the card twice.", "Keep one line a hole.")

    def hole(self, number: int) -> CardHole | None:
        return next((line for line in self.holes if line.hole == number), None)


CONDITIONS = (
    *("temperature_c", "temperature_f", "wind_mph", "wind_kmh"),
    *("altitude_m", "altitude_ft", "slope_yd"),
)
"""What may be known of the day; wind is along the line of play, head wind positive."""


@dataclass(frozen=True, slots=True)
class Plan:
    """What the player says beforehand, all of it optional.

    `order` is the holes in order of play, empty when not known; `target` is to par; `units` is "yd" or "m"
    for distances told without a unit, empty to let the talk decide; `names` are course and partner names,
    added to the listener's vocabulary. `conditions` are numbers by the names of CONDITIONS.
    """

    card: Card = Card()
    order: tuple[int, ...] = ()
    target: int | None = None
    units: str = ""
    names: tuple[str, ...] = ()
    language: str = "en"
    conditions: tuple[tuple[str, float], ...] = ()

    def __post_init__(self) -> None:
        for name, _ in self.conditions:
            one_of("condition", name, CONDITIONS)
        if self.units not in ("", "yd", "m"):
            raise ValueRuleError(f"units '{self.units}' is not yd or m.")
        if len(set(self.order)) < len(self.order):
            raise ValueRuleError("the order names a hole twice.", "Write each hole once, such as 7-18,1-6.")
        for number in self.order:
            between("hole", number, 1, MAX_HOLE)

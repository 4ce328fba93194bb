"""A piece of talk that means something in golf."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Mention:
    """`kind` and `value` as the rules name them; `first` and `last` are word indices, both included.

    `unit` is that of a number as told ("yd", "m", "ft", "in", "cm", "pace" or empty). `mood` is empty for a
    plain statement, else "plan" (meant, not done), "other" (another player's), "past" (another day or hole),
    "not" (denied) or another of those that docs/rules.md lists.
    `rule` is the name of the rule that fired, `weight` how much it counts for (1 is plain evidence).
    """

    kind: str
    value: str | int | float | None
    first: int
    last: int
    start_s: float
    end_s: float
    text: str
    unit: str = ""
    mood: str = ""
    rule: str = ""
    weight: float = 1.0

    @property
    def is_club(self) -> bool:
        """Whether a club is named, be it one of an unknown number: "hybrid off the tee"."""
        return self.kind == "club" or (self.kind == "strike" and self.value == "full")

    def overlaps(self, other: Mention) -> bool:
        """Whether both share a word."""
        return self.first <= other.last and other.first <= self.last

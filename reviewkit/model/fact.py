"""What a person has confirmed about a hole, as the reasoning takes it: certain, not evidence."""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.errors import ValueRuleError

FACT_FIELDS = ("strokes", "par", "start_s", "hole", "absent")


@dataclass(frozen=True, slots=True)
class HoleFact:
    """One confirmed thing about the hole that held the moment `at_s` (seconds), then numbered `hole`.

    `field` strokes, par and start_s give that column's value. `hole` says the stretch around `at_s` is hole
    `value`; `absent` says that no hole `hole` was played.
    """

    hole: int
    at_s: float
    field: str
    value: float

    def __post_init__(self) -> None:
        if self.field not in FACT_FIELDS:
            raise ValueRuleError(f"fact '{self.field}' is not one of {', '.join(FACT_FIELDS)}.")

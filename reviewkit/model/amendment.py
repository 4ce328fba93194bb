"""A person's correction of the reading."""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.errors import ValueRuleError

ACTIONS = ("accept", "set", "add", "delete", "move", "split", "merge", "undo")


@dataclass(frozen=True, slots=True)
class Amendment:
    """One row of amendments.csv, never changed after it is written.

    `hole` and `stroke` say what was corrected as it was numbered then; `at_s` and `words` (time and
    evidence of the row) re-attach it when a later reading numbers it otherwise. `field`, `value` and `was`
    are column name, new and old text. `undo` names an earlier row's `id` in `value`.
    """

    id: int
    made_at: str
    action: str
    hole: int | None = None
    stroke: int | None = None
    at_s: float | None = None
    field: str = ""
    value: str = ""
    was: str = ""
    words: str = ""

    def __post_init__(self) -> None:
        if self.action not in ACTIONS:
            raise ValueRuleError(f"'{self.action}' is not one of {', '.join(ACTIONS)}.")

"""What the page asks for, checked and turned into corrections."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from reviewkit.errors import ReviewkitError, ValueRuleError
from reviewkit.log import amend_make as make
from reviewkit.log.amendments import Correction, last_in_force
from reviewkit.model import Amendment, Round

LONGEST = 400
"""Signs a text of the page may have."""


class Asked:
    """The fields of one request. A missing or misshapen one raises ValueRuleError."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        self.data = data

    def text(self, name: str, default: str | None = None) -> str:
        value = self.data.get(name, default)
        if not isinstance(value, str) or len(value) > LONGEST:
            raise ValueRuleError(f"'{name}' must be a text of at most {LONGEST} signs.")
        return value

    def whole(self, name: str) -> int:
        value = self.data.get(name)
        if not isinstance(value, int) or isinstance(value, bool):
            raise ValueRuleError(f"'{name}' must be a whole number.")
        return value

    def stroke(self) -> int | None:
        return None if self.data.get("stroke") is None else self.whole("stroke")

    def seconds(self, name: str) -> float | None:
        value = self.data.get(name)
        if value is None:
            return None
        if not isinstance(value, int | float) or isinstance(value, bool) or not 0 <= value < 1e6:
            raise ValueRuleError(f"'{name}' must be a time in seconds.")
        return round(float(value), 3)

    def columns(self) -> dict[str, str]:
        value = self.data.get("columns") or {}
        if not isinstance(value, dict) or not all(isinstance(text, str) for text in value.values()):
            raise ValueRuleError("'columns' must be texts by column name.")
        return {str(name): text for name, text in value.items() if text}


def corrections_for(
    data: Mapping[str, Any], seen: Round, made: Sequence[Amendment]
) -> tuple[Correction, ...]:
    """The corrections that a request means. Raises ReviewkitError for what cannot be done."""
    asked = Asked(data)
    action = asked.text("action", "")
    if action == "undo":
        return (_undo(data, made),)
    if action not in MAKERS:
        raise ValueRuleError(f"'{action}' is not one of {', '.join((*MAKERS, 'undo'))}.")
    return (MAKERS[action](seen, asked),)


def _undo(data: Mapping[str, Any], made: Sequence[Amendment]) -> Correction:
    if data.get("id") is not None:
        number = Asked(data).whole("id")
        if all(row.id != number for row in made):
            raise ReviewkitError(f"There is no correction {number}.", "See: reviewkit amend ROUND list")
        return make.undo(number)
    last = last_in_force(made)
    if last is None:
        raise ReviewkitError("There is nothing to undo.")
    return make.undo(last.id)


def _split(seen: Round, asked: Asked) -> Correction:
    at_s = asked.seconds("at_s")
    if at_s is None:
        raise ValueRuleError("a new hole needs the time at which it begins.")
    return make.split(seen, asked.whole("hole"), at_s, asked.columns())


MAKERS: dict[str, Callable[[Round, Asked], Correction]] = {
    "set": lambda seen, asked: make.change(
        seen, asked.whole("hole"), asked.stroke(), asked.text("field"), asked.text("value")
    ),
    "accept": lambda seen, asked: make.accept(
        seen, asked.whole("hole"), asked.stroke(), asked.text("field", "")
    ),
    "add": lambda seen, asked: make.add(
        seen, asked.whole("hole"), asked.whole("stroke"), asked.seconds("at_s"), asked.columns()
    ),
    "delete": lambda seen, asked: make.delete(seen, asked.whole("hole"), asked.stroke()),
    "move": lambda seen, asked: make.move(
        seen, asked.whole("hole"), asked.whole("stroke"), asked.whole("to_hole"), asked.whole("place")
    ),
    "split": _split,
    "merge": lambda seen, asked: make.merge(seen, asked.whole("hole"), asked.whole("other")),
}

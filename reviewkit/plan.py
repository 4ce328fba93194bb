"""What is said beforehand: options of the command line over a `round.toml` beside the footage.

course = "Quillback Flats"       # all of it may be left out
names = ["Travis", "Edel"]       # partners, places: words the listener would not know
order = "10-18,1-9"              # holes in order of play
target = "+1"                    # to par
units = "m"                      # of distances told without a unit
language = "en"
card = "card.csv"                # or [[hole]] tables in this file
model = "base"
device = "cpu"
rules = "my-rules.toml"
sort = "time"
cuts = false                     # look for cuts in the picture
again = false                    # listen again to what is doubtful

[conditions]                     # what the yardages played like; wind along the line, head wind positive
temperature_c = 8
wind_kmh = 20
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from reviewkit.card import card_of, load_card, read_text, read_toml
from reviewkit.errors import CardError, ReviewkitError
from reviewkit.model import Card, Plan

NAME = "round.toml"
DEVICES = ("auto", "cpu", "cuda")
SORTS = ("given", "time")


@dataclass(frozen=True, slots=True)
class Wish:
    """What one place (the command line or round.toml) asks for; None where it says nothing."""

    course: str | None = None
    names: tuple[str, ...] | None = None
    order: tuple[int, ...] | None = None
    target: int | None = None
    units: str | None = None
    language: str | None = None
    card: Card | None = None
    model: str | None = None
    device: str | None = None
    rules: Path | None = None
    sort: str | None = None
    cuts: bool | None = None
    again: bool | None = None
    conditions: tuple[tuple[str, float], ...] | None = None

    def over(self, other: Wish) -> Wish:
        """This wish, and `other` where this one says nothing."""
        mine = {name: getattr(self, name) for name in self.__slots__}
        return Wish(
            **{name: getattr(other, name) if value is None else value for name, value in mine.items()}
        )

    def plan(self) -> Plan:
        """The plan for the reading; the course's name is one of the names to listen for."""
        card = self.card or Card()
        course = self.course or card.course
        names = tuple(dict.fromkeys(name for name in (course, *(self.names or ())) if name))
        return Plan(
            card=Card(card.holes, course),
            order=self.order or (),
            target=self.target,
            units=self.units or "",
            names=names,
            language=self.language or "en",
            conditions=self.conditions or (),
        )


def parse_order(text: str) -> tuple[int, ...]:
    """`7-18,1-6` as hole numbers in order of play. Raises ReviewkitError."""
    holes: list[int] = []
    for part in text.split(","):
        found = re.fullmatch(r"\s*(\d{1,2})\s*(?:[-–]\s*(\d{1,2})\s*)?", part)
        if not found:
            raise ReviewkitError(f"'{text}' is not an order of holes.", "Write it like 7-18,1-6.")
        first, last = int(found[1]), int(found[2] or found[1])
        holes += range(first, last + 1) if first <= last else range(first, last - 1, -1)
    # The model checks that no hole comes twice and that each is a hole's number.
    return Plan(order=tuple(holes)).order


def parse_target(text: str) -> int:
    """`-6`, `+3`, `3` or `E` (level) as strokes to par. Raises ReviewkitError."""
    if text.strip().lower() in ("e", "even", "level"):
        return 0
    found = re.fullmatch(r"\s*([+\-−]?)(\d{1,2})\s*", text)
    if not found:
        raise ReviewkitError(f"'{text}' is not a score to par.", "Write it like -6, +3 or E.")
    return -int(found[2]) if found[1] in ("-", "−") else int(found[2])


def load_wish(path: Path) -> Wish:
    """The wish in a round.toml. Paths in it are relative to it. Raises CardError with file and key."""
    data = read_toml(path, read_text(path))
    known = set(Wish.__slots__) | {"hole"}
    for key in data:
        if key not in known:
            raise CardError(path, f"'{key}' is not known here.", f"Known are {', '.join(sorted(known))}.")
    try:
        return _wish(data, path)
    except CardError:
        raise
    except ReviewkitError as error:
        raise CardError(path, error.problem, error.remedy) from error


def _wish(data: Mapping[str, object], path: Path) -> Wish:
    rules = _text(data, "rules")
    order, target = data.get("order"), data.get("target")
    if isinstance(order, list):
        order = ",".join(str(number) for number in order)
    names = data.get("names")
    if names is not None and not (isinstance(names, list) and all(isinstance(name, str) for name in names)):
        raise ReviewkitError("names is not a list of texts.", 'Write names = ["Travis", "Edel"].')
    wish = Wish(
        course=_text(data, "course"),
        names=None if names is None else tuple(names),
        order=None if order is None else parse_order(str(order)),
        target=None if target is None else parse_target(str(target)),
        units=_one_of(data, "units", ("yd", "m")),
        language=_text(data, "language"),
        card=_card(data, path),
        model=_text(data, "model"),
        device=_one_of(data, "device", DEVICES),
        rules=None if rules is None else path.parent / rules,
        sort=_one_of(data, "sort", SORTS),
        cuts=_flag(data, "cuts"),
        again=_flag(data, "again"),
        conditions=_conditions(data.get("conditions")),
    )
    wish.plan()
    return wish


def _flag(data: Mapping[str, object], key: str) -> bool | None:
    value = data.get(key)
    if value is not None and not isinstance(value, bool):
        raise ReviewkitError(f"{key} is neither true nor false.", f"Write {key} = true or leave it out.")
    return value


def _card(data: Mapping[str, object], path: Path) -> Card | None:
    name = _text(data, "card")
    if name is not None and "hole" in data:
        raise ReviewkitError("both card and [[hole]] tables are given.", "Keep one of them.")
    if name is not None:
        return load_card(path.parent / name)
    return card_of({"hole": data["hole"]}, path) if "hole" in data else None


def _conditions(table: object) -> tuple[tuple[str, float], ...] | None:
    if table is None:
        return None
    if not isinstance(table, dict) or not all(type(number) in (int, float) for number in table.values()):
        raise ReviewkitError(
            "conditions is not a table of numbers.", "Write [conditions], temperature_c = 8."
        )
    return tuple((str(name), float(number)) for name, number in table.items())


def _text(data: Mapping[str, object], key: str) -> str | None:
    value = data.get(key)
    if value is not None and not isinstance(value, str):
        raise ReviewkitError(f"{key} is not a text.", f'Write {key} = "...".')
    return value


def _one_of(data: Mapping[str, object], key: str, allowed: tuple[str, ...]) -> str | None:
    value = _text(data, key)
    if value is not None and value not in allowed:
        raise ReviewkitError(f"{key} '{value}' is not known.", f"Write one of {', '.join(allowed)}.")
    return value

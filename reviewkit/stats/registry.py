"""The statistics by name, and what one of them comes to.

A statistic is one function from a round to one or more Readings, decorated with `statistic`. Names, help,
documentation checks and tests follow from STATISTICS. A reading says how much it rests on: `known` cases of
`possible` ones.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from statistics import fmean, median

from reviewkit.errors import ReviewkitError
from reviewkit.stats.play import Play

GROUPS = ("Score", "Off the tee", "Approach", "Around the green", "Putting", "Faults", "Strokes gained")
"""In the order in which tables show them."""
UNITS = ("strokes", "share", "holes", "putts", "ft", "yd", "times", "strokes a hole", "putts a hole")


@dataclass(frozen=True, slots=True)
class Reading:
    """One value. `of` is the denominator of a share or mean; `part` names the row of a statistic with many.

    `known` of `possible` cases could be used; the value is None when none could.
    """

    value: float | None
    of: int | None = None
    known: int = 0
    possible: int = 0
    part: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class Figure:
    """A statistic's value for one round, ready to show. `value` is None when nothing told allows it.

    `unit` is one of UNITS, a share from 0 to 1. `rests_on` is empty when everything needed was told.
    `low` and `high` bound an uncertain value (80 %).
    """

    name: str
    label: str
    value: float | None
    unit: str
    of: int | None
    rests_on: str
    definition: str
    source: str
    group: str = ""
    part: str = ""
    low: float | None = None
    high: float | None = None

    @property
    def text(self) -> str:
        """The value as people write it: `9 of 14 (64 %)`, `+3`, `1.8`; empty when not known."""
        if self.value is None:
            return ""
        if self.unit == "share":
            return f"{round(self.value * (self.of or 0))} of {self.of} ({self.value:.0%})".replace("%", " %")
        if self.group == "Strokes gained":
            text = f"{self.value:+.2f}"
        elif self.name in SIGNED:
            text = f"{self.value:+.0f}" if self.value else "0"
        elif self.unit in ("strokes", "holes", "putts", "times") and float(self.value).is_integer():
            text = f"{self.value:.0f}"
        else:
            text = f"{self.value:.1f}" if self.value >= 10 else f"{self.value:.2f}"
        if self.unit in ("ft", "yd"):
            text += f" {self.unit}"
        if self.low is None or self.high is None or self.high - self.low < 0.005:
            return text
        return f"{text} ({self.low:+.2f} to {self.high:+.2f})"


@dataclass(frozen=True, slots=True)
class Statistic:
    """A registered statistic. `counts` names the cases a reading rests on, such as "holes"."""

    name: str
    label: str
    group: str
    unit: str
    counts: str
    definition: str
    source: str
    compute: Callable[[Play], Sequence[Reading]]

    def figures(self, play: Play) -> tuple[Figure, ...]:
        """The figures of one round, in the function's order."""
        return tuple(self._figure(reading) for reading in self.compute(play))

    def _figure(self, reading: Reading) -> Figure:
        part = reading.part
        return Figure(
            name=f"{self.name}.{part.replace(' ', '_')}" if part else self.name,
            label=f"{self.label}, {part}" if part else self.label,
            value=reading.value,
            unit=self.unit,
            of=reading.of,
            rests_on=_rests_on(reading, self.counts),
            definition=self.definition,
            source=self.source,
            group=self.group,
            part=part,
            low=reading.low,
            high=reading.high,
        )


STATISTICS: dict[str, Statistic] = {}
SIGNED = ("to_par",)
Compute = Callable[[Play], Reading | Sequence[Reading]]


def statistic(
    name: str, label: str, *, group: str, unit: str, counts: str, definition: str, source: str
) -> Callable[[Compute], Compute]:
    """Register the decorated function as the statistic `name`."""
    if name in STATISTICS or unit not in UNITS or group not in GROUPS:
        raise ValueError(f"statistic {name}: the name is taken, or {unit} or {group} is not in the tables")

    def register(compute: Compute) -> Compute:
        def readings(play: Play) -> Sequence[Reading]:
            found = compute(play)
            return (found,) if isinstance(found, Reading) else found

        STATISTICS[name] = Statistic(name, label, group, unit, counts, definition, source, readings)
        return compute

    return register


def chosen(names: Iterable[str]) -> tuple[Statistic, ...]:
    """The statistics called for, all of them for none. Raises ReviewkitError for an unknown name."""
    wanted = tuple(names) or tuple(sorted(STATISTICS, key=lambda name: GROUPS.index(STATISTICS[name].group)))
    for name in wanted:
        if name not in STATISTICS:
            known = ", ".join(STATISTICS)
            raise ReviewkitError(f"No statistic is called '{name}'.", f"Choose from: {known}.")
    return tuple(STATISTICS[name] for name in wanted)


def share(cases: Iterable[bool | None], part: str = "") -> Reading:
    """The share of known cases that are true."""
    every = list(cases)
    known = [case for case in every if case is not None]
    value = sum(known) / len(known) if known else None
    return Reading(value, len(known), len(known), len(every), part)


def total(values: Iterable[float | None], part: str = "") -> Reading:
    """The sum of what is known; nothing known gives None, unless there was nothing to know."""
    every = list(values)
    known = [value for value in every if value is not None]
    return Reading(sum(known) if known or not every else None, None, len(known), len(every), part)


def mean(values: Iterable[float | None], part: str = "") -> Reading:
    """The mean of what is known."""
    every = list(values)
    known = [value for value in every if value is not None]
    return Reading(fmean(known) if known else None, len(known), len(known), len(every), part)


def middle(values: Iterable[float | None], part: str = "") -> Reading:
    """The median of what is known."""
    every = list(values)
    known = [value for value in every if value is not None]
    return Reading(median(known) if known else None, len(known), len(known), len(every), part)


def _rests_on(reading: Reading, counts: str) -> str:
    if reading.known == reading.possible:
        return ""
    return f"{reading.known} of {reading.possible} {counts} known"

"""What a yardage played like in cold, wind, height above the sea and slope, and what fell short for it.

The sources of tables/carry.csv disagree; their disagreement is shown as a range. Conditions are the numbers
in the plan's `conditions`, from round.toml; words such as "into the breeze" (tables/condition_words.csv) give
a direction without a number, and are reported as told, never turned into yards.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from reviewkit.errors import FolderError
from reviewkit.log import RoundFolder
from reviewkit.model.course import CONDITIONS
from reviewkit.stats.benchmark import table_rows
from reviewkit.stats.clubs import at_green
from reviewkit.stats.play import Play

HALF_CLUB_YD = 5.0
FEET_PER_METRE = 1 / 0.3048
MPH_PER_KMH = 1 / 1.609344


@dataclass(frozen=True, slots=True)
class Conditions:
    """Numbers that hold for a round, None where not known. `wind_mph` is along the line: head positive."""

    temperature_f: float | None = None
    wind_mph: float | None = None
    altitude_ft: float | None = None
    slope_yd: float | None = None

    @property
    def known(self) -> bool:
        return any(
            value is not None
            for value in (self.temperature_f, self.wind_mph, self.altitude_ft, self.slope_yd)
        )


@dataclass(frozen=True, slots=True)
class Played:
    """What a told distance played like: the range that the sources allow, in yards."""

    yards: float
    low: float
    high: float

    @property
    def added(self) -> float:
        """The least that every source adds; negative when it played shorter."""
        return self.low - self.yards


@dataclass(frozen=True, slots=True)
class PlayedShot:
    """An approach in its conditions. `short_for_it`: missed short while it played half a club longer."""

    hole: int
    stroke: int
    club: str
    played: Played | None
    told: tuple[str, ...]
    short: bool
    short_for_it: bool


def plays_like(yards: float, conditions: Conditions) -> Played:
    """The distance to choose a club for. Contributions add up; each has its own range."""
    low = high = yards
    for effect, amount in _amounts(conditions):
        rule = _rules()[effect]
        ends = [amount * share * (1.0 if effect == "slope" else yards) for share in rule]
        low += min(ends)
        high += max(ends)
    return Played(yards, max(low, 0.0), max(high, 0.0))


def approaches_in(play: Play, conditions: Conditions) -> tuple[PlayedShot, ...]:
    """Every stroke at a green with what it played like, or with the direction told."""
    found = []
    for hole, shot in play.strokes:
        words = told_words(shot.evidence)
        if not at_green(hole, shot) or not (words or (conditions.known and shot.distance_yd)):
            continue
        played = plays_like(shot.distance_yd, conditions) if conditions.known and shot.distance_yd else None
        short = shot.miss == "short"
        longer = played is not None and played.added >= HALF_CLUB_YD
        against = played is None and bool({"into the wind", "uphill"} & set(words))
        found.append(
            PlayedShot(
                hole=hole.number,
                stroke=shot.stroke,
                club=shot.club,
                played=played,
                told=words,
                short=short,
                short_for_it=short and (longer or against),
            )
        )
    return tuple(found)


def told_words(text: str) -> tuple[str, ...]:
    """The directions that the words speak of, of tables/condition_words.csv."""
    found = (row["told"] for row in _patterns() if re.search(row["pattern"], text, re.IGNORECASE))
    return tuple(dict.fromkeys(found))


def conditions_of(folder: RoundFolder) -> Conditions:
    """The conditions of the plan in round.json. Raises FolderError for what is no number."""
    kept = (folder.meta.get("plan") or {}).get("conditions") or ()
    try:
        return conditions_from(dict(kept))
    except (TypeError, ValueError) as error:
        raise FolderError(
            folder.round_json,
            f"holds conditions that cannot be used ({error}).",
            f"Known are {', '.join(CONDITIONS)}.",
        ) from error


def conditions_from(kept: Mapping[str, float | int | str]) -> Conditions:
    """Conditions from named numbers in either system. Raises ValueError for a name not in CONDITIONS."""
    for name in kept:
        if name not in CONDITIONS:
            raise ValueError(f"'{name}' is not known")
    numbers = {name: float(value) for name, value in kept.items()}
    celsius, kmh, metres = (numbers.get(name) for name in ("temperature_c", "wind_kmh", "altitude_m"))
    return Conditions(
        temperature_f=numbers.get("temperature_f") if celsius is None else celsius * 9 / 5 + 32,
        wind_mph=numbers.get("wind_mph") if kmh is None else kmh * MPH_PER_KMH,
        altitude_ft=numbers.get("altitude_ft") if metres is None else metres * FEET_PER_METRE,
        slope_yd=numbers.get("slope_yd"),
    )


def _amounts(conditions: Conditions) -> Iterator[tuple[str, float]]:
    """How many units of each rule apply; positive makes the hole play longer."""
    if conditions.temperature_f is not None:
        yield "cold", (70.0 - conditions.temperature_f) / 10
    if conditions.altitude_ft is not None:
        yield "altitude", -conditions.altitude_ft / 1000
    if conditions.wind_mph is not None:
        yield ("head wind" if conditions.wind_mph > 0 else "tail wind"), conditions.wind_mph
    if conditions.slope_yd is not None:
        yield "slope", conditions.slope_yd


@cache
def _rules() -> dict[str, tuple[float, float]]:
    return {row["effect"]: (float(row["low"]), float(row["high"])) for row in table_rows("carry.csv")}


@cache
def _patterns() -> list[dict[str, str]]:
    return table_rows("condition_words.csv")

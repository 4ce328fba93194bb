"""The closed sets of values that the round folder may hold, and the checks for them.

Order in each tuple is the order in which tables and menus show them.
"""

from __future__ import annotations

from reviewkit.errors import ValueRuleError

KINDS = ("tee", "approach", "layup", "recovery", "pitch", "chip", "bunker", "putt")
LIES = ("tee", "fairway", "rough", "sand", "trees", "fringe", "green")
RESULTS = (
    *("fairway", "rough", "sand", "trees", "fringe", "green"),
    *("penalty", "ob", "lost", "unplayable", "holed", "unknown"),
)
MISSES = ("left", "right", "long", "short")
CONTACTS = ("thin", "fat", "topped", "shank", "pure", "heel", "toe", "sky")
STATUSES = ("sure", "check")
WOODS = ("D", "3W", "5W", "7W")
HYBRIDS = ("2H", "3H", "4H", "5H", "6H")
IRONS = ("1I", "2I", "3I", "4I", "5I", "6I", "7I", "8I", "9I")
WEDGES = ("PW", "GW", "SW", "LW")
LOFTS = tuple(str(loft) for loft in range(46, 65))
CLUBS = WOODS + HYBRIDS + IRONS + WEDGES + LOFTS
PARS = (3, 4, 5, 6)
YARDS_PER_METRE = 1.0936133
"""International yard of 0.9144 m, exactly 1 / 0.9144 to seven places."""
FEET_PER_YARD = 3.0
SMALL_UNITS = ("ft", "in", "cm")
"""Units in which nobody tells a length of the fairway."""
MAX_HOLE = 36


def one_of(name: str, value: str, allowed: tuple[str, ...]) -> None:
    """Raise ValueRuleError unless `value` is empty (not known) or in `allowed`."""
    if value and value not in allowed:
        raise ValueRuleError(f"{name} '{value}' is not one of {', '.join(allowed)}.")


def between(name: str, value: float | None, low: float, high: float) -> None:
    """Raise ValueRuleError unless `value` is None (not known) or low <= value <= high."""
    if value is not None and not low <= value <= high:
        raise ValueRuleError(f"{name} {value} is not between {low} and {high}.")

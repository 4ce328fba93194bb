"""Clubs chosen or changed by their number alone: "Wedge or the nine. Nine.", "Seven. Make it the six."."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.model import Mention

_CHANGED_WITHIN = 12
"""Words from a club to the number that takes its place."""
_CHOSEN_WITHIN = 12
"""Words from a choice of two to the one chosen."""
_FROM_HERE = {"holed", "tap", "putts", "putt", "putter", "place", "reload", "drop"}
"""What is told once the ball was struck, or may be putted: a number is then a score or a count."""
_IRONS = range(3, 10)
_NUMBERED_WITHIN = 8
"""Words from "rescue" or "driving iron" to the number that tells which."""
_SORTS = {"hybrid": "H", "rescue": "H", "utility": "H", "wood": "W", "iron": "I"}
_NUMBERS = {"H": range(2, 6), "W": (3, 5, 7)}
"""Which hybrids and woods are carried, as a rule."""


def chosen(told: Sequence[Mention]) -> Iterator[Mention]:
    """Numbers that are clubs by the club, or the choice of two, told just before them, each with its club."""
    club = choice = mend = sort_at = -_CHANGED_WITHIN
    sort = ""
    for mention in told:
        if mention.kind in _FROM_HERE and not mention.mood:
            club = choice = sort_at = -_CHANGED_WITHIN
        elif mention.kind == "mend?":
            mend = mention.first
        elif mention.kind == "iron" and mention.mood == "choice":
            choice = mention.last
        elif _number(mention) and (
            (mention.first - club <= _CHANGED_WITHIN and (mention.mood == "changed" or mend > club))
            or 0 < mention.first - choice <= _CHOSEN_WITHIN
            or (mention.kind == "iron" and 0 < mention.first - sort_at <= _NUMBERED_WITHIN)
        ):
            choice = sort_at = -_CHANGED_WITHIN
            club = mention.last
            number = int(str(mention.value)[0])
            yield replace(mention, value=f"{number}{_sort_of(number, sort)}")
        elif _sort(mention):
            sort = _sort(mention)
            club = mention.last if mention.kind == "club" else club
            sort_at = mention.last if mention.kind == "strike" else -_CHANGED_WITHIN


def _sort(mention: Mention) -> str:
    """H, W or I of words that name a hybrid, a wood or an iron, with its number or without; else the club."""
    if mention.kind == "club":
        value = str(mention.value)
        return value[-1] if value[0].isdigit() else value
    named = mention.text.split()[-1] if mention.kind == "strike" and mention.value == "full" else ""
    return _SORTS.get(named, "")


def _sort_of(number: int, sort: str) -> str:
    """ "The 3 hybrid, but no, the 5": one of the same sort, where such a one is carried."""
    return sort if number in _NUMBERS.get(sort, ()) else "I"


def _number(mention: Mention) -> bool:
    """A number by itself, or one in words that change a club: "make it the six", "six, then"."""
    if mention.kind == "iron":
        return mention.mood in ("", "changed", "named")
    if mention.kind == "club":
        return str(mention.value)[0] in mention.text.split() and not any(map(mention.text.count, _SORTS))
    counted = mention.kind in ("count", "strokes") and not mention.mood
    return counted and mention.rule == "a number by itself" and mention.value in _IRONS

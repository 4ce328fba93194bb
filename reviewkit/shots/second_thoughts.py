"""Clubs chosen or changed by their number alone: "Wedge or the nine. Nine.", "Seven. Make it the six.";
chosen after all: "I was set on the seven, then I thought hybrid. So, seven."; used once more: "Seven again".
"""

from __future__ import annotations

import re
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
_WEIGHED, _WEIGHED_WITHIN = range(5, 10), 30
"""Irons weighed for a stroke, and words from there to such a number by itself, then chosen."""
_TAKEN = re.compile(r"i'll (?!have)|i'm (?:going to|gonna) |selected|chose |picked|opted|settled|elected")
_AS_A_CLUB = re.compile(r"(?:and|or|it's|that's|with|so|is) an? ")
""""It's a really good seven or a hybrid" is a score by its words alone."""
_NUMBERED_WITHIN = 8
"""Words from "rescue" or "driving iron" to the number that tells which."""
_SORTS = {"hybrid": "H", "rescue": "H", "utility": "H", "wood": "W", "iron": "I"}
_NUMBERS = {"H": range(2, 6), "W": (3, 5, 7)}
"""Which hybrids and woods are carried, as a rule."""


def chosen(told: Sequence[Mention]) -> Iterator[Mention]:
    """Numbers that are clubs by the club, or the choice of two, told just before them, each with its club."""
    club = choice = mend = sort_at = -_CHANGED_WITHIN
    sort = ""
    weighed: dict[str, int] = {}
    for mention in told:
        if mention.kind in _FROM_HERE and not mention.mood:
            club = choice = sort_at = -_CHANGED_WITHIN
            weighed = {}
        elif mention.kind == "stayed_out" and not mention.mood:
            weighed = {}
        elif mention.kind == "mend?":
            mend = mention.first
        elif mention.kind == "iron" and mention.mood == "choice":
            choice = mention.last
        elif _number(mention) and (
            (mention.first - club <= _CHANGED_WITHIN and (_changed(mention) or mend > club))
            or 0 < mention.first - choice <= _CHOSEN_WITHIN
            or (mention.kind == "iron" and 0 < mention.first - sort_at <= _NUMBERED_WITHIN)
            or (
                by_itself(mention)
                and mention.first - weighed.get(_iron(mention), -_WEIGHED_WITHIN) <= _WEIGHED_WITHIN
            )
        ):
            choice = sort_at = -_CHANGED_WITHIN
            club = mention.last
            number = int(str(mention.value)[0])
            yield replace(mention, value=f"{number}{_sort_of(number, sort)}")
        elif _sort(mention):
            sort = _sort(mention)
            club = mention.last if mention.kind == "club" else club
            sort_at = mention.last if mention.kind == "strike" else -_CHANGED_WITHIN
        if _considered(mention) and _iron(mention):
            weighed[_iron(mention)] = mention.last


def once_more(told: Sequence[Mention]) -> Iterator[Mention]:
    """ "Seven again." is the club of that number that was used last."""
    used: dict[str, str] = {}
    for mention in told:
        if mention.kind == "club" and not mention.mood:
            used[str(mention.value)[0]] = str(mention.value)
        elif mention.kind == "iron" and mention.mood == "again" and str(mention.value) in used:
            yield replace(mention, value=used[str(mention.value)])


def _changed(mention: Mention) -> bool:
    """Words that take another club: "make it the six", "I'll hit a nine"."""
    return mention.mood == "changed" or (mention.kind == "iron" and _TAKEN.match(mention.text) is not None)


def _considered(mention: Mention) -> bool:
    """A club named, or a number told as if it were one."""
    if mention.kind == "strokes":
        return not mention.mood and _AS_A_CLUB.match(mention.text) is not None
    return mention.kind in ("club", "iron") and mention.mood != "other"


def _iron(mention: Mention) -> str:
    """ "7" of a 7 iron, whatever names it; nothing of other clubs."""
    number = str(mention.value).removesuffix("I")
    return number if number.isdigit() and int(number) in _WEIGHED else ""


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
    return by_itself(mention) and mention.value in _IRONS


def by_itself(mention: Mention) -> bool:
    """Whether it is a number that nothing is counted by: "Seven."."""
    counted = mention.kind in ("count", "strokes") and not mention.mood
    return counted and mention.rule == "a number by itself"

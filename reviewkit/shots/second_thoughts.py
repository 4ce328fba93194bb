"""Clubs chosen or changed by their number alone: "Wedge or the nine. Nine.", "Seven. Make it the six."."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewkit.model import Mention

_CHANGED_WITHIN = 12
"""Words from a club to the number that takes its place."""
_CHOSEN_WITHIN = 8
"""Words from a choice of two to the one chosen."""
_FROM_HERE = {"holed", "tap", "putts", "putt", "putter", "place", "reload", "drop"}
"""What is told once the ball was struck, or may be putted: a number is then a score or a count."""
_IRONS = range(3, 10)


def chosen(told: Sequence[Mention]) -> Iterator[Mention]:
    """Numbers that are clubs by the club, or the choice of two, told just before them."""
    club = choice = mend = -_CHANGED_WITHIN
    for mention in told:
        if mention.kind in _FROM_HERE and not mention.mood:
            club = choice = -_CHANGED_WITHIN
        elif mention.kind == "mend?":
            mend = mention.first
        elif mention.kind == "club":
            club = mention.last
        elif mention.kind == "iron" and mention.mood == "choice":
            choice = mention.last
        elif _number(mention) and (
            (mention.first - club <= _CHANGED_WITHIN and (mention.mood == "changed" or mend > club))
            or 0 < mention.first - choice <= _CHOSEN_WITHIN
        ):
            club, choice = mention.last, -_CHANGED_WITHIN
            yield mention


def _number(mention: Mention) -> bool:
    """A number by itself, or one in words that change a club: "make it the six", "six, then"."""
    if mention.kind == "iron":
        return mention.mood in ("", "changed")
    counted = mention.kind in ("count", "strokes") and not mention.mood
    return counted and mention.rule == "a number by itself" and mention.value in _IRONS

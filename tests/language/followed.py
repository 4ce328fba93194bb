"""Counts how often words follow one another in talk, for `reviewkit.language.following`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from reviewkit.language.following import STOP, Following, plain
from reviewkit.language.pieces import Piece

_OFTEN = 2
"""Words in a row said fewer times than this are left out: there are many, and they add little."""


def following(talks: Iterable[Sequence[Piece]]) -> Following:
    """The counts over all talks."""
    one, two, three = Counter[str](), Counter[str](), Counter[str]()
    for talk in talks:
        words = [STOP, STOP, *plain(talk)]
        one.update(words[2:])
        two.update(" ".join(words[at - 1 : at + 1]) for at in range(2, len(words)))
        three.update(" ".join(words[at - 2 : at + 1]) for at in range(2, len(words)))
    return Following(_from(one, 1), _from(two, _OFTEN), _from(three, _OFTEN), one.total())


def _from(counts: Counter[str], least: int) -> dict[str, int]:
    return {words: count for words, count in sorted(counts.items()) if count >= least}

"""Which words follow which in talk of the game: how likely words are where they stand.

The counts are in `reviewkit/rules/following.json`; they were made over invented talk by
`tests/language/ear.py`.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from reviewkit.language.pieces import COMMA, ENDS, Piece

COUNTED = Path(__file__).parents[1] / "rules" / "following.json"
STOP = "."
_BACK = 2.0
"""Counts that what is known of fewer words is worth next to those of more."""
_NEVER = 0.3
"""Count of a word that was never said."""
OTHERS = 2000
"""How many such words there may be; a guess."""
_REACH = 4
"""Pieces, commas among them, in which two words are to be found."""


@dataclass(frozen=True, slots=True)
class Following:
    """How often words were said: by themselves, and two or three in a row, a space between."""

    one: Mapping[str, int]
    two: Mapping[str, int]
    three: Mapping[str, int]
    said: int

    def odds(self, words: Sequence[str]) -> float:
        """The log probability of the words from the third on, each after the two before it."""
        rows = zip(words, words[1:], words[2:], strict=False)
        return sum(math.log(self._after(first, second, word)) for first, second, word in rows)

    def _after(self, first: str, second: str, word: str) -> float:
        ever = (self.one.get(word, 0) + _NEVER) / (self.said + _NEVER * (len(self.one) + OTHERS))
        pair, run = f"{second} {word}", f"{first} {second}"
        after_one = (self.two.get(pair, 0) + _BACK * ever) / (self.one.get(second, 0) + _BACK)
        after_two = self.three.get(f"{run} {word}", 0) + _BACK * after_one
        return after_two / (self.two.get(run, 0) + _BACK)


def sense(following: Following, given: Sequence[Piece], begin: int, end: int, said: Sequence[str]) -> float:
    """Log odds of words `said` among those beside them, against the pieces from `begin` to `end` as heard."""
    before = [STOP, STOP, *plain(given[max(0, begin - _REACH) : begin])][-2:]
    after = plain(given[end : end + _REACH])[:2]
    meant, heard = ([*before, *words, *after] for words in (map(_plain, said), plain(given[begin:end])))
    return following.odds(meant) - following.odds(heard)


def plain(given: Iterable[Piece]) -> list[str]:
    """The words as they are counted: no commas, one stop for all, numbers by their size."""
    return [_plain(piece.text) for piece in given if piece.text != COMMA]


def _plain(word: str) -> str:
    if word in ENDS:
        return STOP
    if not word[0].isdigit():
        return word
    return f"#{len(word)}" if word.isdigit() else "#"


@lru_cache(maxsize=1)
def counted() -> Following:
    """What ships."""
    return Following(**json.loads(COUNTED.read_text(encoding="utf-8")))

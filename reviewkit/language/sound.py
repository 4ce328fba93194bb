"""How alike two written words sound, for words a listener spelt as it heard them.

A coarse sound key of my own making: English spelling to a few consonant letters and "a" for any vowel. Two
keys are compared by an edit distance in which consonants made in the same place cost less than others and
vowels cost little, because listeners lose vowels and voicing first.
"""

from __future__ import annotations

import itertools
import re
from functools import lru_cache

_RULES = [
    (re.compile(pattern), sound)
    for pattern, sound in (
        (r"^kn|^gn", "n"),
        (r"^wr", "r"),
        (r"^wh?", "W"),
        (r"ould", "ud"),
        (r"^x", "s"),
        (r"tch|ch", "C"),
        (r"sh|ti(?=o)|ci(?=a)", "S"),
        (r"th", "T"),
        (r"ph", "f"),
        (r"dge|dg|j", "J"),
        (r"igh", "a"),
        (r"gh(?=t|$)", ""),
        (r"ck|qu?", "k"),
        (r"x", "ks"),
        (r"c(?=[eiy])", "s"),
        (r"c", "k"),
        (r"g(?=e[ds]?$)", "J"),
        (r"(?<=[a-z])e$", ""),
        (r"[aeiouyw]+", "a"),
        (r"(?<=a)h|h(?=$)", ""),
    )
]
_ALIKE = ("pb", "td", "kg", "fv", "szJCS", "mn", "lr", "Tfsd", "hf", "bvf", "pk", "tk")
_SWAP, _ALIKE_SWAP = 1.0, 0.5
_SWAPS = {(one, two): _ALIKE_SWAP for group in _ALIKE for one in group for two in group if one != two}
_LOST = {"a": 0.3, "h": 0.7}
"""What it costs to lose a vowel or an "h"; any other letter costs as much as a swap."""


@lru_cache(maxsize=4096)
def key(word: str) -> str:
    """The sound key of a lower-case word: "wedge" is "WaJ", "hybrid" is "habrad"."""
    sound = re.sub(r"[^a-z]", "", word)
    for pattern, replacement in _RULES:
        sound = pattern.sub(replacement, sound)
    return re.sub(r"(.)\1", r"\1", sound)


@lru_cache(maxsize=16384)
def distance(one: str, two: str) -> float:
    """0 for words that sound the same, 1 for words that share nothing."""
    (first, gaps, _), (second, others, _) = _weighed(one), _weighed(two)
    row = [0.0, *itertools.accumulate(others)]
    for letter, gap in zip(first, gaps, strict=True):
        above, last = row, row[0] + gap
        row = [last]
        for at, other in enumerate(second):
            swapped = above[at] if letter == other else above[at] + _SWAPS.get((letter, other), _SWAP)
            last = min(above[at + 1] + gap, last + others[at], swapped)
            row.append(last)
    return row[-1] / _whole(one, two)


def least_distance(one: str, two: str) -> float:
    """No two words are nearer than this, which is quickly told: what the longer has more must be lost."""
    return abs(_weighed(one)[2] - _weighed(two)[2]) / _whole(one, two)


def _whole(one: str, two: str) -> float:
    return max(1.0, _weighed(one)[2], _weighed(two)[2])


@lru_cache(maxsize=4096)
def _weighed(word: str) -> tuple[str, tuple[float, ...], float]:
    """A word's key, what each letter of it costs when lost, and all of them together."""
    letters = key(word)
    gaps = tuple(_LOST.get(letter, _SWAP) for letter in letters)
    return letters, gaps, sum(gaps)

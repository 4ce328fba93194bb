"""How alike two written words sound, for words a listener spelt as it heard them.

A coarse sound key of my own making: English spelling to a few consonant letters and "a" for any vowel. Two
keys are compared by an edit distance in which consonants made in the same place cost less than others and
vowels cost little, because listeners lose vowels and voicing first.
"""

from __future__ import annotations

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
_PAIRS = frozenset((one, two) for group in _ALIKE for one in group for two in group if one != two)
_SWAP, _ALIKE_SWAP, _VOWEL = 1.0, 0.5, 0.3


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
    first, second = key(one), key(two)
    row = [0.0]
    for letter in second:
        row.append(row[-1] + _gap(letter))
    for letter in first:
        above, row = row, [row[0] + _gap(letter)]
        for at, other in enumerate(second):
            row.append(
                min(above[at + 1] + _gap(letter), row[at] + _gap(other), above[at] + _swap(letter, other))
            )
    return row[-1] / max(1.0, *(sum(map(_gap, sound)) for sound in (first, second)))


def _gap(letter: str) -> float:
    return _VOWEL if letter == "a" else _ALIKE_SWAP + 0.2 if letter == "h" else _SWAP


def _swap(one: str, two: str) -> float:
    if one == two:
        return 0.0
    if (one, two) in _PAIRS:
        return _ALIKE_SWAP
    return _SWAP

"""Silences that a listener counted into words, given back: nobody says "bit" for a second and a half.

Where no mark stands between two words, speech recognition often lets the later one begin where the earlier
one ended, whatever silence lay between; before a mark it may stretch the earlier one instead.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Word

_MARKS = (".", ",", "?", "!", "…", ";", ":")
_DIGIT_LETTERS = 5
"""A figure is said as a word of about so many letters."""
_LEAST_S, _PER_LETTER_S = 0.1, 0.06
_SLOWLY_S, _SLOWLY_PER_LETTER_S = 0.4, 0.08
"""The length of a word said at ease, and of one drawn out, in seconds; common sense, no source."""


def without_silences(words: Sequence[Word]) -> tuple[Word, ...]:
    """The words with times that leave out the silence before or after them. Linear in their number."""
    return tuple(
        _said(word, words[at - 1] if at else None) if _stretched(word) else word
        for at, word in enumerate(words)
    )


def _said(word: Word, before: Word | None) -> Word:
    length = _LEAST_S + _PER_LETTER_S * _letters(word)
    ends_here = word.text.rstrip().endswith(_MARKS)
    if ends_here and before is not None and not before.text.rstrip().endswith(_MARKS):
        return replace(word, end_s=word.start_s + length)
    return replace(word, start_s=word.end_s - length)


def _stretched(word: Word) -> bool:
    drawn_s = word.end_s - word.start_s - _SLOWLY_S
    return drawn_s > 0.0 and drawn_s > _SLOWLY_PER_LETTER_S * _letters(word)


def _letters(word: Word) -> int:
    return sum(_DIGIT_LETTERS if letter.isdigit() else letter.isalpha() for letter in word.text)

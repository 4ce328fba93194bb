"""Spoken numbers as golfers say them."""

from __future__ import annotations

import pytest

from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word


def read(text: str) -> str:
    words = tuple(Word(word, at * 0.3, at * 0.3 + 0.28) for at, word in enumerate(text.split()))
    return " ".join(sentence.text for sentence in sentences(Transcript((Segment(words),))))


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        ("I've got one fifty two to the pin", "i've got 152 to the pin"),
        ("one hundred and fifty two yards", "152 yards"),
        ("hit the seven iron one sixty", "hit the 7 iron 160"),
        ("hole number three par four four hundred and ten yards", "hole number 3 par 4 410 yards"),
        ("one ten front one twenty back", "110 front 120 back"),
        ("three forty five to the hole", "345 to the hole"),
        ("twenty five feet", "25 feet"),
        ("two putts for a five", "2 putts for a 5"),
    ],
)
def test_yardages_as_they_are_said(said: str, wanted: str) -> None:
    """Measured cases of a general number-word library's slips (facts: number_words_cases.csv)."""
    assert read(said) == wanted

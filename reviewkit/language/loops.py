"""Loops of a listener that has lost the talk and writes one word over and over: "D. D. D. D. D. D. D. D."."""

from __future__ import annotations

from itertools import groupby

from reviewkit.language.pieces import BREAKS, Piece, text_at

LOOP = 8
"""Times in a row that nobody says a word; a guess."""


def without_loops(given: list[Piece]) -> list[Piece]:
    """The pieces without the words of loops; of the marks beside one stays."""
    words = [at for at, piece in enumerate(given) if piece.text not in BREAKS]
    looped: set[int] = set()
    for _, run in groupby(words, key=lambda at: given[at].text):
        places = list(run)
        if len(places) >= LOOP:
            first, after = places[0], places[-1] + 1
            marked = text_at(given, first - 1) in BREAKS and text_at(given, after) in BREAKS
            looped.update(range(first, after + marked))
    return [piece for at, piece in enumerate(given) if at not in looped] if looped else given

"""Loops of a listener that has lost the talk and writes one word over and over: "D. D. D. D. D. D. D. D."."""

from __future__ import annotations

from itertools import groupby

from reviewkit.language.pieces import BREAKS, Piece

LOOP = 8
"""Times in a row that nobody says a word; a guess."""


def without_loops(given: list[Piece]) -> list[Piece]:
    """The pieces with a full stop for the words of each loop, as what was said meanwhile is lost."""
    words = [at for at, piece in enumerate(given) if piece.text not in BREAKS]
    kept: list[Piece] = []
    begun = 0
    for _, run in groupby(words, key=lambda at: given[at].text):
        places = list(run)
        if len(places) >= LOOP:
            kept += given[begun : places[0]]
            begun = places[-1] + 1
            while begun < len(given) and given[begun].text in BREAKS:
                begun += 1
            while kept and kept[-1].text in BREAKS:
                kept.pop()
            if kept:
                kept.append(Piece(".", kept[-1].last, kept[-1].last))
    return [*kept, *given[begun:]]

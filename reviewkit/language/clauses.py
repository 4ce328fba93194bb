"""Commas where a listener wrote no mark at all: "on the green it's four metres I've missed it".

Once in a while a listener forgets marks for half a minute, and leaves no silence to tell by either. A long
run of words without one is parted before those that begin a clause, as they would be in writing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from reviewkit.language.number_words import words_of
from reviewkit.language.pieces import COMMA, ENDS, Piece

_LEAST = 24
"""So many words without a mark are more than one clause."""
_SUBJECTS = frozenset(
    words_of("it's that's i've i'm i'll i'd there's he's she's we've we're they're it'll that'll here's")
)
_PLAIN = frozenset(words_of("i it that he she we they then there"))
_JOINS, _JOINED = frozenset(words_of("and but so")), _SUBJECTS | _PLAIN
_HOLDS = frozenset(
    words_of(
        """and but so or if when while that what where how why who which because cause as than like then now
        think thought reckon reckons know see say says said hope guess sure until till before after since
        though oh well yes yeah no ah just it and all whether once wish mean even not only of for to
        with"""
    )
)
"""Words that go on into a clause."""


def parted(given: Sequence[Piece]) -> list[Piece]:
    """The pieces with a comma before each clause of a long run without marks."""
    made: list[Piece] = []
    for run in _runs(given):
        made += _commas(run) if len(run) >= _LEAST else run
    return made


def _runs(given: Sequence[Piece]) -> Iterator[list[Piece]]:
    run: list[Piece] = []
    for piece in given:
        run.append(piece)
        if piece.text in (COMMA, *ENDS):
            yield run
            run = []
    yield run


def _commas(run: Sequence[Piece]) -> Iterator[Piece]:
    for at, piece in enumerate(run):
        if 0 < at < len(run) - 1 and _begins(run, at):
            yield Piece(COMMA, run[at - 1].last, run[at - 1].last)
        yield piece


def _begins(run: Sequence[Piece], at: int) -> bool:
    """ "On the green | it's four metres", "in the rough | and I've"."""
    text, before, after = run[at].text, run[at - 1].text, run[at + 1].text
    if before in _HOLDS:
        return False
    return text in _SUBJECTS or (text in _JOINS and after in _JOINED)

"""Whether a lone "one" counts ("one over", "hole one") or points ("that one", "one of those")."""

from __future__ import annotations

from reviewkit.language.number_words import LENGTHS, simple, words_of
from reviewkit.language.pieces import COMMA, ENDS, Piece, text_at

_AFTER = frozenset(
    words_of(
        """putt putts putted par pars birdie bogey eagle double shot shots stroke strokes yard foot
        metre inch iron club wood hybrid penalty hop bounce more"""
    )
)
_DIRECTIONS = frozenset({"over", "under", "up", "down"})
_PLACES = frozenset(words_of("the a an that this my his her their there here those it"))
_BEFORE = frozenset(words_of("plus minus hole number in through after thru off by par"))
_POINTING = frozenset(
    words_of(
        """this that the which any every each another no some first last next good bad big nice
        easy hard only right little other long short wrong your my his her their our lovely
        great decent hit hits pulled pushed sliced hooked thinned topped chunked sent put made"""
    )
)


def counts(given: list[Piece], at: int) -> bool:
    """Whether the "one" at `at` is a number, by its neighbours."""
    before, after, further = (text_at(given, at + step) for step in (-1, 1, 2))
    if after == "of":
        return False
    if after in _DIRECTIONS and further not in _PLACES:
        return before not in ("this", "that", "which") and not (before in _POINTING and before != "the")
    if before in _POINTING:
        return after == "putt" or (before == "only" and after in LENGTHS)
    if before in _BEFORE or after in _AFTER:
        return True
    if after == "and" and (further, text_at(given, at + 3)) in (("a", "half"), ("a", "quarter")):
        return True
    if after in ("or", "to") and (simple(further) or further in ("play", "go", "par")):
        return True
    if before == "with" and after == "left":
        return True
    if before in (COMMA, "and", "or") and simple(text_at(given, at - 2)):
        return True
    begins = at == 0 or before in ENDS
    return begins and (
        after in ENDS
        or (after == COMMA and further == "par")
        or (after == "is" and "par" in (text_at(given, at + 3), further))
    )

"""Words that only fill a pause: "it's, like, two feet", "uh", "a par, you know, four"."""

from __future__ import annotations

from reviewkit.language.number_words import simple
from reviewkit.language.pieces import BREAKS, ENDS, Piece, text_at
from reviewkit.model import Word

_SOUNDS = frozenset({"uh", "um", "uhm", "erm", "hmm", "mm"})
_APART = (("like",), ("er",), ("you", "know"), ("i", "guess"))
"""Fill a pause where marks part them from the rest."""
_HEDGES = (("call", "it"), ("let's", "say"), ("let's", "call", "it"), ("say",), ("what",), ("oh",))
"""Delay a figure, parted so: "rolled to, call it, eighteen inches", "leaves me, what, six feet"."""
_ROUGHLY = frozenset({"about", "around", "roughly", "maybe", "another"})


def without_fillers(given: list[Piece], words: tuple[Word, ...]) -> list[Piece]:
    """The pieces without fillers; a written full stop beside one stays."""
    kept: list[Piece] = []
    at = 0
    while at < len(given):
        filler = _filler(given, at)
        if not filler:
            kept.append(given[at])
            at += 1
            continue
        delays = len(filler) == 1 or filler in _HEDGES
        at += len(filler)
        before, behind = kept[-1] if kept else None, given[at] if at < len(given) else None
        parted = before is not None and before.text in BREAKS
        if behind is not None and behind.text in BREAKS:
            if not parted or not _written(kept[-1], words):
                # One mark is left of two, none around what only delays a word.
                if parted:
                    kept.pop()
                if kept and (not delays or _written(behind, words)):
                    kept.append(behind)
            at += 1
    return kept


def _filler(given: list[Piece], at: int) -> tuple[str, ...]:
    """The words from `at` on that fill a pause, if any."""
    if given[at].text in _SOUNDS:
        return (given[at].text,)
    if text_at(given, at - 1) not in BREAKS:
        return ()
    for filler in (*_APART, *_HEDGES):
        end = at + len(filler)
        said = tuple(piece.text for piece in given[at:end]) == filler
        if said and text_at(given, end) in BREAKS and (filler in _APART or _figure(given, end + 1)):
            return filler
    return ()


def _figure(given: list[Piece], at: int) -> bool:
    """Whether a number begins there: "eighteen inches", "about a hundred and forty"."""
    while text_at(given, at) in _ROUGHLY:
        at += 1
    text = text_at(given, at)
    return simple(text) is not None or (text == "a" and text_at(given, at + 1) == "hundred")


def _written(mark: Piece, words: tuple[Word, ...]) -> bool:
    return words[mark.last].text.endswith(ENDS)

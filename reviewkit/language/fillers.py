"""Words that only fill a pause: "it's, like, two feet", "uh", "a par, you know, four"."""

from __future__ import annotations

from reviewkit.language.pieces import BREAKS, ENDS, Piece, text_at
from reviewkit.model import Word

_SOUNDS = frozenset({"uh", "um", "uhm", "erm", "hmm", "mm"})
_APART = (("like",), ("er",), ("you", "know"), ("i", "guess"))
"""Fill a pause where marks part them from the rest."""


def without_fillers(given: list[Piece], words: tuple[Word, ...]) -> list[Piece]:
    """The pieces without fillers; a written full stop beside one stays."""
    kept: list[Piece] = []
    at = 0
    while at < len(given):
        length = _filler(given, at)
        if not length:
            kept.append(given[at])
            at += 1
            continue
        at += length
        before, behind = kept[-1] if kept else None, given[at] if at < len(given) else None
        parted = before is not None and before.text in BREAKS
        if behind is not None and behind.text in BREAKS:
            if not parted or not _written(kept[-1], words):
                # One mark is left of two, none around what only delays a word.
                if parted:
                    kept.pop()
                if kept and (length > 1 or _written(behind, words)):
                    kept.append(behind)
            at += 1
    return kept


def _filler(given: list[Piece], at: int) -> int:
    """How many pieces from `at` on fill a pause; 0 for none."""
    if given[at].text in _SOUNDS:
        return 1
    for filler in _APART:
        end = at + len(filler)
        said = tuple(piece.text for piece in given[at:end]) == filler
        if said and text_at(given, at - 1) in BREAKS and text_at(given, end) in BREAKS:
            return len(filler)
    return 0


def _written(mark: Piece, words: tuple[Word, ...]) -> bool:
    return words[mark.last].text.endswith(ENDS)

"""Works out what a rule's match may begin with, from the tree of its pattern; see needs."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from re import _parser  # type: ignore[attr-defined]
from typing import Any

from reviewkit.language.needed import DIGITS

_OPEN = "\0"
"""Stands for anything at all in a spelling."""
_FIRST = re.compile(r"([\w']*)([^\w']?)")


def words_begun(pattern: str) -> frozenset[str]:
    """Of what every match of `pattern`, put between word ends, begins with one; empty where it is not known.

    That is a word of letters and apostrophes, a mark, or DIGITS.
    """
    begun = {_beginning(spelling) for spelling in _begun(_parser.parse(pattern))}
    return frozenset() if _OPEN in begun else frozenset(begun)


def _beginning(spelling: str) -> str:
    word, after = _apart(spelling)
    if not word:
        return _OPEN if after in ("", " ") else after
    return _OPEN if after in (_OPEN, DIGITS) else word


def _apart(spelling: str) -> tuple[str, str]:
    """A spelling's first word, and what ends it; either may be missing."""
    word, after = _FIRST.match(spelling).groups()  # type: ignore[union-attr]
    return word, after


def _begun(parts: Sequence[tuple[Any, Any]]) -> set[str]:
    """What a run of the pattern may spell, up to what ends its first word."""
    ended: set[str] = set()
    made = {""}
    for kind, given in parts:
        spelt = _joined(made, _part(str(kind), given))
        made = {spelling for spelling in spelt if not _apart(spelling)[1]}
        ended |= spelt - made
    return ended | made


def _joined(left: Iterable[str], right: Iterable[str]) -> set[str]:
    return {"".join(_apart(begun + more)) for begun in left for more in right}


def _part(kind: str, given: Any) -> set[str]:
    """What one part of a pattern may begin with."""
    if kind == "LITERAL":
        return {_letter(chr(given))}
    if kind == "IN":
        return {_member(str(each), letter) for each, letter in given}
    if kind == "BRANCH":
        return set().union(*map(_begun, given[1]))
    if kind == "SUBPATTERN":
        return _begun(given[-1])
    if kind in ("MAX_REPEAT", "MIN_REPEAT"):
        least, most, body = given
        once = _begun(body) if most == 1 else _joined(_begun(body), {_OPEN})
        return once if least else once | {""}
    return {""} if kind in ("AT", "ASSERT", "ASSERT_NOT") else {_OPEN}


def _member(kind: str, given: Any) -> str:
    """What one member of a set of letters stands for."""
    if kind == "LITERAL":
        return _letter(chr(given))
    digits = kind == "RANGE" and all(chr(end).isdigit() for end in given)
    return DIGITS if digits or str(given) == "CATEGORY_DIGIT" else _OPEN


def _letter(letter: str) -> str:
    return DIGITS if letter.isdigit() else letter

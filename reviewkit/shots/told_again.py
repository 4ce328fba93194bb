"""Lengths told again: one that was said to be to something else, and a putt's own once it has missed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue

_NEAR = 20
"""Words between the two, at most."""
_TO_SOMETHING = re.compile(r"\b(?:to|pin|flag|stick|hole|left|out|in|go)\b")
_OF_TROUBLE = re.compile(r"\b(?:that's|that was|it was|to carry|to clear|to cover|carry|clear) ")
"""What such a length is told with; a club's own reach may well be the length left."""
_MISSED = ("miss", "stayed_out")


def without_lengths_told_again(found: Sequence[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "It's 130, it's 130. That's the bunker": neither is to the hole; "short, from 6 feet": no new putt."""
    asides = list(_asides(talk))
    kept: list[Cue] = []
    for cue in found:
        told = cue.kind == "distance"
        if not told or not (_of(cue, asides) or _of_the_missed_putt(cue, kept)):
            kept.append(cue)
    return kept


def _asides(talk: Sequence[Utterance]) -> Iterator[Mention]:
    for said in talk:
        for told in said.mentions:
            if told.kind == "distance" and told.mood == "aside" and _OF_TROUBLE.search(told.text):
                yield told


def _of(cue: Cue, asides: Sequence[Mention]) -> bool:
    """Whether a number that names no target is one told of something else."""
    told = cue.mention
    bare = told.mood in ("bare", "togo") and not _TO_SOMETHING.search(told.text)
    return bare and any(
        aside.value == told.value and abs(aside.first - told.first) <= _NEAR for aside in asides
    )


def _of_the_missed_putt(cue: Cue, before: Sequence[Cue]) -> bool:
    """Whether it is the length told last, said again behind a miss."""
    if cue.mention.mood != "from":
        return False
    last = next((at for at in range(len(before) - 1, -1, -1) if before[at].kind == "distance"), None)
    if last is None or any(one.kind not in _MISSED for one in before[last + 1 :]):
        return False
    told = before[last].mention
    same = (told.value, told.unit) == (cue.mention.value, cue.mention.unit)
    # What a putt has left is the next one's, however often it is told.
    return same and told.mood != "left" and last + 1 < len(before)

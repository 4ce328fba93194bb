"""A hole's par told as "it's a four", which by itself might be a score: its length stands before it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import SMALL_UNITS

_IT_IS = re.compile(r"(?:it's|it is|this is|this one's|this 1's) (?:only |just )?an? [345]$")
_AT_ONCE = re.compile(r"an? [345]$")
"""Right behind the hole's length: "344, a four"."""
_LENGTHS = {3: (80, 260), 4: (230, 480), 5: (400, 640)}
"""Par -> shortest and longest hole in yards or metres, for all tees; guesses."""
_HAPPENED = {"club", "place", "strike", "holed", "tap", "putts", "miss", "contact"}
_WEIGHT = 0.8
_WHOLE = 320
"""So much, told as left, is the whole hole; a guess."""


def with_pars_behind_lengths(talk: Talk) -> Talk:
    """The talk with "305. It's a four" as a par, where such a length was told right before it."""
    return tuple(_told(said, talk[at - 1] if at else None) for at, said in enumerate(talk))


def _told(said: Utterance, before: Utterance | None) -> Utterance:
    pars = [claim for claim in said.mentions if _is_par(claim, said, before)]
    if not pars:
        return said
    rest = [
        mention
        for mention in said.mentions
        if not (
            mention.kind in ("strokes", "count", "iron", "par") and any(mention.overlaps(par) for par in pars)
        )
    ]
    made = [replace(par, kind="par", unit="", weight=_WEIGHT) for par in pars]
    return replace(said, mentions=tuple(sorted([*rest, *made], key=lambda m: (m.first, m.last))))


def _is_par(claim: Mention, said: Utterance, before: Utterance | None) -> bool:
    if claim.kind != "strokes" or claim.mood:
        return False
    told = [*(before.mentions if before else ()), *said.mentions]
    if _AT_ONCE.match(claim.text):
        return _right_behind(told, claim)
    if not _IT_IS.match(claim.text):
        return False
    length = next(_lengths_before(told, claim), None)
    low, high = _LENGTHS[int(claim.value or 0)]
    return length is not None and low <= length <= high


def _right_behind(told: Sequence[Mention], claim: Mention) -> bool:
    """ "The river hole, 471, a five", "It's 352. A four"; no iron for what is left: "150, a five"."""
    low, high = _LENGTHS[int(claim.value or 0)]
    return any(
        mention.kind == "distance"
        and mention.unit not in SMALL_UNITS
        and (mention.mood == "length" or (mention.mood == "togo" and float(mention.value or 0) >= _WHOLE))
        and mention.first < claim.first <= mention.last + 1
        and low <= float(mention.value or 0) <= high
        for mention in told
    )


def _lengths_before(told: Sequence[Mention], claim: Mention) -> Iterator[float]:
    """Lengths told before a claim, the nearest first, up to where a ball was struck."""
    for mention in reversed([m for m in told if m.last < claim.first]):
        if mention.kind in _HAPPENED:
            return
        # What is left to a target may be any stroke's, and "150, it's a five" an iron.
        plain = mention.mood == "length" or (mention.mood in ("", "bare") and claim.value != 3)
        if mention.kind == "distance" and mention.unit not in SMALL_UNITS and plain:
            yield float(mention.value or 0)

"""Clubs told by their number alone: a 3 or a 4 is a wood or a hybrid where the round names no such iron."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Mention, Talk, Utterance

_IRON = "iron"
_NAMED = (_IRON, "wood", "hybrid", "rescue", "utility")
_ELSE = {"3I": "3W"}
"""Who carries a 3 iron says so; a guess."""


def as_carried(told: Sequence[Utterance], talk: Talk) -> tuple[Utterance, ...]:
    """One hole's utterances with a 3 or 4 alone as the club of that number that the whole talk names."""
    if not any(_by_number(mention) for said in told for mention in said.mentions):
        return tuple(told)
    carried = Counter(
        str(mention.value)
        for said in talk
        for mention in said.mentions
        if mention.kind == "club" and mention.mood != "other" and any(w in mention.text for w in _NAMED)
    )
    return tuple(
        replace(said, mentions=tuple(_of_the_bag(mention, carried) for mention in said.mentions))
        for said in told
    )


def _by_number(mention: Mention) -> bool:
    return mention.kind == "club" and mention.value in ("3I", "4I") and _IRON not in mention.text


def _of_the_bag(mention: Mention, carried: Counter[str]) -> Mention:
    iron = str(mention.value)
    if not _by_number(mention) or iron in carried:
        return mention
    same = [club for club, _ in carried.most_common() if club in (f"{iron[0]}W", f"{iron[0]}H")]
    return replace(mention, value=same[0] if same else _ELSE.get(iron, iron))

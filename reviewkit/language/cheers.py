"""Balls told to go in where none can: "get in, get in" is said to a friend beside a cart as well."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import SMALL_UNITS

_CHEERED = "cheered in"
"""The rule whose words are as much a wish as a deed."""
_BEFORE, _BEHIND, _AT_ONCE = 8, 3, 2
"""Utterances before a cheer and behind it in which something must be told of a ball near the hole, and those
in which a score told behind it is its own."""
_NEAR = {"putt", "putter", "putts", "tap", "stayed_out", "updown", "holed"}
_PLACES, _SHORT = {"green", "fringe", "close", "sand"}, {"chip", "pitch", "bunker", "wedge"}
_SCORES = {"score_word", "strokes"}


def without_idle_cheers(talk: Talk) -> Talk:
    """The talk without cheers for balls that were nowhere near a hole: "in the car park. Get in, get in"."""
    return tuple(_without(said) if _idle(talk, at) else said for at, said in enumerate(talk))


def _idle(talk: Talk, at: int) -> bool:
    if not any(_cheer(mention) for mention in talk[at].mentions):
        return False
    before = (m for said in talk[max(0, at - _BEFORE) : at + 1] for m in said.mentions)
    behind = (m for said in talk[at + 1 : at + 1 + _BEHIND] for m in said.mentions)
    at_once = (m for said in talk[at : at + 1 + _AT_ONCE] for m in said.mentions)
    scored = any(m.kind in _SCORES and not m.mood for m in at_once)
    return not (scored or _near_the_hole(before) or _near_the_hole(behind))


def _near_the_hole(mentions: Iterable[Mention]) -> bool:
    """Whether a ball is told of on the green or around it."""
    return any(
        (mention.kind in _NEAR and not _cheer(mention))
        or (mention.kind == "place" and mention.value in _PLACES)
        or (mention.kind == "strike" and mention.value in _SHORT)
        or (mention.kind == "distance" and mention.unit in SMALL_UNITS)
        for mention in mentions
        if mention.mood != "other"
    )


def _cheer(mention: Mention) -> bool:
    return mention.kind == "holed" and mention.rule == _CHEERED


def _without(said: Utterance) -> Utterance:
    return replace(said, mentions=tuple(mention for mention in said.mentions if not _cheer(mention)))

"""A ball in a penalty area that was played as it lay, which costs nothing (Rule 17.1b, from memory)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue

_SOON = 2
"""Utterances from the place to the words that the ball could be played."""
_LAY = "rough"
"""What a ball lies in where a penalty area is dry; a guess."""


def played_as_they_lie(found: Sequence[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "In the hazard on the left. It's dry in there, so I'm going to play it": no penalty."""
    return [_as_it_lies(cue) if _played(cue, talk) else cue for cue in found]


def _played(cue: Cue, talk: Sequence[Utterance]) -> bool:
    if (cue.kind, cue.value) != ("place", "penalty"):
        return False
    told = list(_told_behind(cue, talk))
    playable = any(mention.kind == "playable" and mention.mood != "not" for mention in told)
    return playable and not any(mention.kind in ("drop", "reload") for mention in told)


def _told_behind(cue: Cue, talk: Sequence[Utterance]) -> Iterator[Mention]:
    for said in talk[cue.utterance : cue.utterance + 1 + _SOON]:
        yield from (mention for mention in said.mentions if mention.first > cue.mention.last)


def _as_it_lies(cue: Cue) -> Cue:
    return replace(cue, mention=replace(cue.mention, value=_LAY))

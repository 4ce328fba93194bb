"""A ball in a penalty area that was played as it lay, which costs nothing (Rule 17.1b, from memory)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Utterance
from reviewkit.shots.cue import Cue

_PLAYED = re.compile(
    r"(?<!not )(?<!n't )(?<!hardly )(?<!barely )\bplayable\b"
    r"|\bplay(?:ed|ing)? (?:it|that|this)(?: straight| right)?"
    r" (?:as it lies|out of (?:there|it|that)|from (?:in )?there)"
    r"|\b(?:it's|it is|that's|was|bone|all|quite) dry(?: enough)?(?: in there| in here| down there)?"
    r"(?= [.,!]| so| and|$)"
    r"|\bno water in (?:it|there)\b|\bdried (?:up|out)\b"
)
_DROPPED = re.compile(r"\b(?:drop|drops|dropped|dropping|reload(?:ed)?)\b")
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
    behind = talk[cue.utterance].text.partition(cue.mention.text)[2]
    after = [said.text for said in talk[cue.utterance + 1 : cue.utterance + 1 + _SOON]]
    told = " . ".join((behind, *after))
    return _PLAYED.search(told) is not None and _DROPPED.search(told) is None


def _as_it_lies(cue: Cue) -> Cue:
    return replace(cue, mention=replace(cue.mention, value=_LAY))

"""What became of a ball that found trouble, where the hole has that on one side, or of one kind, only."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue
from reviewkit.shots.steps import Step

_TROUBLE = ("ob", "penalty")
_BUNKER = re.compile(r"\b(?:bunkers?|traps?|sand)\b")


def sides(talk: Sequence[Utterance], cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, str]:
    """Misses by the index of their step: "fence down the right", and later "over the fence"."""
    land = list(_of_the_land(talk, cues))
    found: dict[int, str] = {}
    for at, step in enumerate(steps):
        sandy = step.draft.result == "sand" and step.lie == "tee"
        if not step.draft.miss and (sandy or step.draft.result in _TROUBLE):
            told = {side for side, text in land if not sandy or _BUNKER.search(text)}
            if step.lie == "tee":
                told -= {"short"}
            if len(told) == 1:
                found[at] = told.pop()
    return found


def out_of_bounds(talk: Sequence[Utterance], steps: Sequence[Step]) -> list[int]:
    """Indices of steps given up for lost without a word where the only trouble told of is out of bounds."""
    places = [m for said in talk for m in said.mentions if m.kind == "place" and m.mood != "other"]
    gone = {str(m.value) for m in places} & {"ob", "lost", "penalty"}
    if gone != {"ob"}:
        return []
    return [at for at, step in enumerate(steps) if step.draft.result == "lost"]


def _of_the_land(talk: Sequence[Utterance], cues: Sequence[Cue]) -> Iterator[tuple[str, str]]:
    """The sides on which something lies, and the words that say so."""
    strokes = [cue.mention for cue in cues]
    for utterance in talk:
        for mention in utterance.mentions:
            if mention.value in ("left", "right", "short") and _is_land(mention, strokes):
                yield str(mention.value), utterance.text


def _is_land(mention: Mention, strokes: Sequence[Mention]) -> bool:
    """Told of the land, or a miss of no stroke's before the first."""
    if mention.kind != "miss" or mention.mood:
        return mention.kind == "miss" and mention.mood == "land"
    return (
        bool(strokes) and mention.first < strokes[-1].first and all(mention is not told for told in strokes)
    )

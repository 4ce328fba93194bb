"""Fates of other players' balls, told before it is said whose they were."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model import Mention, Utterance
from reviewkit.shots.cue import Cue
from reviewkit.shots.drafts import PENALTIES

_OTHERS = {"reload", "drop"}
_STRUCK = ("club", "strike", "contact", "miss")


def without_others_fates(found: Sequence[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "Plop. And she's reloading": the ball in the water was hers."""
    gone: set[int] = set()
    for number, said in enumerate(talk):
        for mention in said.mentions:
            if mention.kind in _OTHERS and mention.mood == "other":
                gone |= set(_last_fate(found, mention, number))
    return [cue for at, cue in enumerate(found) if at not in gone and not _said_again(cue, talk)]


def _said_again(cue: Cue, talk: Sequence[Utterance]) -> bool:
    """ "She's in the nettles. In the nettles!", "it's in the pond. He's in the pond": one ball."""
    if cue.kind not in ("place", "lie"):
        return False
    around = talk[max(0, cue.utterance - 1) : cue.utterance + 2]
    told = any(
        m.kind == "place" and m.mood == "other" and m.text == cue.mention.text
        for said in around
        for m in said.mentions
        if m.first != cue.mention.first
    )
    text = talk[cue.utterance].text.strip(" .!,")
    return told and text.removeprefix("it's ") == cue.mention.text


def _last_fate(found: Sequence[Cue], reload: Mention, number: int) -> list[int]:
    """Index of a ball lost right before another player plays again, where no stroke of mine led to it."""
    before = [at for at, cue in enumerate(found) if cue.mention.last < reload.first]
    if not before:
        return []
    cue = found[before[-1]]
    lost = cue.kind == "place" and cue.value in PENALTIES and cue.utterance >= number - 1
    mine = any(found[at].kind in _STRUCK and found[at].utterance >= cue.utterance - 2 for at in before[:-1])
    return [before[-1]] if lost and not mine else []

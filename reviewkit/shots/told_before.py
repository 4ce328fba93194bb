"""What is told by pointing back: "there's a bunker at 150. Which is where that finished", "same side"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Mention, Utterance
from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import Cue

_TOLD, _SAME, _THERE = "told", "same", "there"
_WITHIN = 25
"""Words from a hazard named to those that point back to it."""


def with_what_was_told(found: Sequence[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """The cues, each that points back with the value it points to, without those that point to nothing."""
    side, place = "", ""
    kept: list[Cue] = []
    for cue in found:
        value: object = cue.value
        if cue.kind == "club" and value == _SAME and _club_behind(cue, found):
            continue
        if (
            cue.kind == "place"
            and cue.value == _THERE
            and (_named_behind(cue, found) or _close_behind(cue, found))
        ):
            continue
        if cue.kind == "place":
            value = _hazard(cue, talk) if cue.value == _TOLD else place if cue.value == _SAME else value
            if cue.value == _TOLD and _said_at_once(cue, value, found):
                continue
            place = str(value)
        if cue.kind == "miss":
            value = side = side if cue.value == _SAME else cue.value
        if value == cue.value:
            kept.append(cue)
        elif value:
            kept.append(replace(cue, mention=replace(cue.mention, value=str(value))))
    return kept


def _club_behind(cue: Cue, found: Sequence[Cue]) -> bool:
    """ "The same number as before, so the same club. The 8 iron, then": which one is told at once."""
    after = next((c for c in found if c.mention.first > cue.mention.last), None)
    return after is not None and after.kind == "club" and after.utterance <= cue.utterance + 1


def _said_at_once(cue: Cue, value: object, found: Sequence[Cue]) -> bool:
    """ "It's in there. Right hand bunker": where it went is told plainly in the next breath."""
    behind = (c for c in found if c.kind == "place" and c.mention.first > cue.mention.last)
    after = next(behind, None)
    return after is not None and after.value == value and after.utterance <= cue.utterance + 1


def _named_behind(cue: Cue, found: Sequence[Cue]) -> bool:
    """ "Same story, up the fairway": where that was is told in the same breath."""
    behind = (c for c in found if c.utterance == cue.utterance and c.mention.first > cue.mention.last)
    return any(c.kind == "place" for c in behind)


def _close_behind(cue: Cue, found: Sequence[Cue]) -> bool:
    """ "It hit the bank and came back! Five feet!": not where it was, but where a putt begins."""
    after = next((c for c in found if c.mention.first > cue.mention.last), None)
    near = after is not None and after.utterance <= cue.utterance + 1
    return near and after is not None and after.kind == "distance" and after.mention.unit in SMALL_UNITS


def _hazard(cue: Cue, talk: Sequence[Utterance]) -> object:
    told = talk[: cue.utterance + 1]
    named: list[Mention] = [m for said in told for m in said.mentions if m.kind == "hazard"]
    near = range(cue.mention.first - _WITHIN, cue.mention.first)
    return next((m.value for m in reversed(named) if m.last in near), None)

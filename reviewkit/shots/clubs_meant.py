"""Clubs that were only meant: "thinking 8 iron, went with the 9"."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.club_words import is_wedge
from reviewkit.shots.cue import HAPPENED, Cue


def without_clubs_meant(found: list[Cue]) -> list[Cue]:
    """ "Thinking 8 iron, went with the 9": a club meant gives way to the one used, named before anything
    happened to the ball, in the same breath or the next; "3 wood, because I couldn't grip the driver",
    "5 wood is the number. Had the 3 wood out for a second"."""
    return [
        cue
        for at, cue in enumerate(found)
        if not (cue.meant and _club(cue) and (_overruled(found, at) or _only_a_reason(cue, found)))
    ]


def _only_a_reason(cue: Cue, found: Sequence[Cue]) -> bool:
    """ "I'll get a 4 iron. Because I've had enough of the driver": why another club was taken.

    "Because my driver just sailed over that fence" tells a stroke.
    """
    if not cue.mention.text.startswith(("because", "since", "cause")):
        return False
    near = [other for other in found if abs(other.utterance - cue.utterance) <= 1]
    struck = any(other.utterance == cue.utterance and other.kind in HAPPENED for other in near)
    return not struck and any(_club(other) and not other.mention.overlaps(cue.mention) for other in near)


def _overruled(found: list[Cue], at: int) -> bool:
    here = found[at].utterance
    named = [cue for cue in found if cue is found[at] or not cue.mention.overlaps(found[at].mention)]
    at = named.index(found[at])
    wedge = is_wedge(named[at])
    return _used(named[at + 1 :], {here, here + 1}, wedge) or _used(named[:at][::-1], {here, here - 1}, wedge)


def _used(near: Sequence[Cue], utterances: set[int], wedge: bool) -> bool:
    """Whether another club is used among cues, nearest first, in these utterances, before anything happened.

    "Pitching wedge is 134. Took the wedge": where a `wedge` was meant, no more than "wedge" is that one.
    """
    for cue in near:
        if cue.kind in HAPPENED or cue.utterance not in utterances:
            return False
        if _club(cue) and not cue.meant and not (wedge and cue.value == "wedge"):
            return True
    return False


def _club(cue: Cue) -> bool:
    return cue.kind == "club" or (cue.kind == "strike" and cue.value in ("wedge", "full"))

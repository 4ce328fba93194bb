"""Clubs told by what is done with them again: "it's over the road. Three off the tee, driver again"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Word
from reviewkit.shots.cue import Cue
from reviewkit.shots.steps import Step

_WITHIN = 2
"""Words from a club to the "again" that is of it."""


def with_the_club_of_again(
    cues: Sequence[Cue], steps: Sequence[Step], words: Sequence[Word]
) -> tuple[Step, ...]:
    """The steps, a tee shot without a club having that which the next from the tee is struck with again.

    So has a stroke out of sand that of the one before it, which stayed in: "and again, and it's out".
    """
    clubs = [_again(cues[step.draft.first : step.draft.last], words) for step in steps]
    made: list[Step] = []
    for step, after, club in zip(steps, [*steps[1:], *steps[-1:]], [*clubs[1:], ""], strict=True):
        named = club if step.lie == after.lie == "tee" and club == after.draft.club else ""
        if made and step.told and step.lie == made[-1].lie == "sand" and step.draft.shape != "putt":
            named = named or made[-1].draft.club
        made.append(
            step if step.draft.club or not named else replace(step, draft=replace(step.draft, club=named))
        )
    return tuple(made)


def _again(run: Sequence[Cue], words: Sequence[Word]) -> str:
    """The club that is told with "again" behind it."""
    for cue in run:
        told = words[cue.mention.last + 1 : cue.mention.last + 1 + _WITHIN]
        if cue.kind == "club" and any(word.text.lower().strip(" .,!?") == "again" for word in told):
            return str(cue.value)
    return ""

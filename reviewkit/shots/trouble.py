"""The side of a ball that found trouble, where the hole has it on one side only."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model import Utterance
from reviewkit.shots.steps import Step

_TROUBLE = ("ob", "penalty")


def sides(talk: Sequence[Utterance], steps: Sequence[Step]) -> dict[int, str]:
    """Misses by the index of their step: "fence down the right", and later "over the fence"."""
    told = {
        m.value for utterance in talk for m in utterance.mentions if m.kind == "miss" and m.mood == "land"
    }
    told &= {"left", "right"}
    if len(told) != 1:
        return {}
    (side,) = map(str, told)
    found = (at for at, step in enumerate(steps) if step.draft.result in _TROUBLE and not step.draft.miss)
    return dict.fromkeys(found, side)

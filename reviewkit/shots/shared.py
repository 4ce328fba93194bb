"""One ending told of several strokes: "driver, five wood, five wood, every one of them on the fairway"."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import Cue
from reviewkit.shots.steps import Step

_OF_ALL = ("several in the fairway", "several in trouble")
"""Rules that tell such an ending."""
_WITHIN = 12
"""Words from a stroke to the ending that it shares."""


def shared_endings(cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, str]:
    """Results by the index of their step, of strokes whose ending is told with that of the one behind."""
    found: dict[int, str] = {}
    for at, step in enumerate(steps):
        run = cues[step.draft.first : step.draft.last]
        end = next((c for c in run if c.kind == "place" and c.mention.rule in _OF_ALL), None)
        if end is None:
            continue
        for before in range(at - 1, -1, -1):
            draft = steps[before].draft
            if draft.result or draft.shape == "putt" or draft.first == draft.last:
                break
            if end.mention.first - cues[draft.last - 1].mention.last > _WITHIN:
                break
            found[before] = end.value
    return found

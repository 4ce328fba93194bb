"""A hole told over again when it is done: "so that was driver, 6 iron, chip and two putts for a five"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reviewkit.shots.cues import Cue

_TOLD_AGAIN = {"club", "strike", "place", "reload", "drop", "lie", "distance", "again"}


def without_recap(found: Sequence[Cue]) -> list[Cue]:
    """The cues without the clubs that a count of the putts ends, where they repeat those told before.

    The count itself stays, it tells on.
    """
    counted = [at for at, cue in enumerate(found) if cue.kind == "putts"]
    if not counted:
        return list(found)
    clubs = [at for at, cue in enumerate(found[: counted[-1]]) if _named(cue)]
    for first in range(1, len(clubs)):
        again, before = clubs[first:], clubs[:first]
        if len(again) > len(before) or [_club(found[at]) for at in again] != [
            _club(found[at]) for at in before[: len(again)]
        ]:
            continue
        within = found[again[0] : counted[-1]]
        breathless = found[counted[-1]].utterance - found[again[0]].utterance <= 2 * len(again) + 1
        ended = any(
            cue.kind in ("place", "holed", "tap", "stayed_out") for cue in found[before[-1] : again[0]]
        )
        if breathless and ended and not any(cue.kind in ("holed", "tap", "stayed_out") for cue in within):
            return [
                cue
                for at, cue in enumerate(found)
                if not (again[0] <= at < counted[-1] and cue.kind in _TOLD_AGAIN)
            ]
    return list(found)


def _named(cue: Cue) -> bool:
    return cue.kind == "club" and not cue.meant


def _club(cue: Cue) -> str:
    return cue.value

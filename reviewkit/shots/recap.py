"""A hole told over again when it is done: "so that was driver, 6 iron, chip and two putts for a five"."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import Cue

_TOLD = {"club", "strike", "place", "reload", "drop", "lie", "distance", "again"}
_DROPS = ("holed", "tap", "stayed_out")


def without_recap(found: Sequence[Cue]) -> list[Cue]:
    """The cues without the clubs that a count of the putts ends, where they repeat those told before.

    The count itself stays, it tells on.
    """
    counted = [at for at, cue in enumerate(found) if cue.kind == "putts"]
    end = counted[-1] if counted else 0
    clubs = [at for at, cue in enumerate(found[:end]) if cue.kind == "club" and not cue.meant]
    for told in range(1, len(clubs)):
        first, last = clubs[told], clubs[told - 1]
        names = [found[at].value for at in clubs]
        ended = any(_on_the_green(cue) for cue in found[last:first])
        breathless = found[end].utterance - found[first].utterance <= 2 * (len(clubs) - told) + 1
        still = not any(cue.kind in _DROPS for cue in found[first:end])
        if _opens(names[:told], names[told:]) and ended and breathless and still:
            return [
                cue for at, cue in enumerate(found) if at not in range(first, end) or cue.kind not in _TOLD
            ]
    return list(found)


def _on_the_green(cue: Cue) -> bool:
    putted = cue.kind in (*_DROPS, "putt", "putter") or cue.value in ("green", "close")
    return putted or (cue.kind == "distance" and cue.mention.unit in SMALL_UNITS)


def _opens(told: Sequence[str], again: Sequence[str]) -> bool:
    """Whether clubs told again are the first of those told, however often each was named."""
    names = [name for name, _ in groupby(told)]
    return names[: len(again)] == list(again)

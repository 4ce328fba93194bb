"""Provisional balls that were not needed, and losses told when another ball is in play."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import HAPPENED, Cue


def without_idle_provisional(found: list[Cue]) -> list[Cue]:
    """Rule 18.3c: when the original ball is found in time, the provisional's strokes do not count."""
    back = [at for at, cue in enumerate(found) if cue.kind == "found"]
    again = [at for at, cue in enumerate(found) if cue.kind == "reload"]
    lost = any(cue.kind == "place" and cue.value in ("lost", "ob") for cue in found)
    if not back or not again or again[0] > back[-1] or lost:
        return [cue for cue in found if cue.kind != "found"]
    struck, rest = found[: _begun(found, again[0])], found[back[-1] + 1 :]
    if any(cue.kind == "place" and cue.utterance <= found[back[-1]].utterance + 1 for cue in rest[:2]):
        # Where it was found is where it lies, whatever was feared when it was struck.
        struck = [cue for cue in struck if cue.kind != "place"]
    return struck + rest


def _begun(found: Sequence[Cue], again: int) -> int:
    """Where the telling of a provisional begins: "3 wood" in "so a 3 wood as a provisional" is its own."""
    at = again
    while (
        at and found[at - 1].kind in ("club", "strike") and found[at - 1].utterance == found[again].utterance
    ):
        at -= 1
    return at if any(cue.kind in ("club", *HAPPENED) for cue in found[:at]) else again


def without_late_loss(found: list[Cue]) -> list[Cue]:
    """ "Lost ball", said after the provisional, is about the first ball, which the chart gives up."""
    again = next((at for at, cue in enumerate(found) if cue.kind == "reload"), len(found))
    gone = [at for at, cue in enumerate(found) if cue.kind == "place" and cue.value in ("lost", "ob")]
    if not gone or gone[0] < again or again == 0:
        return found
    return [cue for at, cue in enumerate(found) if at not in gone]

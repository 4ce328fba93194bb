"""Ways to listen: how a speech model is asked for words, and what is done to the sound before."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Manner:
    """`low_cut_hz` takes what is lower out of the sound, 0 nothing; at `pace` 1.1 it runs a tenth faster, and
    higher, than it was."""

    name: str
    low_cut_hz: float = 0.0
    pace: float = 1.0


FIRST = Manner("first")
AGAIN = (Manner("low cut", low_cut_hz=150.0), Manner("low cut, faster", low_cut_hz=150.0, pace=1.1))
"""For what was unclear. They err in other places than the first: wind rumbles below a voice, and a voice that
comes higher and faster falls into other sounds."""

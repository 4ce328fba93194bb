"""What one hole's talk tells: the hand-over from strokes to scoring."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reviewkit.model.mention import Mention
from reviewkit.model.round import HoleSpan, Shot


@dataclass(frozen=True, slots=True)
class HoleTale:
    """What one hole's talk tells, before the round is reconciled.

    `shots` are as assembled, told and implied. `par` is par -> probability by words and card, empty when
    neither says. `counts` is strokes, penalties included, -> probability by the tale of strokes alone.
    `mentions` are all of the span in order, claims about the score included. `others` is what the hole tells
    where it begins or ends elsewhere, each with the probability of that.
    """

    span: HoleSpan
    shots: tuple[Shot, ...]
    par: Mapping[int, float]
    counts: Mapping[int, float]
    mentions: tuple[Mention, ...]
    others: tuple[tuple[float, HoleTale], ...] = ()

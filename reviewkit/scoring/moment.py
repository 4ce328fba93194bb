"""When in a hole's play something is said, measured on the strokes as told."""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.model import HoleTale, Mention


@dataclass(frozen=True, slots=True)
class Moment:
    """`begun` is the share of the hole's strokes that had begun; `left` the strokes still to begin, penalties
    included, and `unfinished` those whose telling had not ended.

    `holed` is True once the last stroke was told, `walking` while none was.
    """

    begun: float
    left: int
    unfinished: int
    walking: bool
    holed: bool


def moment(tale: HoleTale, mention: Mention) -> Moment:
    """Where `mention` stands among the strokes of its hole. A tale without strokes goes by the clock."""
    if not tale.shots:
        length = max(tale.span.end_s - tale.span.start_s, 0.1)
        begun = min(max((mention.start_s - tale.span.start_s) / length, 0.0), 1.0)
        return Moment(begun, 0, 0, begun < 0.25, begun > 0.75)
    begun_count = sum(1 + shot.penalty_strokes for shot in tale.shots if shot.start_s <= mention.start_s)
    total = sum(1 + shot.penalty_strokes for shot in tale.shots)
    last = max(shot.start_s for shot in tale.shots)
    return Moment(
        begun=begun_count / total,
        left=total - begun_count,
        unfinished=sum(1 + shot.penalty_strokes for shot in tale.shots if shot.end_s > mention.start_s),
        walking=mention.end_s < tale.shots[0].start_s,
        holed=mention.start_s >= last,
    )

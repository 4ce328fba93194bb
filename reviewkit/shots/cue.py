"""One thing told that bears on a hole's strokes."""

from __future__ import annotations

from dataclasses import dataclass, field

from reviewkit.model import Mention

SHORT = {"chip", "pitch", "bunker"}
"""Strokes around the green."""
LONGEST_CLUBS = ("D", "3W")
"""Those that go too far for most holes of par 3, and that a drive is hit with."""
HAPPENED = {"place", "holed", "tap", "stayed_out", "putts", "updown", "miss", "contact", "reload", "drop"}
"""What befalls a ball once it is struck."""


@dataclass(frozen=True, slots=True)
class Cue:
    """One mention and the number of its utterance within the hole. `pause_s` is the silence before that."""

    mention: Mention
    utterance: int
    pause_s: float
    kind: str = field(init=False)
    value: str = field(init=False)
    meant: bool = field(init=False)
    """Only planned, as far as the words go."""
    after: bool = field(init=False)
    """Told when its stroke was over, as far as the words go."""

    def __post_init__(self) -> None:
        # Kept, not worked out anew: the chart asks for them millions of times.
        value = self.mention.value
        object.__setattr__(self, "kind", self.mention.kind)
        object.__setattr__(self, "value", "" if value is None else str(value))
        object.__setattr__(self, "meant", self.mention.mood == "plan")
        object.__setattr__(self, "after", self.mention.mood == "after")


def bare_hit(cue: Cue) -> bool:
    """Whether it only says that a ball was struck."""
    return cue.kind == "strike" and cue.value == "hit"

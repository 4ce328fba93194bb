"""How many putts were taken that nobody told of, by how far from the hole the ball lay.

The shares are of a middling amateur, rounded; common practice of the trade, from memory.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from reviewkit.shots.cue import Cue, bare_hit

_IN_FEET = {"ft": 1.0, "in": 1 / 12, "cm": 0.0328, "m": 3.28, "pace": 3.0}
"""Rounded, and not worked out by `lengths.yards`: every run of cues asks for it."""
_LONGEST_FT = 100.0
_ONE = ((2.5, 0.93), (3.5, 0.85), (4.5, 0.73), (6.5, 0.53), (8.5, 0.38), (11, 0.27), (16, 0.17), (25, 0.1))
"""(shorter than this in feet, share of putts that go in)."""
_ONE_OF_LONGER = 0.05
_THREE = ((11, 0.02), (25, 0.05), (35, 0.11), (50, 0.2))
_THREE_OF_LONGER = 0.3
_LENGTH_UNHEARD = (0.47, 0.47, 0.06)
_HEARD_RIGHT = 0.6
"""How often a length told is the putt's, and the putt itself not lost in the noise."""
_UNTOLD = 0.63
"""What the three ways together weigh, next to strokes that were told."""
_TEMPERATURE = 1.3
_FROM_ANYWHERE = ((1, -1.6), (2, -1.6), (3, -4.0))
_AFTER_ANOTHER = ((1, -1.6), (2, -2.6), (3, -4.0))
_TAPPED_FROM = 4.5


def feet(cue: Cue) -> float | None:
    """A told length that a putt may have, in feet; None for any other cue."""
    if cue.kind != "distance" or cue.mention.mood in ("length", "flown", "said", "plan"):
        return None
    told = float(cue.value) * _IN_FEET.get(cue.mention.unit, math.inf)
    return told if told <= _LONGEST_FT else None


def lies_at(cues: Sequence[Cue], first: int, last: int, putted: bool) -> float | None:
    """Feet to the hole after a stroke told by cues `first`..`last`-1, by its words or by those behind it.

    "It's on, 12 feet past", "on the green. 40 feet". Of a putt's own lengths only one that it left counts.
    """
    own = [
        cue
        for cue in cues[first:last]
        if not putted or (cue.mention.mood == "left" and cue is not cues[first])
    ]
    told = [length for cue in own if (length := feet(cue)) is not None]
    behind = (length for cue in cues[last:] if (length := feet(cue)) is not None)
    return told[-1] if told else next(behind, None)


def untold(length_ft: float | None, putts: int) -> tuple[tuple[int, float], ...]:
    """(putts until the ball drops, log odds), `putts` having been told before them."""
    if length_ft is None:
        return _AFTER_ANOTHER if putts else _FROM_ANYWHERE
    one = next((share for longest, share in _ONE if length_ft < longest), _ONE_OF_LONGER)
    three = next((share for longest, share in _THREE if length_ft < longest), _THREE_OF_LONGER)
    shares = zip((one, 1.0 - one - three, three), _LENGTH_UNHEARD, strict=True)
    known = [_HEARD_RIGHT * share + (1.0 - _HEARD_RIGHT) * other for share, other in shares]
    return tuple((n, _TEMPERATURE * math.log(_UNTOLD * share)) for n, share in enumerate(known, 1))


def tapped(length_ft: float | None, close: bool) -> tuple[float, float]:
    """Log odds of a tap-in being the first putt, and of one missed before it that nobody told of."""
    if length_ft is None:
        return (0.0, -0.4) if close else (-0.5, -0.4)
    return (0.0, -1.5) if length_ft < _TAPPED_FROM else (-1.2, -0.4)


def stroked_behind(run: Sequence[Cue]) -> bool:
    """ "12 feet. Pulled it left": a ball struck in a later breath than the length of a putt was told."""
    short = next((cue.utterance for cue in run if feet(cue) is not None), None)
    return short is not None and any(bare_hit(cue) and cue.utterance > short for cue in run)

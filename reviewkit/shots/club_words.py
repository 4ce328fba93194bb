"""What the clubs named in a run of cues say of its being one stroke.

The numbers are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import LONGEST_CLUBS, Cue
from reviewkit.shots.lengths import putt_long

_FEWEST, _DRIVEN = 60, 180
"""Nobody drives for less than the last of these, in yards or metres; less than the first is a pitch."""


def named_late(run: Sequence[Cue], landed_at: int, at: int, clubs_last: bool) -> float:
    """What speaks against the club of a ball that has landed."""
    if run[at].after or (run[at].mention.mood == "with" and run[at].utterance == run[landed_at].utterance):
        return 0.0
    at_once = run[at].mention.first - run[landed_at].mention.last <= 3
    return 0.2 if at_once or clubs_last else 1.3


def left_since(run: Sequence[Cue]) -> bool:
    """Whether what is left is told after the last club of the words so far."""
    club = max(at for at, cue in enumerate(run) if cue.kind == "club")
    return any(cue.kind == "distance" and cue.mention.mood in ("togo", "bare") for cue in run[club:])


def wedged(run: Sequence[Cue]) -> bool:
    """Whether a wedge was taken, whichever."""
    return any(cue.kind == "strike" and cue.value == "wedge" and not cue.meant for cue in run)


def beyond_its_club(run: Sequence[Cue]) -> bool:
    """ "Driver. Wedge from 110": told in a later breath, a stroke for a club that goes half as far."""
    club = next((cue for cue in run if cue.kind == "club"), None)
    if club is None or club.meant or club.value not in LONGEST_CLUBS:
        return False
    later = [cue for cue in run if cue.utterance > club.utterance]
    left = [cue for cue in later if cue.kind == "distance" and cue.mention.mood == "togo"]
    return wedged(later) or any(_FEWEST < float(cue.value) < _DRIVEN and not putt_long(cue) for cue in left)

"""What speaks against parting two cues: words that tell on of the stroke before them, in log odds."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.strains import so_far_off
from reviewkit.shots.weighed import SURELY_BEHIND


def torn(cues: Sequence[Cue], first: int, clubs_last: bool) -> float:
    """What a side or a contact told right after a landing says belongs to that stroke, not to the next."""
    if first and (_told_out(cues, first) or _told_on(cues, first)):
        return 0.8
    if first and cues[first].kind == "club" and (cues[first].after or clubs_last):
        return 1.8 if cues[first].mention.weight >= SURELY_BEHIND else 1.0
    if first and cues[first].mention.mood == "with" and cues[first].utterance == cues[first - 1].utterance:
        return 1.0 if cues[first - 1].kind in ("place", "strike", "miss", "contact", "distance") else 0.0
    far = 2 * _gone(cues, first) + so_far_off(cues, first) if first else 0
    if not first or cues[first].utterance > cues[first - 1].utterance + far:
        return 0.0
    if cues[first].kind not in ("miss", "contact") and not far:
        return 0.0
    return 1.2 if cues[first - 1].kind in ("place", "holed", "distance", "stayed_out", "lie") else 0.0


def _told_out(cues: Sequence[Cue], first: int) -> bool:
    """ "Bunker shot was fine, out to twenty feet": how far it came, told behind the stroke itself."""
    cue, before = cues[first], cues[first - 1]
    same = cue.value == before.value == "bunker" and cue.utterance <= before.utterance + 1
    return same and " to " in cue.mention.text


def _told_on(cues: Sequence[Cue], first: int) -> bool:
    """ "In the fairway. Thirty yards short. We pitch": a miss between a landing and the next short stroke."""
    told = ("miss", "contact", "distance", "lie")
    if cues[first].kind not in told[:2]:
        return False
    after = next((cue for cue in cues[first:] if cue.kind not in told and cue.value != "hit"), None)
    if after is None:
        return False
    if after.utterance == cues[first].utterance:
        # "Missed the green on the left, chipped up": a green is not missed by the chip onto it.
        return "missed the green" in cues[first].mention.text and after.value in SHORT
    return after.kind == "again" or (after.kind == "strike" and after.value in SHORT)


def _gone(cues: Sequence[Cue], at: int) -> bool:
    """ "In the water. Hooked it.": how it was struck, told behind what it cost."""
    struck = cues[at].kind == "miss" and at + 1 < len(cues) and cues[at + 1].kind == "strike"
    return struck and cues[at - 1].kind == "place" and cues[at - 1].value in ("penalty", "ob", "lost")

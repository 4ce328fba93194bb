"""Where a stroke onto the green is told to have landed, and the words that are still about that."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reviewkit.shots.cue import Cue
from reviewkit.shots.lengths import yards
from reviewkit.shots.measures import short_length
from reviewkit.shots.steps import Step

_ON = ("green", "fringe", "close")
_SWUNG = ("club", "strike", "contact")
_PUTTED = ("putt", "putter")
_BY_THE_HOLE = ("miss", "lip", "burn", "shav", "slid", "went by", "goes by", "gone by", "ran by", "rolled by")
_FLAG = ("flag", "pin", "stick", "behind")
"""Said of where a ball lies on the green far oftener than of where a putt ended."""
_GREEN = ("green", "surface")
_LEAVE_YD = 4.5
"""What a putt leaves is seldom longer."""
_GIMME_YD = 1.2
_WORDS_APART = 5
"""Words between a side and its length, at most: "left of the pin, like 20 feet"."""


@dataclass(frozen=True, slots=True)
class Landing:
    """The cues up to `end`-1 that may speak of the stroke onto the green, the last of them in `utterance`."""

    end: int
    utterance: int


def landing(cues: Sequence[Cue], steps: Sequence[Step], putt: int, units: str) -> Landing | None:
    """Where the words of the stroke before the first `putt` end; None where nothing says that it came there.

    With no word of the green, a length that only a putt has says it. In the stroke's own utterance, or beside
    a miss ("8 feet past"), the ball's way ends with it; else the putt's begins.
    """
    first, last = steps[putt - 1].draft.first, steps[putt - 1].draft.last
    swings = [at for at in range(first, last) if cues[at].kind in _SWUNG] or [first]
    at = max((at for at in range(first, last) if _on(cues[at], cues[swings[0]])), default=None)
    if at is None:
        until = max(last, steps[putt].draft.first, steps[putt].draft.last)
        if not steps[putt].told:
            # The words of a putt that no cue was enough to tell stand before those of the next.
            later = (step.draft.first for step in steps[putt:] if step.draft.first < step.draft.last)
            until = max(until, next(later, len(cues)))
        # "Putter back up it. Wasn't hard enough, ten feet to go": behind the putter, it is the putt's.
        until = next((at for at in range(last, until) if cues[at].kind == "putter"), until)
        lengths = (at for at in range(swings[0] + 1, until) if cues[at].kind == "distance")
        at = next((at for at in lengths if short_length(cues[at], units)), None)
        if at is None:
            return None
        swung = max(by for by in swings if by < at)
        if cues[at].utterance > cues[swung].utterance and not by_a_miss(cues, at):
            return Landing(at, cues[at - 1].utterance)
    end = at + 1
    while end < len(cues) and cues[end].utterance == cues[at].utterance and not _of_a_putt(cues[end]):
        end += 1
    return Landing(end, cues[at].utterance)


def _of_a_putt(cue: Cue) -> bool:
    return cue.kind in _PUTTED or (cue.kind == "stayed_out" and cue.mention.text.startswith(_BY_THE_HOLE))


def _on(place: Cue, swung: Cue) -> bool:
    """Whether a place is on or by the green, told with the swing or after it."""
    return place.kind == "place" and place.value in _ON and place.utterance >= swung.utterance


def where_it_lies(cues: Sequence[Cue], at: int, begin: int, units: str) -> bool:
    """Whether a miss told after the landing tells where the ball lay: of the flag, or far off.

    So does the first length told, of the hole: "ten feet past the hole".
    """
    if cues[at].kind != "miss":
        return False
    words = cues[at].mention.text.split()
    if any(word in words for word in (*_FLAG, *_GREEN)) or _still_on(cues, at):
        return True
    told = [by for by in range(begin - 1, len(cues)) if cues[by].kind == "distance"]
    near = [by for by in told if by in (at - 1, at + 1) and _beside(cues[by], cues[at], _WORDS_APART)]
    of_the_hole = "hole" in words or words[-1] == "it"
    if told[:1] == [at + 1] and cues[at + 1].utterance == cues[at].utterance + 1:
        # "A tad left of the hole. 22 feet."
        near = told[:1]
    if of_the_hole and told[:1] == [at - 1] and cues[at].utterance == cues[at - 1].utterance + 1:
        # "About twenty feet away. Left of it."
        near = told[:1]
    lies_at = _GIMME_YD if of_the_hole and near == told[:1] else _LEAVE_YD
    return any(yards(cues[by], units) > lies_at for by in near)


def _still_on(cues: Sequence[Cue], at: int) -> bool:
    """ "It's miles past, but it's on": told in one with the green behind it."""
    after = cues[at + 1] if at + 1 < len(cues) else cues[at]
    return (after.kind, after.value, after.utterance) == ("place", "green", cues[at].utterance)


def _beside(length: Cue, miss: Cue, apart: int = 0) -> bool:
    """Whether a length and a miss are told in one: "six feet short"."""
    first, last = miss.mention.first, miss.mention.last + apart + 1
    near = first <= length.mention.last + 1 and length.mention.first <= last
    return near and miss.utterance == length.utterance


def by_a_miss(cues: Sequence[Cue], at: int) -> bool:
    near = cues[max(0, at - 1) : at + 2]
    return any(cue.kind == "miss" and _beside(cues[at], cue) for cue in near)

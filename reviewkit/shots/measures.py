"""Which told length belongs to which stroke: a length is to the hole, before the stroke it is given to.

The lengths of a hole are dealt out together, each at most once and in order, so that the whole makes the most
sense: a swing takes what was told before it landed, a putt what the stroke before left, and what remains
grows shorter. A length that fits no stroke is left out. The weights are common sense checked on invented
rounds.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.drafts import PENALTIES
from reviewkit.shots.hole_length import length_of_hole
from reviewkit.shots.lengths import hair, put_right, told_twice, unit_of, yards
from reviewkit.shots.moments import Moment, counted, moments, zone
from reviewkit.shots.reach import far_too_near, out_of_reach, within_reach
from reviewkit.shots.steps import Step
from reviewkit.shots.swings import LEAVES, NOTHING, to_swing

_LONGEST_PUTT_YD = {"ft": 45.0, "in": 45.0, "cm": 45.0, "m": 45.0, "yd": 20.0, "pace": 20.0}
"""By the unit told: yards that are paced are mostly of a pitch."""
_LONGEST_TAP_YD, _TAPPED_YD, _OF_A_TAP = 2.2, 1.05, 0.15
_LEFT_BY_A_PUTT_YD = 4.0
_LAGGED_YD = 1.4
_DROPPED_YD, _LEFT_OVER_YD = 2.05, 1.1
"""From so near the last putt was holed that was told, or that goes without saying."""
_STAYED = ("stayed_out", "putter", "miss", "tap", "putts")
_SELDOM_MISSED, _THE_LAST = 0.8, 0.9
_DROPPED = 0.12
_MENDED = 0.12
"""What speaks against a length that is put right."""
_TOLD_TWICE = 0.15
_AFTER_A_PUTT = 0.7
"""What speaks against a longer putt than `_LEFT_BY_A_PUTT_YD` behind another."""
_TOO_NEAR = 0.5
"""What speaks against so short a length for a club swung in full."""
_QUIET = ("distance", "place", "miss", "lie", "found", "contact", "drop")
"""Words that still speak of how the stroke before ended, where a stroke's words open with them."""
_TO = re.compile(r"(?:in)?to |inside |within |down to ")

# How well a length goes with a stroke, by the zone it is told in and its mood; what is not listed does not.
_PUTT = {
    "own": {"togo": 1.0, "": 1.0, "from": 1.3, "plan": 0.6},
    "after": {"from": 0.8, "": 0.6},
    "between": {"togo": 1.0, "": 1.0, "left": 1.2, "from": 1.2, "plan": 0.6},
    "landed": {"togo": 1.0, "": 1.0, "left": 1.2, "from": 0.8},
    "trail": {"togo": 0.8, "": 0.8, "left": 1.2, "from": 0.9},
    "struck": {"togo": 0.8, "": 0.7, "left": 1.0},
}
_LATER = 0.05
"""Of several lengths a swing takes the last, a putt the first, and of several strokes the first takes it,
other things equal."""

Deal = tuple[float, tuple[int | None, ...]]


def short_length(cue: Cue, units: str) -> bool:
    """Whether a told length is one that a putt may have."""
    named = cue.mention.unit or units == "m" or cue.mention.mood in ("left", "from")
    longest = _LONGEST_PUTT_YD.get(unit_of(cue, units), 0.0) if named else 0.0
    return any(cue.mention.mood in moods for moods in _PUTT.values()) and yards(cue, units) <= longest


def distances(cues: Sequence[Cue], steps: Sequence[Step], units: str, par: int | None) -> list[float | None]:
    """For each step the told yards to the hole before it, None when not told."""
    if not steps:
        return []
    when = moments(cues, steps)
    tee = length_of_hole(cues, when[0], units, par)
    given = _dealt(cues, steps, when, units, tee)
    first = None if tee is None else yards(cues[tee], units)
    later = zip(steps[1:], given, strict=True)
    told = [first, *(None if at is None else within_reach(cues, at, step, units) for step, at in later)]
    clubs = [step.draft.club for step in steps]
    full = [at > 0 and step.draft.shape not in SHORT for at, step in enumerate(steps)]
    return [
        None if full[at] and out_of_reach(clubs[: at + 1], first, left) else left
        for at, left in enumerate(told)
    ]


def _rolled_to(cues: Sequence[Cue], steps: Sequence[Step], number: int, at: int) -> bool:
    """ "Putter, up the slope, and it's about four feet": from off the green, what is left is told behind."""
    putted = any(cue.kind in ("putter", "putt") for cue in cues[steps[number].draft.first : at])
    return putted and steps[number].lie == "fringe" and number + 1 < len(steps)


def _dealt(
    cues: Sequence[Cue], steps: Sequence[Step], when: Sequence[Moment], units: str, tee: int | None
) -> tuple[int | None, ...]:
    """For each step after the first the index of the length that is its own, by the best deal of all."""
    lengths = [at for at, cue in enumerate(cues) if cue.kind == "distance" and at != tee]
    long = {at: yards(cues[at], units) for at in lengths}
    long[-1] = -1.0 if tee is None else yards(cues[tee], units)
    # The best deal by the last length given away.
    deals: dict[int, Deal] = {-1: (0.0, ())}
    for number in range(1, len(steps)):
        after: dict[int, Deal] = {}
        worths = _worths(cues, steps, when, number, lengths, units)
        for last, (score, given) in deals.items():
            _offer(after, last, (score, (*given, None)))
            for at, worth in worths.items():
                if at > last:
                    gain = worth - _growth(steps, number, long[last], long[at])
                    _offer(after, at, (score + gain, (*given, at)))
        deals = after
    return max(deals.values(), key=lambda deal: deal[0])[1]


def _offer(deals: dict[int, Deal], last: int, deal: Deal) -> None:
    if last not in deals or deal[0] > deals[last][0]:
        deals[last] = deal


def _worths(
    cues: Sequence[Cue],
    steps: Sequence[Step],
    when: Sequence[Moment],
    number: int,
    lengths: Sequence[int],
    units: str,
) -> dict[int, float]:
    """What each length that may be the step's is worth to it."""
    putted = _putted(steps[number])
    later = -_LATER if putted else _LATER
    found = {}
    for rank, at in enumerate(lengths):
        worth = _worth(cues, steps, when, number, at, units)
        if worth is not None:
            mended = _MENDED if putted and put_right(cues, lengths[rank : rank + 2]) else 0.0
            again = 0.0 if putted or not told_twice(cues, lengths, at) else _TOLD_TWICE
            found[at] = worth + later * rank - _LATER * number - NOTHING - mended + again
    return found


def _dropped(cues: Sequence[Cue], steps: Sequence[Step], at: int, long: float) -> bool:
    """ "Stopped 5 feet from it. 5 feet for par. It's in": behind so short a length only the holing is told.

    It is the last putt's then, whatever else the count of strokes says that was not told.
    """
    last = steps[-1].draft
    near = _DROPPED_YD if steps[-1].told and last.family != "tap" else _LEFT_OVER_YD
    if last.result != "holed" or last.shape != "putt" or last.putts or long > near:
        return False
    behind = cues[at + 1 : last.last if steps[-1].told else len(cues)]
    ending = cues[last.last - 1].mention
    return not any(
        cue.value != cues[at].value
        if cue.kind == "distance"
        else cue.kind in _STAYED and cue.mention is not ending and not cue.mention.overlaps(cues[at].mention)
        for cue in behind
    )


def _idle(cues: Sequence[Cue], step: Step) -> bool:
    """A putt of which nothing is told but its length: "a 3 footer"."""
    lengths = [cue.mention for cue in cues[step.draft.first : step.draft.last] if cue.kind == "distance"]
    return not step.told or all(
        cue.kind == "distance" or any(cue.mention.overlaps(length) for length in lengths)
        for cue in cues[step.draft.first : step.draft.last]
    )


def _tapped(cues: Sequence[Cue], step: Step, again: bool) -> bool:
    """Whether a ball was next to the hole: "seven foot. And walked it in" is told so of a first putt too."""
    words = (cue.mention.text for cue in cues[step.draft.first : step.draft.last] if cue.kind == "tap")
    return step.draft.family == "tap" and (again or any("tap" in told for told in words))


def _putted(step: Step) -> bool:
    return step.draft.shape == "putt" and step.lie in ("green", "fringe", "unknown")


def _growth(steps: Sequence[Step], number: int, before: float, now: float) -> float:
    """What speaks against a length that is not shorter than the one before it."""
    if before < 0 or now < 0.95 * before or steps[number - 1].draft.result in PENALTIES:
        return 0.0
    return 1.5 if now > 1.05 * before or steps[number - 1].draft.shape == "putt" else 0.8


def _worth(
    cues: Sequence[Cue], steps: Sequence[Step], when: Sequence[Moment], number: int, at: int, units: str
) -> float | None:
    """How well the length at `at` goes with a step by itself, None where it does not."""
    mood, own, step = cues[at].mention.mood, when[number], steps[number]
    quiet = mood == "left" and all(_quiet(cue, cues[at], step) for cue in cues[own.first : at + 1])
    left = mood == "left" and _putted(step) and _TO.match(cues[at].mention.text) is not None
    place = zone(when, number, at, at + 1 - own.first if quiet else 0, left)
    if not place or (mood != "from" and hair(cues[at])):
        return None
    if _putted(step):
        return _to_putt(cues, steps, number, at, place, units)
    worth = to_swing(cues, own, at, place, units, step.draft.shape)
    full = not step.draft.shape and step.lie != "fringe"
    near = full and far_too_near(step.draft.club, yards(cues[at], units))
    return worth - _TOO_NEAR if worth is not None and near else worth


def _quiet(cue: Cue, length: Cue, step: Step) -> bool:
    """Whether words before a length that was left may still speak of the stroke that left it."""
    overlap = cue.mention.overlaps(length.mention)
    if cue.kind == "putt":
        return step.draft.family == "tap"
    if cue.kind == "strike":
        return _putted(step)
    return cue.kind in _QUIET or (cue.kind == "stayed_out" and overlap)


def _to_putt(
    cues: Sequence[Cue], steps: Sequence[Step], number: int, at: int, place: str, units: str
) -> float | None:
    cue, mood = cues[at], cues[at].mention.mood
    long, last = yards(cue, units), steps[number - 1].draft.shape == "putt"
    # "Rolled in the 7 footer" is told as a tap-in is.
    tap = _tapped(cues, steps[number], last) and not (place == "own" and mood == "from")
    if (tap and long > _LONGEST_TAP_YD) or not short_length(cue, units):
        return None
    if _dropped(cues, steps, at, long):
        plainly = _PUTT[place].get(mood, 0.0)
        if number == len(steps) - 1:
            # "Nine metres, bit short, it's a metre and a half. In!": the last of two is what dropped.
            return (plainly or _THE_LAST) + _DROPPED
        if _idle(cues, steps[number]) and _putted(steps[number + 1]):
            return plainly - _SELDOM_MISSED
    if last and long > _LEFT_BY_A_PUTT_YD and not (place == "own" and mood in ("from", "togo")):
        worth = _PUTT[place].get(mood)
        return worth - _AFTER_A_PUTT if worth is not None and place in ("own", "after", "between") else None
    if place == "own" and mood == "left" and steps[number].draft.putts:
        # What is left by putts told in one breath is short but for the first of them.
        return 0.9 if counted(steps, number) is (long < _LEFT_BY_A_PUTT_YD) else None
    if place == "own" and mood == "" and _rolled_to(cues, steps, number, at) and long <= _LAGGED_YD:
        return None
    if last and mood != "left" and place in ("struck", "trail", "landed"):
        # Among the words of the putt before it is that one's own, unless it is told last, in a breath of its
        # own or behind another ("50 feet, good putt, 2 feet").
        before = cues[steps[number - 1].draft.first : at]
        told = cues[at].utterance > cues[at - 1].utterance or any(c.kind == "distance" for c in before)
        if place == "struck" and long <= _LEFT_BY_A_PUTT_YD and any(c.kind == "miss" for c in before):
            # "Bit short, that's three feet. I've missed these": which of the two missed is not plain.
            return 0.6
        return 0.5 if place == "landed" or (place == "trail" and (told or long <= _LAGGED_YD)) else None
    if place == "own" and mood == "left" and LEAVES.match(cue.mention.text):
        # "It left me 12 feet, and I missed": told among the putt's own words.
        return 0.5
    worth = _PUTT[place].get(mood)
    # A tap-in has what little was left, not a putt before it that nobody told.
    near = steps[number].draft.family == "tap" and place in ("own", "between") and long <= _TAPPED_YD
    return worth + _OF_A_TAP if worth is not None and near else worth

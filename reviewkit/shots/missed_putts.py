"""The putts of a hole as their misses are told, one after the other."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.cue import Cue
from reviewkit.shots.landings import by_a_miss
from reviewkit.shots.measures import short_length

_MISSES = ("miss", "stayed_out")
_DROPS = ("holed", "tap")
_PUTTED = ("putt", "putter")
_AT_ONCE = 2
"""Words from one side to the next that is told of the same putt."""
_HOW_IT_WAS_STRUCK = 1.15
"""Weight of "too firm", "too soft": they say less of where a putt went than a side does."""
_AGAIN = ("2nd", "3rd", "4th", "next", "comebacker")


def putted(told: Sequence[Cue], putts: int, units: str) -> list[str]:
    """The misses of so many putts; nothing when the words tell of fewer or more."""
    for patient in (False, True):
        walked = _walk(told, units, patient)
        # The last putt, told or not, went in.
        if len(walked) == putts - 1 or (len(walked) == putts and not walked[-1]):
            return walked
    return []


def _walk(told: Sequence[Cue], units: str, patient: bool) -> list[str]:
    """The misses of the putts in order, empty text for one that is not told.

    The `patient` take what is told right after a bare "missed it", or of the same side, for the same putt.
    """
    putts, left_in, missed_in = [""], -1, -1
    for at, cue in enumerate(told):
        if cue.kind == "distance" and short_length(cue, units):
            if _the_next(told[:at], cue, left_in):
                putts.append("")
                left_in, missed_in = -1, -1
                continue
            if cue.mention.mood == "from" and missed_in == cue.utterance:
                # "Missed the eight footer": no length that it left.
                continue
            if missed_in == cue.utterance or by_a_miss(told, at):
                left_in = cue.utterance
            elif missed_in >= 0:
                putts.append("")
                left_in, missed_in = -1, -1
        if missed_in >= 0 and (_again(cue) or _missed_then(cue, left_in)):
            putts.append("")
            left_in, missed_in = -1, -1
        if _came_on(told, at) and missed_in < 0 and len(putts) == 1:
            # "I'll putt it from off the green. It's on. And this one I've missed right."
            putts.append("")
        if cue.kind not in (*_MISSES, *_DROPS) or _thought_in(told, at):
            continue
        # "I've missed it. Wasn't close. Left all the way."
        last_said = bool(at) and told[at - 1].utterance == missed_in
        sides = {c.value for c in told if c.kind == "miss" and c.utterance == cue.utterance}
        same = not putts[-1] or not sides or putts[-1] in sides
        one = left_in in (-1, cue.utterance) and (last_said or left_in == cue.utterance)
        patiently = patient or (putts[-1] == cue.value and _by_how_much(told, at, missed_in))
        more = patiently and same and one and cue.utterance <= missed_in + 3
        if missed_in >= 0 and (cue.kind in _DROPS or (cue.utterance != missed_in and not more)):
            putts.append("")
            left_in, missed_in = -1, -1
        if cue.kind in _DROPS:
            return putts
        if cue.kind == "miss" and (not putts[-1] or _surer(told[:at], cue, missed_in)):
            putts[-1] = cue.value
        missed_in = cue.utterance
    return [*putts, ""] if left_in >= 0 else putts


def _by_how_much(told: Sequence[Cue], at: int, missed_in: int) -> bool:
    """ "Too cautious with it. Six feet short": the side again, in the next breath, with what that left."""
    left = told[max(0, at - 1)].mention
    beside = left.kind == "distance" and left.mood == "left" and left.overlaps(told[at].mention)
    return beside and told[at].utterance == missed_in + 1


def _the_next(before: Sequence[Cue], cue: Cue, left_in: int) -> bool:
    """ "Six feet short, and the six footer I pulled": in one breath, the putt of the length that was left."""
    if cue.mention.mood != "from" or left_in != cue.utterance:
        return False
    left = next((c for c in reversed(before) if c.kind == "distance"), None)
    return left is not None and left.mention.mood == "left" and left.value == cue.value


def _came_on(told: Sequence[Cue], at: int) -> bool:
    """Whether a putt only brought the ball onto the green."""
    return (told[at].kind, told[at].value) == ("place", "green") and any(c.kind in _PUTTED for c in told[:at])


def _again(cue: Cue) -> bool:
    """ "The next one": another putt than the one told before it."""
    return cue.kind in ("putt", "stayed_out") and any(word in _AGAIN for word in cue.mention.text.split())


def _missed_then(cue: Cue, left_in: int) -> bool:
    """ "Left it five feet short, then missed it on the right": in the breath that told what was left."""
    return cue.kind == "stayed_out" and cue.utterance == left_in and cue.mention.text.startswith("missed")


def _surer(before: Sequence[Cue], cue: Cue, missed_in: int) -> bool:
    """ "It's gone by along the right", "too firm, past on the left": a side, surer than how far it went."""
    last = next((c for c in reversed(before) if c.kind == "miss"), None)
    if last is None or not last.utterance == cue.utterance == missed_in:
        return False
    at_once = cue.mention.first - last.mention.last <= _AT_ONCE
    struck = last.mention.weight <= _HOW_IT_WAS_STRUCK
    along = last.value == "long" if at_once else struck and last.value in ("long", "short")
    return along and last.mention.weight < cue.mention.weight


def _thought_in(told: Sequence[Cue], at: int) -> bool:
    """ "Get in! No, it's lipped out": no drop, for what is said next."""
    after = (cue for cue in told[at + 1 :] if cue.utterance == told[at].utterance)
    return told[at].kind == "holed" and any(cue.kind == "stayed_out" for cue in after)

"""Which misses are whose around the green: the stroke's that came onto it, or each putt's.

A tally ("three putts") says how many; the words before it say how each went. The walk trusts itself only
where it finds as many events as there were putts, the last of which may go without saying.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise, takewhile

from reviewkit.shots.cue import Cue, bare_hit
from reviewkit.shots.drafts import side_of
from reviewkit.shots.lengths import yards
from reviewkit.shots.measures import short_length
from reviewkit.shots.steps import Step

_MISSES = ("miss", "stayed_out")
_DROPS = ("holed", "tap")
_ON = ("green", "fringe", "close")
_SWUNG = ("club", "strike", "contact")
_STRUCK = ("miss", "strike", "contact")
_HEADED = ("miss", "distance")
_ACTS = ("club", "strike", "distance", "lie", "again", "putt", "putter", "contact", "drop")
_PUTTED = ("putt", "putter")
_AGAIN = ("2nd", "3rd", "4th", "next", "comebacker")
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


def misses(cues: Sequence[Cue], steps: Sequence[Step], units: str) -> dict[int, str]:
    """Misses by the index of their step, where the words show whose they are."""
    led = _led(cues, steps)
    return {**_trailing(cues, steps), **_behind(cues, steps, led), **_on_the_green(cues, steps, led, units)}


def _trailing(cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, str]:
    """Misses that no stroke took, told in one utterance with a landing, behind it."""
    found: dict[int, str] = {}
    starts = [step.draft.first for step in steps if step.draft.first < step.draft.last]
    for at, step in enumerate(steps):
        last = step.draft.last
        if step.draft.miss or step.draft.shape == "putt" or step.draft.first == last:
            continue
        until = min((first for first in starts if first >= last), default=len(cues))
        own = [cue for cue in cues[last:until] if cue.utterance == cues[last - 1].utterance]
        if side := side_of(own) or side_of(_why(cues[last:until], cues[last - 1].utterance)):
            found[at] = side
    return found


def _led(cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, int]:
    """How many cues at the head of a step tell a side of the stroke before it.

    "It's on the beach. Left side. My sixty": a side told before the next club is the landing's.
    """
    led: dict[int, int] = {}
    for at, (before, step) in enumerate(pairwise(steps), 1):
        run = cues[step.draft.first : step.draft.last]
        told_first = _told_first(run)
        sides = [cue for cue in told_first if cue.kind == "miss"]
        # "In the bunker" tells where it ended and where it lies, "tugged it" a side and that it was struck.
        told = cues[before.draft.first : before.draft.last]
        ended = [cue for cue in told if cue.kind != "lie" and not bare_hit(cue)]
        landed = ended[-1] if ended else None
        if not sides or landed is None or landed.kind not in ("place", "miss"):
            continue
        end = sides[-1].utterance
        behind = {*_HEADED, *(cue.kind for cue in told_first)}
        head = list(takewhile(lambda cue: cue.kind in behind and cue.utterance <= end, run))  # noqa: B023
        acts = run[len(head)] if len(head) < len(run) else sides[-1]
        # A side of the fairway is no miss, but to stop there short of the green is.
        off = landed.value != "fairway" or all(cue.value == "short" for cue in sides)
        soon = sides[0].utterance <= landed.utterance + 1 and acts.utterance > end
        if soon and off and acts.kind in _ACTS:
            led[at] = len(head)
    return led


def _told_first(run: Sequence[Cue]) -> list[Cue]:
    """The sides at the head of a stroke's words, and that it was struck so where a ball is dropped next.

    "Plop. I've pulled it left. So I've dropped one": before that nobody swung again.
    """
    struck = list(takewhile(lambda cue: cue.kind == "miss" or bare_hit(cue), run))
    dropped = len(struck) < len(run) and run[len(struck)].kind == "drop"
    return struck if dropped else list(takewhile(lambda cue: cue.kind == "miss", run))


def _behind(cues: Sequence[Cue], steps: Sequence[Step], led: Mapping[int, int]) -> dict[int, str]:
    found: dict[int, str] = {}
    for at, head in led.items():
        first, last = steps[at].draft.first, steps[at].draft.last
        own = cues[steps[at - 1].draft.first + led.get(at - 1, 0) : steps[at - 1].draft.last]
        # "It's over! It's in the bunker though. Right hand one": the surer word of both.
        found[at - 1] = side_of([*own, *cues[first : first + head]])
        found[at] = side_of(cues[first + head : last])
    return found


def _why(behind: Sequence[Cue], landed: int) -> list[Cue]:
    """ "It's in the water. Hooked it.": nothing but how it was struck, said soon after the landing."""
    told = [cue for cue in behind if cue.kind != "lie"]
    return list(takewhile(lambda cue: cue.kind in _STRUCK and cue.utterance <= landed + 2, told))


def _on_the_green(
    cues: Sequence[Cue], steps: Sequence[Step], led: Mapping[int, int], units: str
) -> dict[int, str]:
    """The putts' misses and that of the stroke before them."""
    rows = [at for at, step in enumerate(steps) if step.draft.shape == "putt"]
    if not rows or rows != list(range(rows[0], len(steps))) or rows[0] == 0:
        return {}
    onto = steps[rows[0] - 1]
    landing = _landing(cues, steps, rows[0], units)
    if landing is None:
        return {}
    first, at = onto.draft.first + led.get(rows[0] - 1, 0), landing.end
    while not onto.told and 0 < first < at and cues[first].utterance == cues[first - 1].utterance:
        # "It's in the back bunker. Out, to 15 feet": the side is that of the stroke into it.
        first += 1
    while at < len(cues) and cues[at].kind in ("miss", "distance", "place"):
        # "It's on. Forty feet short of the flag."
        at += 1
    lies = [found for found in range(landing.end, at) if _where_it_lies(cues, found, landing.end, units)]
    begin = max(lies) + 1 if lies else landing.end
    walked = _putted(cues[begin:], len(rows), units)
    far = next((by for by in range(begin, at) if cues[by].kind == "distance"), begin)
    if not walked and not lies and far > begin and cues[far].utterance > cues[far - 1].utterance:
        # "It's on. It's miles past. Ten metres": where it lies, told before how far that is.
        walked = _putted(cues[far:], len(rows), units)
        lies = [by for by in range(begin, far) if walked and cues[by].kind == "miss"]
    side = side_of([*cues[first : landing.end], *(cues[found] for found in lies)])
    told = dict(zip(rows, walked, strict=False))
    if onto.draft.last > landing.end or lies or told:
        told[rows[0] - 1] = side
    return told


def _landing(cues: Sequence[Cue], steps: Sequence[Step], putt: int, units: str) -> Landing | None:
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
        if cues[at].utterance > cues[swung].utterance and not _by_a_miss(cues, at):
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


def _where_it_lies(cues: Sequence[Cue], at: int, begin: int, units: str) -> bool:
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


def _by_a_miss(cues: Sequence[Cue], at: int) -> bool:
    near = cues[max(0, at - 1) : at + 2]
    return any(cue.kind == "miss" and _beside(cues[at], cue) for cue in near)


def _putted(told: Sequence[Cue], putts: int, units: str) -> list[str]:
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
            if missed_in == cue.utterance or _by_a_miss(told, at):
                left_in = cue.utterance
            elif missed_in >= 0:
                putts.append("")
                left_in, missed_in = -1, -1
        if cue.kind in ("putt", "stayed_out") and missed_in >= 0 and _again(cue):
            putts.append("")
            left_in, missed_in = -1, -1
        if _came_on(told, at) and missed_in < 0 and len(putts) == 1:
            # "I'll putt it from off the green. It's on. And this one I've missed right."
            putts.append("")
        if cue.kind not in (*_MISSES, *_DROPS) or _thought_in(told, at):
            continue
        # "I've missed it. Wasn't close. Left all the way."
        last_said = bool(at) and told[at - 1].utterance == missed_in
        same = not putts[-1] or _side_in(told, cue.utterance) in ("", putts[-1])
        one = left_in in (-1, cue.utterance) and (last_said or left_in == cue.utterance)
        more = patient and same and one and cue.utterance <= missed_in + 3
        if missed_in >= 0 and (cue.kind in _DROPS or (cue.utterance != missed_in and not more)):
            putts.append("")
            left_in, missed_in = -1, -1
        if cue.kind in _DROPS:
            return putts
        missed_in = cue.utterance
        if cue.kind == "miss" and not putts[-1]:
            putts[-1] = cue.value
    return [*putts, ""] if left_in >= 0 else putts


def _came_on(told: Sequence[Cue], at: int) -> bool:
    """Whether a putt only brought the ball onto the green."""
    return (told[at].kind, told[at].value) == ("place", "green") and any(c.kind in _PUTTED for c in told[:at])


def _again(cue: Cue) -> bool:
    """ "The next one": another putt than the one told before it."""
    return any(word in _AGAIN for word in cue.mention.text.split())


def _side_in(told: Sequence[Cue], utterance: int) -> str:
    return side_of([cue for cue in told if cue.utterance == utterance])


def _thought_in(told: Sequence[Cue], at: int) -> bool:
    """ "Get in! No, it's lipped out": no drop, for what is said next."""
    after = (cue for cue in told[at + 1 :] if cue.utterance == told[at].utterance)
    return told[at].kind == "holed" and any(cue.kind == "stayed_out" for cue in after)

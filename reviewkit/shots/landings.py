"""Where a stroke onto the green is told to have landed, and the words that are still about that."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import Cue, bare_hit
from reviewkit.shots.drafts import Draft
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
_ENDS = ("front", "back", "behind")
"""Of the green, where a fringe was told."""
_LEAVE_YD = 4.5
"""What a putt leaves is seldom longer."""
_GIMME_YD = 1.2
_FAR_SHORTER = 0.5
_SENT = ("pushed", "pulled", "push", "pull", "shoved", "tugged", "yanked", "blocked", "missed", "hit", "cut")
_ROLLED = (
    "went",
    "goes",
    "gone",
    "ran",
    "rolled",
    "slid",
    "slipped",
    "drifted",
    "sailed",
    "sailing",
    "raced",
)
"""What is done to a putt, and what it does."""
_WORDS_APART, _SOON = 5, 4
"""Words between a side and its length, at most: "left of the pin, like 20 feet"."""


def landing(cues: Sequence[Cue], steps: Sequence[Step], putt: int, units: str) -> int | None:
    """The cue behind those that may speak of the stroke before the first `putt`.

    None where nothing says that it came onto the green.

    With no word of the green, a length that only a putt has says it. In the stroke's own utterance, or beside
    a miss ("8 feet past"), the ball's way ends with it; else the putt's begins.
    """
    onto, before = steps[putt - 1].draft, steps[putt - 2].draft.last if putt > 1 else 0
    first, last = onto.first, onto.last
    # The only putt went in: no side is its own.
    several = putt + 1 < len(steps)
    if several and (missed := _missed_by_a_putt(cues, onto, before, units)) is not None:
        return missed
    swings = [at for at in range(first, last) if cues[at].kind in _SWUNG] or [first]
    at = _came_on(cues, swings[0], last, units)
    if at is None:
        until = _untold_until(cues, steps, putt)
        lengths = (at for at in range(swings[0] + (first < last), until) if cues[at].kind == "distance")
        short = [at for at in lengths if short_length(cues[at], units)]
        if len(short) > 1 and _to_go(cues, short, swings[0], last, units):
            short = short[1:]
        at = short[0] if short else None
        swung = max((by for by in swings if at is None or by < at), default=first)
        putted = _putted_behind(cues, swung, until if at is None else at)
        if several and putted is not None:
            return putted
        if at is None:
            return None
        apart = at == first or cues[at].utterance > cues[swung].utterance
        if apart and not _lies_by_a_miss(cues, at, at == first, units):
            return at
    return _end(cues, at, several, units)


def _to_go(cues: Sequence[Cue], short: Sequence[int], swung: int, last: int, units: str) -> bool:
    """ "A little pitch, 20 yards, up the bank. It's five feet shy": the first length is what was left for it.

    Told in the swing's own breath, it is far longer than one that tells with a side where the ball lies.
    """
    own, lies = cues[short[0]], cues[short[1]]
    here = own.utterance <= cues[swung].utterance + 1 and own.utterance < lies.utterance
    here = here and own.mention.unit not in SMALL_UNITS
    plain = here and short[1] < last and not by_a_miss(cues, short[0]) and by_a_miss(cues, short[1])
    return plain and yards(lies, units) < _FAR_SHORTER * yards(own, units)


def _missed_by_a_putt(cues: Sequence[Cue], onto: Draft, before: int, units: str) -> int | None:
    """ "14 feet. I missed it on the left": no stroke onto the green, of which nothing else is told."""
    run = cues[onto.first : onto.last]
    if onto.club or onto.shape or onto.contact or any(cue.kind in ("place", "lie") for cue in run):
        return None
    missed = next((at for at in range(onto.first, onto.last) if cues[at].kind == "miss"), None)
    if missed is None:
        return None
    told = cues[before:missed]
    short = any(cue.kind == "distance" and short_length(cue, units) for cue in told)
    beside = cues[missed - 1].kind == "distance" and by_a_miss(cues, missed - 1)
    return missed if short and not beside else None


def _came_on(cues: Sequence[Cue], swung: int, last: int, units: str) -> int | None:
    """The place told last that is on or by the green; near the hole came the putt whose length was told."""
    places = [at for at in range(swung, last) if _on(cues[at], cues[swung])]
    while places and cues[places[-1]].value == "close":
        between = range((places[-2] if len(places) > 1 else swung) + 1, places[-1])
        apart = (cues[at] for at in between if cues[at].utterance < cues[places[-1]].utterance)
        if not any(cue.kind == "distance" and short_length(cue, units) for cue in apart):
            break
        places.pop()
    return places[-1] if places else None


def _untold_until(cues: Sequence[Cue], steps: Sequence[Step], putt: int) -> int:
    """The cue behind the words that may still tell of the stroke before the first `putt`, or of that."""
    last = steps[putt - 1].draft.last
    until = max(last, steps[putt].draft.first, steps[putt].draft.last)
    if not steps[putt].told:
        # The words of a putt that no cue was enough to tell stand before those of the next.
        later = (step.draft.first for step in steps[putt:] if step.draft.first < step.draft.last)
        until = max(until, next(later, len(cues)))
    # "Putter back up it. Wasn't hard enough, ten feet to go": behind the putter, it is the putt's.
    return next((at for at in range(last, until) if cues[at].kind == "putter"), until)


def _putted_behind(cues: Sequence[Cue], swung: int, until: int) -> int | None:
    """ "The 56, and it came out soft. I thought this putt was in": a later breath's, where none is told."""
    later = (at for at in range(swung + 1, until) if cues[at].utterance > cues[swung].utterance)
    return next((at for at in later if _of_a_putt(cues, at) and not cues[at].meant), None)


def _lies_by_a_miss(cues: Sequence[Cue], at: int, far: bool, units: str) -> bool:
    """Whether a length is told with a side; `far` where it must be too long for what a putt leaves."""
    return by_a_miss(cues, at) and not (far and yards(cues[at], units) <= _LEAVE_YD)


def _end(cues: Sequence[Cue], at: int, several: bool, units: str) -> int:
    """The cue behind the words of a landing at `at`, in its breath.

    "It's on, 9 feet, pushed it, I knew it was going right", "5 feet away, 5 feet, missed it": behind the
    length, what does not tell where the ball lies is of the putt.
    """
    length: Cue | None = None
    end = at
    while end < len(cues) and cues[end].utterance == cues[at].utterance:
        cue = cues[end]
        again = length is not None and (cue.kind, cue.value) == ("distance", length.value)
        putted = again or _far_behind(cue, length) or (length is not None and _rolled(cues, end))
        if end > at and (_of_a_putt(cues, end) or (several and putted)):
            break
        if cue.kind == "distance" and short_length(cue, units):
            length = cue
        end += 1
    return end


def _of_a_putt(cues: Sequence[Cue], at: int) -> bool:
    cue = cues[at]
    if cue.kind == "miss":
        after = cues[at + 1 : at + 2]
        return any(c.mention.overlaps(cue.mention) and c.mention.text.startswith("miss") for c in after)
    return cue.kind in _PUTTED or (cue.kind == "stayed_out" and cue.mention.text.startswith(_BY_THE_HOLE))


def _rolled(cues: Sequence[Cue], at: int) -> bool:
    """ "It's on, 15 feet, and I knocked it 4 feet by": struck again, with what that left."""
    after = (cue for cue in cues[at + 1 : at + 3] if cue.utterance == cues[at].utterance)
    left = {(cue.kind, cue.mention.mood) for cue in after} & {("stayed_out", ""), ("distance", "left")}
    return bare_hit(cues[at]) and bool(left)


def _far_behind(cue: Cue, length: Cue | None) -> bool:
    """Whether a side stands too far behind a putt's length to tell where that lies."""
    if cue.kind != "miss" or length is None or _of_the_green(cue):
        return False
    return cue.mention.first - length.mention.last > _WORDS_APART + 1


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
    if _of_the_green(cues[at]) or _still_on(cues, at) or _by_the_fringe(cues, at):
        return True
    later = range(begin - 1, len(cues))
    told = [by for by in later if cues[by].kind == "distance" and short_length(cues[by], units)]
    within = [by for by in told if cues[by].mention.overlaps(cues[at].mention)]
    if any(cues[by].mention.mood == "from" for by in within):
        # "Left the eight footer short" tells a putt.
        return False
    near = within or [
        by for by in told if by in (at - 1, at + 1) and _beside(cues[by], cues[at], _WORDS_APART)
    ]
    of_the_hole = _of_the_hole(words)
    if told[:1] == [at + 1] and cues[at + 1].utterance == cues[at].utterance + 1:
        # "A tad left of the hole. 22 feet."
        near = told[:1]
    if of_the_hole and told[:1] == [at - 1] and _at_once(cues, at, told):
        near = told[:1]
    first_told = bool(near) and near == told[:1] and words[0] not in _ROLLED
    after = cues[max(at, *near) + 1 :][:1] if first_told else ()
    if any(cue.kind in _PUTTED and cue.utterance > cues[at].utterance for cue in after):
        # "Green. Eight feet past. Birdie putt": a putt begins behind it.
        return True
    lies_at = _GIMME_YD if of_the_hole and near == told[:1] else _LEAVE_YD
    return any(yards(cues[by], units) > lies_at for by in near)


def _of_the_hole(words: Sequence[str]) -> bool:
    """ "Left of it", "past the hole"; but "pushed it", "went sailing by the hole" are of a putt."""
    of = [word for word in words if word not in ("the", "that")][-2:]
    return of[-1] in ("hole", "it") and of[0] not in _SENT and of[0] != "by" and words[0] not in _ROLLED


def _at_once(cues: Sequence[Cue], at: int, told: Sequence[int]) -> bool:
    """ "About twenty feet away. Left of it." But "stopped shy of the hole" is of a putt."""
    opens = cues[at].mention.first - cues[at - 1].mention.last <= (1 if cues[at].value == "short" else _SOON)
    own = any(cues[by].utterance == cues[at].utterance for by in told)
    return opens and not own and cues[at].utterance == cues[at - 1].utterance + 1


def _of_the_green(cue: Cue) -> bool:
    words = cue.mention.text.split()
    return any(word in words for word in (*_FLAG, *_GREEN))


def _still_on(cues: Sequence[Cue], at: int) -> bool:
    """ "It's miles past, but it's on": told in one with the green behind it."""
    after = cues[at + 1] if at + 1 < len(cues) else cues[at]
    here = after.utterance == cues[at].utterance
    return after.kind == "place" and (after.value == "green" if here else _told_on(cues, at))


def _by_the_fringe(cues: Sequence[Cue], at: int) -> bool:
    """ "It's sitting on the fringe. Just in front.": which fringe it is."""
    before, words = cues[at - 1], cues[at].mention.text.split()
    side = any(word in words for word in _ENDS)
    fringe = (before.kind, before.value) == ("place", "fringe")
    return side and fringe and cues[at].utterance <= before.utterance + 1


def _told_on(cues: Sequence[Cue], at: int) -> bool:
    """ "It's on the collar. Just off the front. That's the fringe": one place, told again behind a side."""
    before, after = cues[at - 1], cues[at + 1]
    near = after.utterance <= cues[at].utterance + 1
    return near and after.kind == before.kind == "place" and after.value == before.value in _ON


def _beside(length: Cue, miss: Cue, apart: int = 0) -> bool:
    """Whether a length and a miss are told in one: "six feet short"."""
    first, last = miss.mention.first, miss.mention.last + apart + 1
    near = first <= length.mention.last + 1 and length.mention.first <= last
    return near and miss.utterance == length.utterance


def by_a_miss(cues: Sequence[Cue], at: int) -> bool:
    near = cues[max(0, at - 1) : at + 2]
    return any(cue.kind == "miss" and _beside(cues[at], cue) for cue in near)

"""Sides told behind a landing: why the ball went there, said before the next stroke's own words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise, takewhile

from reviewkit.shots.cue import Cue, bare_hit
from reviewkit.shots.drafts import side_of
from reviewkit.shots.steps import Step

_STRUCK = ("miss", "strike", "contact")
_HEADED = ("miss", "distance")
_NAMED = ("club", "distance")
_ACTS = ("club", "strike", "distance", "lie", "again", "putt", "putter", "contact", "drop")


def trailing(cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, str]:
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


def led(cues: Sequence[Cue], steps: Sequence[Step]) -> dict[int, int]:
    """How many cues at the head of a step tell a side of the stroke before it.

    "It's on the beach. Left side. My sixty": a side told before the next club is the landing's.
    """
    found: dict[int, int] = {}
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
        head = list(takewhile(lambda cue: not _begins(cue), head))
        acts = run[len(head)] if len(head) < len(run) else sides[-1]
        # A side of the fairway is no miss, but to stop there short of the green is.
        off = landed.value != "fairway" or all(cue.value == "short" for cue in sides)
        # "Rough to the left, 30 short, 30 yards out, sand wedge, too strong": of two, each its own.
        anew = acts.kind in _NAMED and bool(side_of(run[len(head) :]))
        soon = sides[0].utterance <= landed.utterance + 1 and (acts.utterance > end or anew)
        if soon and off and (acts.kind in _ACTS or acts.value == "there"):
            found[at] = len(head)
    return found


def _begins(cue: Cue) -> bool:
    """Whether it is what was left for the next stroke."""
    return cue.kind == "distance" and cue.mention.mood == "togo"


def _told_first(run: Sequence[Cue]) -> list[Cue]:
    """The sides at the head of a stroke's words, and that it was struck so where a ball is dropped next.

    "Plop. I've pulled it left. So I've dropped one": before that nobody swung again.
    """
    struck = list(takewhile(lambda cue: cue.kind == "miss" or bare_hit(cue), run))
    dropped = len(struck) < len(run) and run[len(struck)].kind == "drop"
    return struck if dropped else list(takewhile(lambda cue: cue.kind == "miss", run))


def behind(cues: Sequence[Cue], steps: Sequence[Step], led: Mapping[int, int]) -> dict[int, str]:
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

"""Which misses are whose around the green: the stroke's that came onto it, or each putt's.

A tally ("three putts") says how many; the words before it say how each went. The walk trusts itself only
where it finds as many events as there were putts, the last of which may go without saying.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reviewkit.shots.cue import Cue
from reviewkit.shots.drafts import side_of
from reviewkit.shots.landings import landing, where_it_lies
from reviewkit.shots.missed_putts import putted
from reviewkit.shots.steps import Step
from reviewkit.shots.told_behind import behind, led, trailing

_THEN = ("distance", "putter")
"""What is told of a putt before it is struck."""


def misses(cues: Sequence[Cue], steps: Sequence[Step], units: str) -> dict[int, str]:
    """Misses by the index of their step, where the words show whose they are."""
    heads = led(cues, steps)
    return {**trailing(cues, steps), **behind(cues, steps, heads), **_on_the_green(cues, steps, heads, units)}


def _on_the_green(
    cues: Sequence[Cue], steps: Sequence[Step], heads: Mapping[int, int], units: str
) -> dict[int, str]:
    """The putts' misses and that of the stroke before them."""
    rows = [at for at, step in enumerate(steps) if step.draft.shape == "putt"]
    if not rows or rows != list(range(rows[0], len(steps))) or rows[0] == 0:
        return {}
    onto = steps[rows[0] - 1]
    landed = landing(cues, steps, rows[0], units)
    if landed is None:
        return {}
    first, at = onto.draft.first + heads.get(rows[0] - 1, 0), landed
    while not onto.told and 0 < first < at and cues[first].utterance == cues[first - 1].utterance:
        # "It's in the back bunker. Out, to 15 feet": the side is that of the stroke into it.
        first += 1
    while at < len(cues) and cues[at].kind in ("miss", "distance", "place"):
        # "It's on. Forty feet short of the flag."
        at += 1
    lies = [found for found in range(landed, at) if where_it_lies(cues, found, landed, units)]
    begin = max(lies) + 1 if lies else landed
    walked = putted(cues[begin:], len(rows), units)
    later = range(begin + 1, min(at + 1, len(cues)))
    for far in (by for by in later if cues[by].kind in _THEN):
        if not walked and not lies and cues[far].utterance > cues[far - 1].utterance:
            # "It's on. It's miles past. Ten metres", "putter": where it lies, told before how far that is.
            walked = putted(cues[far:], len(rows), units)
            lies = [by for by in range(begin, far) if walked and cues[by].kind == "miss"]
    side = side_of([*cues[first:landed], *(cues[found] for found in lies)])
    told = dict(zip(rows, walked, strict=False))
    if onto.draft.last > landed or lies or told:
        told[rows[0] - 1] = side
    return told

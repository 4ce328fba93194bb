"""What speaks against a run of cues as the words of one putt, in log odds.

The numbers are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import Cue
from reviewkit.shots.holing import feet

_NEXT = re.compile(
    r"\b(?:that|next|back|return|comebacker|lip(?:s|ped)?|horse ?shoed?"
    r"|(?:hit|hits|caught) the (?:hole|cup))\b"
)
_FLAG = re.compile(r"\bof the (?:flag|pin|stick)\b")
_TWO, _LYING, _FAR = 1.6, 1.2, 1.5
_OF_PUTTS = ("", "togo", "from", "left")
_LEFT, _PACED = 0.6, 20
"""What is left of a length by a putt, at most, and the longest putt told in metres or paces."""
_LONGEST = 60
"""Nobody putts from further, in whatever unit."""


def putt_strains(run: Sequence[Cue]) -> float:
    """What speaks against one putt: words for another, or words that tell where the ball lies."""
    return _TWO * _putts_again(run) + _LYING * _lying_yet(run) + _FAR * from_afar(run)


def rolled_between(cues: Sequence[Cue], at: int) -> bool:
    """ "25 feet, uphill. Six feet. Missed it": a length, and in a later breath a much shorter one.

    A putt came between, whatever was heard of it.
    """
    if at + 1 >= len(cues) or cues[at].kind != "distance" or cues[at + 1].kind != "distance":
        return False
    first, then = cues[at], cues[at + 1]
    unit = first.mention.unit
    short = unit in SMALL_UNITS or (unit in ("m", "pace") and float(first.value) <= _PACED)
    told = first.mention.mood in _OF_PUTTS and then.mention.mood in _OF_PUTTS
    long, left = feet(first), feet(then)
    later = then.utterance > first.utterance
    return short and told and later and long is not None and left is not None and left <= _LEFT * long


def putted_on(run: Sequence[Cue]) -> bool:
    """ "It's on. Five metres, and that's run past about a metre": what a putt left of a length.

    Both are told in a later breath than the landing.
    """
    on = next((at for at, cue in enumerate(run) if (cue.kind, cue.value) == ("place", "green")), len(run))
    told = [cue for cue in run[on:] if cue.kind == "distance" and cue.utterance > run[on].utterance]
    lengths = [length for cue in told if (length := feet(cue)) is not None]
    return len(lengths) > 1 and told[-1].mention.mood == "left" and lengths[-1] <= _LEFT * lengths[0]


def from_afar(run: Sequence[Cue]) -> bool:
    """ "I've got 165 out of the rough, came up short": what is left is too long for a putt."""
    return any(
        cue.kind == "distance"
        and cue.mention.mood == "togo"
        and cue.mention.unit not in SMALL_UNITS
        and float(cue.value) > _LONGEST
        for cue in run
    )


def _putts_again(run: Sequence[Cue]) -> bool:
    """What a putt left is told before it drops: "29 feet, to within a foot, and in", "dead. In." are two."""
    drop = next((at for at, cue in enumerate(run) if cue.kind in ("holed", "tap")), 0)
    if any(cue.value == "close" and cue.utterance < run[drop].utterance for cue in run[:drop]):
        return True
    left = [at for at, cue in enumerate(run) if cue.kind == "distance" and cue.mention.mood == "left"]
    putted = ("distance", "putt", "putter", "stayed_out")
    rolled = [at for at in left if any(cue.kind in putted for cue in run[:at])]
    return bool(rolled) and any(_of_the_next(cue, run[rolled[0]]) for cue in run[rolled[0] :])


def _lying_yet(run: Sequence[Cue]) -> bool:
    """ "A bit left of the flag" by itself, "miles short of it, but it's on the green": where it lies."""
    if all(cue.kind == "miss" for cue in run):
        return any(_FLAG.search(cue.mention.text) is not None for cue in run)
    on = next((at for at, cue in enumerate(run) if (cue.kind, cue.value) == ("place", "green")), 0)
    return any(cue.kind == "miss" for cue in run[:on])


def _of_the_next(cue: Cue, left: Cue) -> bool:
    """ "I knock it three feet by. I miss that too", "the return was never in": of what a putt left."""
    if cue.kind == "distance" and cue.mention.mood == "from":
        return cue.value == left.value
    if cue.kind in ("stayed_out", "putt"):
        later = cue.utterance > left.utterance or cue.mention.text.startswith("then ")
        return later and _NEXT.search(cue.mention.text) is not None
    return cue.kind in ("holed", "tap")

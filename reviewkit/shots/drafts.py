"""Strokes in the making: a run of cues read as one stroke, whatever the ball's state before it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile

from reviewkit.shots.club_words import club_of
from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.holing import feet
from reviewkit.shots.putt_words import from_afar, rolled_between
from reviewkit.shots.strains import strains
from reviewkit.shots.torn import torn
from reviewkit.shots.weights import SHAPED, STROKE, crossings, rewards

PENALTIES = ("penalty", "ob", "lost", "unplayable")
_FATES = ("unplayable", "lost")
"""What becomes of a ball that was struck before."""
_ELSEWHERE = ("fairway", "rough", "sand", "trees", *PENALTIES)
_ALONG, _AS_HEAVY = {"short", "long"}, 0.15
"""Sides along the line of play, and how nearly as heavy words for both of them weigh."""
_HEAD, _BEGINS = ("miss", "distance"), ("club", "distance")
"""What may be told of the stroke before, and what a stroke's own words begin with then."""
_UNSTRUCK = ("drop", "distance", "lie")
_LONGEST, _HOPELESS = 9, -2.0
"""Cues in one stroke, at most, and the odds of words that are taken for none."""
_UNTOLD_PUTT = -1.0
"""A putt of which nothing but the lengths before and behind it was heard."""
_PUTTED_THEN = 2.0
"""What putts told right behind a bare chip say for it."""
_LATER = re.compile(r"\b(?:next|2nd|3rd|return|comebacker|other)\b")


@dataclass(frozen=True, slots=True)
class Draft:
    """One stroke told by cues `first`..`last`-1. Empty text is not told; `putts` counts a tally's strokes.

    `shape` is what the words call the stroke: chip, pitch, bunker, punch, layup, tee, putt, or nothing.
    `far` is what was left where that is told first, in its unit, and too long for a putt. `later` is a ball
    holed that was putted before: "the next one's in". `dropped` is "penalty" or "drop" where the ball was
    dropped before it was struck.
    """

    first: int
    last: int
    score: float
    family: str
    shape: str = ""
    club: str = ""
    result: str = ""
    miss: str = ""
    contact: str = ""
    close: bool = False
    reload: bool = False
    lie: str = ""
    putts: int = 0
    dropped: str = ""
    putter: bool = False
    later: bool = False
    feet: float | None = None
    """To the hole: before a putt, or after another stroke, where its words tell."""
    far: float = 0.0
    share: float = 1.0
    """What `far` is of the hole's length, where both are told."""


def drafts(cues: Sequence[Cue], first: int, clubs_last: bool = False) -> list[Draft]:
    """What the cues from `first` on may tell as one stroke or one tally of putts; hopeless ones are left out.

    `clubs_last` is the manner of who names the club when the ball has landed.
    """
    if first and cues[first].mention.first <= cues[first - 1].mention.last:
        return []
    parted = torn(cues, first, clubs_last)
    ends = range(first + 1, min(first + _LONGEST, len(cues)) + 1)
    return [made for last in ends if (made := _draft(cues, first, last, clubs_last, parted))]


def _draft(cues: Sequence[Cue], first: int, last: int, clubs_last: bool, parted: float) -> Draft | None:
    """Cues first..last-1 as one stroke; `parted` is what speaks against its beginning there."""
    run = cues[first:last]
    kinds = {cue.kind for cue in run}
    family = _family(run, kinds)
    if not family:
        putted = last == first + 1 and rolled_between(cues, first)
        return Draft(first, last, _UNTOLD_PUTT, "putt", "putt") if putted else None
    score = STROKE + rewards(run, family) - crossings(run, clubs_last)
    score -= strains(run, family, kinds, clubs_last) + parted
    score += _PUTTED_THEN * _putted_then(cues, first, last)
    if score <= _HOPELESS:
        return None
    places = [cue.value for cue in run if cue.kind == "place" and cue.value != "close"]
    far = _far(run) if "distance" in kinds else 0.0
    close = any(cue.value == "close" for cue in run if cue.kind == "place")
    drops = [cue for cue in run if cue.kind in ("holed", "tap")]
    ends = [cue for cue in drops if not (family == "swing" and _wide(cue, run))]
    holed = bool(ends) and "stayed_out" not in kinds and not (close and family == "swing")
    return Draft(
        first=first,
        last=last,
        score=score,
        family=family,
        shape=_shape(run, family),
        club=club_of(run),
        result="holed" if holed else (places[-1] if places else ""),
        miss=_own_side(run, clubs_last),
        contact=_first(run, "contact"),
        close=close,
        reload="reload" in kinds,
        lie=_first(run, "lie"),
        putts=int(float(_last(run, "putts") or 0)),
        dropped=_dropped(run),
        putter="putter" in kinds,
        far=far,
        share=_share(far, cues[:first]) if far else 1.0,
        later=any(_LATER.search(cue.mention.text) for cue in drops),
        feet=_feet(run, family) if "distance" in kinds else None,
    )


def _putted_then(cues: Sequence[Cue], first: int, last: int) -> bool:
    """ "6 iron short, chip, two putts": where a chip ended is told by the putts behind it."""
    chip = cues[last - 1]
    bare = last == first + 1 and chip.kind == "strike" and chip.value in SHORT
    return bare and last < len(cues) and cues[last].kind == "putts" and not cues[last].meant


def _feet(run: Sequence[Cue], family: str) -> float | None:
    told = [length for cue in run if (length := feet(cue)) is not None]
    return (told[-1] if family == "swing" else told[0]) if told else None


def _family(run: Sequence[Cue], kinds: set[str]) -> str:
    """tally, updown, tap, putt or swing; empty when the cues do not go together in one stroke."""
    if "putts" in kinds:
        return (
            "tally"
            if kinds <= {"putts", "putt", "distance", "holed", "tap", "place", "miss", "stayed_out"}
            and _flat(run)
            else ""
        )
    if "updown" in kinds:
        return "updown" if kinds <= {"updown", "putt", "distance", "holed", "tap", "miss"} else ""
    if "tap" in kinds:
        return "tap" if kinds <= {"tap", "putt", "distance", "holed", "putter"} else ""
    swung = bool(kinds & {"reload", "club"}) or not _flat(run)
    swung = swung or (from_afar(run) and not kinds & {"putt", "putter"})
    if not swung and kinds & {"stayed_out", "putter", "putt"}:
        return "putt"
    if "putter" in kinds:
        return ""
    if kinds <= {"holed", "distance", "miss", "again"} and kinds & {"holed", "miss"}:
        return "putt_or_swing"
    told = {cue.kind for cue in run if not cue.meant}
    if "club" in kinds and any(cue.kind == "strike" and cue.value in SHORT for cue in run):
        # "I'm going to chip it with an 8 iron" is said while the club is in hand.
        return "swing"
    return "swing" if told & {"club", "place", "strike", "miss", "contact", "reload", "holed"} else ""


def _flat(run: Sequence[Cue]) -> bool:
    """No word of the run belongs to a full swing."""
    swings = any(cue.kind == "strike" and cue.value in (*SHAPED, "wedge") for cue in run)
    return not swings and all(cue.value in ("close", "green") for cue in run if cue.kind == "place")


def _wide(end: Cue, run: Sequence[Cue]) -> bool:
    """ "It's in the middle", "tucked in, but it's still fairway": a swing's, as it lies elsewhere."""
    return any(
        cue.value in _ELSEWHERE
        and (cue.mention.overlaps(end.mention) or cue.mention.first > end.mention.last)
        for cue in run
        if cue.kind == "place"
    )


def _shape(run: Sequence[Cue], family: str) -> str:
    if family in ("putt", "tap", "tally"):
        return "putt"
    told = [cue.value for cue in run if cue.kind == "strike" and cue.value in SHAPED]
    return told[0] if told else ""


def side_of(run: Sequence[Cue]) -> str:
    """The heaviest word for a side; the first of equals.

    "It landed 5 yards short, so 12 feet past": of a short and a long one the last, if nearly as heavy.
    """
    sides = [cue for cue in run if cue.kind == "miss"]
    heaviest = max((cue.mention.weight for cue in sides), default=0.0)
    told = [cue.value for cue in sides if cue.mention.weight >= heaviest - _AS_HEAVY]
    if set(told) != _ALONG:
        told = [cue.value for cue in sides if cue.mention.weight == heaviest]
    return told[-1 if set(told) == _ALONG else 0] if told else ""


def _own_side(run: Sequence[Cue], clubs_last: bool) -> str:
    """ "30 short. 30 yards out, sand wedge, too strong": the side told behind the club or what was left."""
    if run[0].kind == "miss" and not clubs_last:
        head = list(takewhile(lambda cue: cue.kind in _HEAD and cue.mention.mood != "togo", run))
        behind = run[len(head) :]
        if behind and behind[0].kind in _BEGINS and (side := side_of(behind)):
            return side
    return side_of(run)


def _dropped(run: Sequence[Cue]) -> str:
    before = list(takewhile(lambda cue: cue.kind in _UNSTRUCK, run))
    drops = {cue.value for cue in before if cue.kind == "drop"}
    if not drops or "free" in drops:
        return ""
    return "penalty" if "penalty" in drops else "drop"


def _far(run: Sequence[Cue]) -> float:
    """What was left, told before anything but the club and the stroke: "wedge from 110"."""
    told = next((cue for cue in run if cue.kind not in ("strike", *"drop", "lie", "club")), None)
    return float(told.value) if told is not None and from_afar([told]) else 0.0


def _share(far: float, before: Sequence[Cue]) -> float:
    """ "Par 4, 385. I hit that well. So, 142 left": what is left of the hole, as a share of it."""
    whole = next((cue for cue in before if cue.kind == "distance" and cue.mention.mood == "length"), None)
    return far / float(whole.value) if whole is not None else 1.0


def _last(run: Sequence[Cue], kind: str) -> str:
    return next((cue.value for cue in reversed(run) if cue.kind == kind), "")


def _first(run: Sequence[Cue], kind: str) -> str:
    return next((cue.value for cue in run if cue.kind == kind), "")


def told_again(before: Draft, found: Draft) -> float:
    """What speaks for the same stroke told on: where it went, its club put right or anew, its landing."""
    if not before.result and not (_acts(found) or found.far):
        return 1.5
    if not before.result and found.contact and _only_told_again(before, found):
        # "I topped it. I topped it along the ground and into the lake": one stroke.
        return 1.5
    if found.result in _FATES and before.result not in PENALTIES and not _acts(found):
        # "In a bush. Unplayable", "I heard some wood. It's a lost ball": nobody swung in between.
        return 1.5
    if found.result in PENALTIES and before.result in PENALTIES and not (_acts(found) or found.dropped):
        # "That's wet. Straight in the creek": one ball.
        return 2.5
    ended = before.result or before.miss or before.contact or before.close
    if found.club and before.club and not ended:
        return 1.0 if found.club == before.club else 0.5
    return 1.0 if found.result and found.result == before.result and not _acts(found) else 0.0


def _acts(found: Draft) -> bool:
    return bool(found.club or found.shape or found.reload or found.contact)


def _only_told_again(before: Draft, found: Draft) -> bool:
    """Whether nothing new of how it was struck is told, but how the ball was met once more."""
    return found.contact == before.contact and not (found.club or found.shape or found.reload or found.far)

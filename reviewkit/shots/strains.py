"""What speaks against a run of cues telling one stroke, in log odds.

The numbers are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.club_words import (
    beyond_its_club,
    left_since,
    missed_before,
    named_late,
    once_more,
    struck_since,
    wedge_behind,
    wedged,
)
from reviewkit.shots.cue import LONGEST_CLUBS, SHORT, Cue
from reviewkit.shots.holing import stroked_behind
from reviewkit.shots.lengths import putt_long
from reviewkit.shots.putt_words import putt_strains, putted_on
from reviewkit.shots.weights import SHAPED

_PITCHED = 60
"""What is left for a short stroke is less, in yards or metres."""
# A later place that says more of the same stroke, not of the next one.
_REFINES = {
    *(
        ("rough", "lost"),
        ("trees", "lost"),
        ("rough", "unplayable"),
        ("trees", "unplayable"),
        ("trees", "rough"),
    ),
    *(
        ("rough", "penalty"),
        ("fairway", "penalty"),
        ("green", "close"),
        ("fringe", "close"),
        ("close", "green"),
    ),
    # "Pin high, but in the rough": how far it went, then where it lies.
    *(("close", "rough"), ("close", "sand"), ("close", "trees"), ("close", "penalty")),
    *(
        ("ob", "lost"),
        ("ob", "rough"),
        ("sand", "close"),
        ("rough", "fringe"),
        ("green", "fringe"),
        ("fringe", "green"),
    ),
    *(
        ("rough", "close"),
        ("fairway", "sand"),
        ("fairway", "rough"),
        ("rough", "fairway"),
        ("trees", "fairway"),
    ),
}
_ACTIONS = {"club", "strike", "reload", "again", "contact", "lie", "tap", "putter", "stayed_out"}
_OUTCOMES = {"place", "holed", "tap", "stayed_out", "putts", "miss"}


def strains(run: Sequence[Cue], family: str, kinds: set[str], clubs_last: bool) -> float:
    """What speaks against one stroke: a second landing, a club or a yardage after the landing.

    `kinds` are those of the cues.
    """
    cost = _at_odds(run, family, kinds)
    place, landed_at = "", -1
    clubs: set[str] = set()
    for at, cue in enumerate(run):
        if cue.kind == "place":
            if place and cue.value not in (place, "close"):
                cost += 0.4 if (place, cue.value) in _REFINES else 1.4
            if cue.value != "close" or not place:
                place, landed_at = cue.value, at
        elif cue.kind in ("holed", "tap"):
            cost += 1.0 if place and place != "close" and family == "swing" else 0.0
            if family == "swing" and _on_green_by(run[:at]):
                cost += 1.2 if _shaped(run) and not _came_to_rest(run[:at]) else 2.4
            landed_at = at
        elif cue.kind == "club":
            cost += named_late(run, landed_at, at, clubs_last) if landed_at >= 0 else 0.0
            if clubs and cue.value not in clubs and not cue.meant:
                # With a length to go since the other club it is another stroke's.
                cost += 1.5 if left_since(run[:at]) or struck_since(run[:at], cue) else 0.5
            if not cue.meant:
                clubs.add(cue.value)
        elif landed_at >= 0 and cue.kind == "distance" and cue.mention.mood == "togo":
            # "It's on! 8 iron, 147" tells the club and what it was from last.
            with_club = run[at - 1].kind == "club" and run[at - 1].utterance == cue.utterance
            cost += 0.0 if with_club or so_far_off(run, at) else 0.8
        elif cue.kind == "again" and landed_at < 0 and clubs and once_more(run, at):
            # "3 wood, decent. Same again": another stroke, whose forerunner's end was not told.
            cost += 1.0
        elif landed_at >= 0 and (
            cue.kind in ("reload", "again") or (cue.kind == "strike" and cue.value in SHAPED)
        ):
            cost += 0.7
        elif landed_at >= 0 and cue.kind == "strike":
            cost += 0.1
        elif cue.kind == "putter" and family == "swing" and clubs:
            # "5 wood, right of everything. Flat stick off the dirt": another stroke.
            cost += 1.5
        elif (
            cue.kind in ("stayed_out", "putt")
            and family == "swing"
            and (_on_green_by(run[:at]) or place == "fringe")
        ):
            # "First putt" names a stroke of its own, "it breaks" may be said on the way.
            cost += 1.6 if cue.kind == "stayed_out" else 0.35 + 0.35 * cue.mention.weight
    return cost


def _at_odds(run: Sequence[Cue], family: str, kinds: set[str]) -> float:
    """What the words as a whole say against their telling one stroke, and all of it."""
    cost = 0.0 if family not in ("swing", "putt") else _bareness(run, family, kinds)
    if family in ("putt", "putt_or_swing", "tap"):
        cost += putt_strains(run)
    again = next((at for at, cue in enumerate(run) if cue.kind == "reload"), 0) if "reload" in kinds else 0
    if again and run[again].utterance > run[0].utterance:
        # Another ball is teed up after a stroke, not within one.
        cost += 2.5
    measured = family == "swing" and "distance" in kinds
    cost += 0.9 * (("miss" in kinds and _struck_again(run)) or (measured and stroked_behind(run)))
    cost += 0.9 * (measured and putted_on(run))
    if "club" in kinds:
        cost += 1.2 * ("strike" in kinds and wedge_behind(run))
        cost += 1.8 if family == "swing" and beyond_its_club(run) else 0.0
        cost += 1.5 if "miss" in kinds and missed_before(run) else 0.0
    cost += 1.2 * ("strike" in kinds and _driven_before(run))
    if run[0].kind == "miss" and "drop" in kinds and _dropped_next(run):
        # "Splash. Two yards short. So I'm at the drop zone": the side is the lost ball's.
        cost += 1.0
    return cost


def _driven_before(run: Sequence[Cue]) -> bool:
    """ "Good drive. Bad 6 iron, left", "big drive, 210 in, hit hybrid": the club is the next stroke's."""
    at = next((at for at, cue in enumerate(run) if cue.mention.text in ("drive", "drove")), len(run))
    for cue in run[at + 1 :]:
        if cue.kind == "distance" and cue.mention.mood == "togo":
            return True
        if cue.kind == "club" and not cue.meant and not cue.after:
            return cue.utterance > run[at].utterance and cue.value not in LONGEST_CLUBS
    return False


def _dropped_next(run: Sequence[Cue]) -> bool:
    """Whether a ball is dropped right after the misses with which the words begin."""
    return next((cue.kind for cue in run if cue.kind not in ("miss", "distance")), "") == "drop"


def _struck_again(run: Sequence[Cue]) -> bool:
    """A short stroke, or what it had to go, told in a later breath than a miss.

    The miss alone tells where the stroke before it ended.
    """
    swung = next((at for at, cue in enumerate(run) if cue.kind in ("club", "contact", "strike")), len(run))
    missed = -1
    for cue in run[swung:]:
        if cue.kind == "place":
            return False
        if cue.kind == "miss" and missed < 0:
            missed = cue.utterance
        left = cue.mention.mood == "togo" and float(cue.value) < _PITCHED
        again = left or (cue.kind == "strike" and cue.value in (*SHORT, "punch"))
        if again and 0 <= missed < cue.utterance:
            return True
    return False


def _on_green_by(run: Sequence[Cue]) -> bool:
    """The words so far put the ball on the green: it is a putt that stays out then."""
    short = any(cue.kind == "distance" and putt_long(cue) for cue in run)
    return short or any(cue.kind == "place" and cue.value in ("green", "close") for cue in run)


def _left_near(run: Sequence[Cue]) -> bool:
    """ "Chipped it to 3 feet", "wedge from 110, 4 feet": what a stroke left tells where it ended."""
    left = [cue for cue in run if cue.kind == "distance" and cue.mention.mood == "left" and putt_long(cue)]
    last = run[-1].kind == "distance" and run[-1].mention.mood in ("", "left") and putt_long(run[-1])
    return (bool(left) and _shaped(run)) or (last and wedged(run))


def _came_to_rest(run: Sequence[Cue]) -> bool:
    """ "Pitched it from 30. 3 feet. Holed it": what it left is told before it drops."""
    return any(cue.kind == "distance" and cue.mention.mood in ("", "left") and putt_long(cue) for cue in run)


def _shaped(run: Sequence[Cue]) -> bool:
    return any(cue.kind == "strike" and cue.value in SHAPED for cue in run)


def so_far_off(cues: Sequence[Cue], at: int) -> bool:
    """ "45 yards short": a length within a miss."""
    if cues[at].kind != "distance" or at + 1 == len(cues) or cues[at + 1].kind != "miss":
        return False
    return cues[at + 1].mention.first <= cues[at].mention.last + 1


def _bareness(run: Sequence[Cue], family: str, kinds: set[str]) -> float:
    """A landing without a stroke, or a stroke without a landing, is less of a stroke."""
    # "First one stays in" tells a stroke by its getting nowhere.
    acts = bool(kinds & _ACTIONS) or any(cue.mention.mood == "togo" or cue.value == "there" for cue in run)
    ends = bool(kinds & _OUTCOMES) or (family == "putt" and "distance" in kinds) or _left_near(run)
    idle = kinds <= {"strike", "drop", "distance"} and not (_shaped(run) or wedged(run))
    return (0.8 if idle else 0.0) + (0.0 if acts or family == "putt" else 0.7) + (0.0 if ends else 0.7)

"""The mentions of one hole that bear on its strokes, in order, without other players and denials."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from reviewkit.model import Mention, Utterance
from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.as_it_lies import played_as_they_lie
from reviewkit.shots.club_words import on_the_card, with_the_same_wedge
from reviewkit.shots.clubs_meant import without_clubs_meant
from reviewkit.shots.cue import Cue, bare_hit
from reviewkit.shots.echoes import without_echoes
from reviewkit.shots.others import without_others_fates
from reviewkit.shots.provisionals import without_idle_provisional, without_late_loss
from reviewkit.shots.recap import without_recap
from reviewkit.shots.recast import called, from_a_lie, from_sand, from_the_tee
from reviewkit.shots.sides_mended import without_sides_taken_back
from reviewkit.shots.taken_back import (
    without_clubs_taken_back,
    without_drops_taken_back,
    without_lengths_taken_back,
    without_places_taken_back,
    without_strokes_taken_back,
)
from reviewkit.shots.told_again import without_lengths_told_again
from reviewkit.shots.told_before import with_what_was_told
from reviewkit.shots.wishes import without_wishes

KINDS = {
    *("club", "putter", "place", "holed", "tap", "stayed_out", "putts", "updown", "putt", "strike"),
    *("reload", "drop", "again", "contact", "miss", "lie", "distance", "found"),
}
_DENIED = {"other", "past", "land", "not", "aside", "plan"}
_HARMLESS = {
    "distance": {"", "togo", "length", "flown", "bare", "said", "plan", "tried", "left", "from"},
    "strike": {"", "plan", "tried"},
    "putt": {"", "plan", "tried"},
    # "I'm going to re-tee it": so it was done.
    "reload": {"", "plan"},
    # The club meant is mostly the club used, unless another is named.
    "club": {"", "plan", "tried", "after", "with", "land"},
}
_SIDE_ALONE = re.compile(
    r"(?:on|to|down|up|over|off|along|only) (?:on )?(?:to )?the (?:left|right)"
    r"|(?:behind|beyond|past) the "
)
_ALONE = "alone"
_LEAST = 10
"""Yards or metres that are told by their number alone."""
_AT_ONCE = 2  # words from a miss to what it left
_SOON = 3
"""Utterances from a stroke to the side that it went to."""
_NEXT = 2
"""Utterances from a side by itself to the trouble that the ball found there."""
_STILL = {"distance", "miss", "putt", "lie", "again"}
"""What is told before a ball is struck."""


def cues(talk: Sequence[Utterance]) -> tuple[Cue, ...]:
    """Cues of one hole's utterances. A ball found again takes back the provisional told before it."""
    found = [
        Cue(mention, number, utterance.gap_s)
        for number, utterance in enumerate(talk)
        for mention in utterance.mentions
        if mention.kind in KINDS and _counts(mention, utterance) and not on_the_card(mention, utterance)
    ]
    found = played_as_they_lie(without_others_fates(with_the_same_wedge(found), talk), talk)
    found = list(_left_by_a_miss(with_what_was_told(_without_idle_words(found), talk)))
    found = without_places_taken_back(_without_the_land(_without_hits_of_putts(found)), talk)
    found = [cue for at, cue in enumerate(found) if not called(cue, found[:at])]
    found = [from_the_tee(from_sand(found, at), found[:at]) for at in range(len(found))]
    found = [from_a_lie(found, at) for at in range(len(found))]
    found = without_strokes_taken_back(_without_lofts(_without_lengths_for_lofts(found)), talk)
    found = without_clubs_taken_back(found, talk)
    found = without_lengths_told_again(without_clubs_meant(found), talk)
    found = without_drops_taken_back(without_lengths_taken_back(found, talk), talk)
    found = without_wishes(_without_putts_for_scores(without_recap(found)), talk)
    found = without_sides_taken_back(found, talk)
    return tuple(without_late_loss(without_idle_provisional(without_echoes(found, talk))))


def _without_idle_words(found: Sequence[Cue]) -> list[Cue]:
    """The cues without sides by themselves that say "well, then", or where it was aimed.

    "Driver. Right. Over the fence", "why's it curving? Right. Bunker." and "left edge. Tapped in." are sides.
    """
    return [cue for cue in found if cue.mention.mood != _ALONE or _is_side(cue, found)]


def _is_side(cue: Cue, found: Sequence[Cue]) -> bool:
    """Whether it stands behind a club, "low side" or "missed", or what is next is a tap, a putt that stayed
    out there ("left edge! Lipped out"), or trouble of a stroke not yet ended."""
    last = next((c for c in reversed(found) if c.mention.last < cue.mention.first), None)
    after = next((c for c in found if c.mention.first > cue.mention.last), None)
    if last is None:
        return False
    right, soon = cue.mention.text == "right", cue.utterance == last.utterance + 1
    club = (last.kind == "club" and not last.meant) or last.mention.text.endswith(" side")
    if soon and (club if right else last.kind == "stayed_out"):
        return True
    if after is None or after.utterance > cue.utterance + _NEXT:
        return False
    if after.kind in ("tap", "stayed_out"):
        return not right and after.utterance <= cue.utterance + 1
    struck = last.kind in ("club", "strike", "contact", "miss") and cue.utterance <= last.utterance + _SOON
    return struck and after.kind == "place" and after.value not in ("fairway", "green", "close")


def _without_putts_for_scores(found: list[Cue]) -> list[Cue]:
    """ "Down the hole. For an eagle!" names the score of a ball that has dropped, no putt to come."""
    done = {
        at
        for at, (cue, after) in enumerate(pairwise(found), 1)
        if cue.kind in ("holed", "tap") and after.kind == "putt" and after.mention.text.startswith("for ")
    }
    return [cue for at, cue in enumerate(found) if at not in done]


def _without_hits_of_putts(found: list[Cue]) -> list[Cue]:
    """ "Knocked it in" is no swing, "pushed it in" no side, "knocked it out" may be; nor why it missed."""
    ends = [c for c in found if c.kind == "tap" or (c.kind == "holed" and c.mention.text.endswith(" in"))]
    kept: list[Cue] = []
    for cue in found:
        dropped = any(cue.mention.overlaps(end.mention) for end in ends)
        idle = dropped if cue.kind == "miss" else bare_hit(cue) and (dropped or _why_it_missed(cue, kept))
        if not idle:
            kept.append(cue)
    return kept


def _why_it_missed(hit: Cue, before: Sequence[Cue]) -> bool:
    last = [cue for cue in before[-2:] if cue.utterance == hit.utterance]
    missed = next(
        (cue for cue in last if cue.kind == "stayed_out" and cue.mention.text.startswith("miss")), None
    )
    return missed is not None and all(
        cue.kind in ("stayed_out", "miss") for cue in last[last.index(missed) :]
    )


def _left_by_a_miss(found: list[Cue]) -> Iterator[Cue]:
    """ "Wasn't hard enough, ten feet to go": a putt's length told of the stroke that left it."""
    yield from found[:1]
    for before, cue in pairwise(found):
        missed = before.kind in ("miss", "stayed_out")
        small = cue.kind == "distance" and cue.mention.mood == "togo" and cue.mention.unit in SMALL_UNITS
        if missed and small and cue.mention.first <= before.mention.last + _AT_ONCE:
            yield replace(cue, mention=replace(cue.mention, mood="left"))
        else:
            yield cue


def _without_the_land(found: list[Cue]) -> list[Cue]:
    """ "Marsh down the right, room on the left. Driver": how the hole lies, told before any stroke."""
    first = next((at for at, cue in enumerate(found) if not _still(cue)), len(found))
    if first == len(found) or found[first].kind not in ("club", "strike", "contact"):
        return found
    return [cue for at, cue in enumerate(found) if at > first or not _of_the_land(cue)]


def _still(cue: Cue) -> bool:
    return cue.kind in _STILL or _of_the_land(cue)


def _of_the_land(cue: Cue) -> bool:
    if cue.kind == "place":
        return cue.mention.text in (
            "out of bounds",
            "ob",
            "o b",
            "is wet",
            "white stakes",
            "white posts",
            "in the middle",
        )
    return cue.kind == "miss" and _SIDE_ALONE.match(cue.mention.text) is not None


def _without_lengths_for_lofts(found: list[Cue]) -> list[Cue]:
    """ "64. 56. Half swing": of two such numbers, each by itself, the first is what was left."""
    lone = {cue.utterance for cue in found if cue.kind == "distance" and _alone(cue, found)}
    return [
        cue
        for cue in found
        if not (
            cue.kind == "club"
            and cue.value.isdigit()
            and {cue.utterance, cue.utterance + 1} <= lone
            and any(after.kind == "club" and after.utterance == cue.utterance + 1 for after in found)
        )
    ]


def _alone(length: Cue, found: Sequence[Cue]) -> bool:
    """Whether a number is all that is told in its breath, whatever it may name."""
    told = (cue for cue in found if cue.utterance == length.utterance)
    return length.mention.text.isdigit() and all(cue.mention.overlaps(length.mention) for cue in told)


def _without_lofts(found: list[Cue]) -> list[Cue]:
    """ "The 56" is a club: a number that names one is no length."""
    clubs = [cue.mention for cue in found if cue.kind == "club"]
    return [cue for cue in found if cue.kind != "distance" or not any(_names(cue, club) for club in clubs)]


def _names(length: Cue, club: Mention) -> bool:
    return club.overlaps(length.mention) and length.value in (str(club.value), str(club.value)[:1])


def _counts(mention: Mention, said: Utterance) -> bool:
    hit = mention.kind == "strike" and mention.value == "hit"
    if hit and (mention.mood or _numbers_a_stroke(mention, said)):
        return False
    if _half_a_length(mention):
        return False
    allowed = _HARMLESS.get(mention.kind)
    return mention.mood in allowed if allowed is not None else mention.mood not in _DENIED


def _numbers_a_stroke(hit: Mention, said: Utterance) -> bool:
    """ "So drop, I'm hitting three from 165, in the rough, 7 iron": which stroke it is, told before it."""
    return any(mention.kind == "count" and mention.overlaps(hit) for mention in said.mentions)


def _half_a_length(mention: Mention) -> bool:
    """ "One third at 5 to the stick": what is left of 135, for nobody tells so little without a unit."""
    togo = mention.kind == "distance" and mention.mood == "togo" and not mention.unit
    return togo and float(str(mention.value)) < _LEAST

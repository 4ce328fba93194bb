"""Cues that mean something else than their words alone, by where the ball was struck from."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from reviewkit.shots.cue import HAPPENED, LONGEST_CLUBS, Cue

_SPLASHED = re.compile(r"\b(?:splash|plop)|\bhit (?:[a-z]+ ){0,3}sand\b")
_LAIN = ("rough", "sand", "trees")
_CENTRE = ("centre cut", "center cut", "dead centre", "dead center")


def from_sand(found: Sequence[Cue], at: int) -> Cue:
    """ "In the bunker. 54. Big splash, four feet": out of sand it is a stroke, into water it is a fate; so
    is sand that was hit."""
    cue = found[at]
    if cue.kind != "place" or not _SPLASHED.search(cue.mention.text):
        return cue
    before = next((old for old in reversed(found[:at]) if old.kind == "place"), None)
    if before is None or before.value != "sand":
        return cue
    return replace(cue, mention=replace(cue.mention, kind="strike", value="bunker"))


def called(cue: Cue, before: Sequence[Cue]) -> bool:
    """ "Up, up, get out": said to a ball in the air; nobody gets out of a sand that none told of."""
    sandy = any(old.value in ("sand", "SW", "bunker") for old in before)
    return cue.kind == "strike" and cue.mention.text == "get out" and not sandy


def from_the_tee(cue: Cue, before: Sequence[Cue]) -> Cue:
    """ "Driver, centre cut": a tee shot ends in the fairway with words that a putt drops with."""
    if cue.kind != "holed" or not cue.mention.text.startswith(_CENTRE):
        return cue
    struck = next((old for old in reversed(before) if old.kind in ("club", "putter", *HAPPENED)), None)
    if struck is None or struck.kind != "club" or struck.value not in LONGEST_CLUBS:
        return cue
    return replace(cue, mention=replace(cue.mention, kind="place", value="fairway"))


def from_a_lie(found: Sequence[Cue], at: int) -> Cue:
    """ "155 left, in the rough, 7 iron, over the back": where the ball lay, told before the club."""
    cue = found[at]
    if cue.kind != "place" or cue.value not in _LAIN or not 0 < at < len(found) - 2:
        return cue
    before, club, then = found[at - 1], found[at + 1], found[at + 2]
    left = before.kind == "drop" or (
        before.kind == "distance" and before.mention.mood in ("", "togo", "from")
    )
    ended = then.kind in ("place", "holed", "miss") and then.utterance == club.utterance
    at_once = before.utterance == cue.utterance >= club.utterance - 1
    if not (left and club.kind == "club" and ended and at_once):
        return cue
    return replace(cue, mention=replace(cue.mention, kind="lie"))

"""Cues that mean something else than their words alone, by where the ball was struck from."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from reviewkit.shots.cue import HAPPENED, LONGEST_CLUBS, Cue

_SPLASHED = re.compile(r"\b(?:splash|plop)|\bhit (?:[a-z]+ ){0,3}sand\b")
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

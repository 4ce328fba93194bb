"""What is told twice of one stroke counts once."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from reviewkit.model import Utterance
from reviewkit.shots.cue import Cue, bare_hit

_WONDERED = ("how", "why")
""" "Lipped out. How's that not dropped?" is one putt."""
_BESIDE = ("miss", "lie", "distance")
"""What may be told between a place and the same once more."""
_MISSED = ("miss", "stayed_out")
_LAIN = ("sand", "rough", "trees", "fringe")
_OPENING = 2
"""Words before a place that opens its utterance, at most."""
_NEAR = 6
"""Utterances from where it lies to the same told once more; what others did may stand between."""
_SUMMED = 2
"""Utterances from the ball holed to such words."""
_STAYS = re.compile(r"still|again|another|back|same|next|lying")
_LYING = re.compile(r"\b(?:lying|lie|laying|on) (?:\d|for)\b")
"""Words that count the strokes so far."""
_BY = re.compile(r"(?:slid|slides|went|goes|gone|ran|runs|rolled|rolls|slipped|crept|by|past|just)\b")
_FELL = re.compile(
    r"\b(?:fell|falls|fallen|dropped|drops|toppled|topples|dived|dives|disappeared|curled|crept)\b"
)
_TOUCHED = re.compile(r"(?:caught|hit|found|touched|kissed|clipped|lip|rattled)")
_ANOTHER = re.compile(r"\b(?:next|2nd|3rd|then|and|so|return|back|again|another|too|also|same|one|putt)\b")


def without_echoes(found: list[Cue], talk: Sequence[Utterance]) -> list[Cue]:
    """ "I overcooked it, pulled it left of the green": one side, told twice in one breath; "it's stayed in.
    It's still in there": one ball."""
    told = [at for at, cue in enumerate(found) if not (bare_hit(cue) and _within_next(found, at))]
    echoed = {before for before, at in pairwise(told) if _echoes(found[at], found[before])}
    echoed |= {at for before, at in pairwise(told) if _still_there(found[at], found[before])}
    lasting = [at for at in told if found[at].kind not in _BESIDE]
    echoed |= {at for at in told if found[at].kind in _MISSED and _repeated(found[at].utterance, talk)}
    echoed |= {at for at in told if found[at].kind == "stayed_out" and _begun(found[at].utterance, talk)}
    told_on = ((before, at) for before, at in pairwise(lasting) if _told_on(found[at], found[before], talk))
    echoed |= {before if _sided(found, at) and not _sided(found, before) else at for before, at in told_on}
    echoed |= {at for at in told if any(_fell_in(cue, found[at]) for cue in found[at + 1 :])}
    echoed |= {at for at in told if _summed_up(found[at], found[:at])}
    return [cue for at, cue in enumerate(found) if at not in echoed]


def _summed_up(cue: Cue, before: Sequence[Cue]) -> bool:
    """ "It's in the middle. Four. Up and down, don't tell anyone": how it was played, and no stroke more."""
    soon = [c for c in before if 0 < cue.utterance - c.utterance <= _SUMMED]
    return cue.kind == "updown" and any(c.kind in ("holed", "tap") for c in soon)


def _within_next(found: list[Cue], at: int) -> bool:
    """ "Pulled it" is a stroke, and among the words of "pulled it left"."""
    return at + 1 < len(found) and found[at].mention.overlaps(found[at + 1].mention)


def _repeated(utterance: int, talk: Sequence[Utterance]) -> bool:
    """ "And I left it short. I left it short!": the same words once more, in disbelief."""
    said, before = (talk[at].text.strip(" .!,") for at in (utterance, max(0, utterance - 1)))
    return bool(utterance) and len(said.split()) > _OPENING and f" {before}".endswith(f" {said}")


def _begun(utterance: int, talk: Sequence[Utterance]) -> bool:
    """ "It's missed. It's missed on the right": the first say no more than those behind."""
    said = talk[utterance].text.strip(" .!,")
    after = talk[utterance + 1].text if utterance + 1 < len(talk) else ""
    return " " in said and after.startswith(f"{said} ")


def _still_there(cue: Cue, before: Cue) -> bool:
    soon = cue.value == before.value == "there" and cue.utterance == before.utterance + 1
    return soon and cue.mention.text.startswith("still")


def _echoes(cue: Cue, before: Cue) -> bool:
    same = (cue.kind, cue.value, cue.utterance) == (before.kind, before.value, before.utterance)
    return same and cue.kind == "miss" and before.mention.weight < min(1.0, cue.mention.weight)


def _told_on(cue: Cue, before: Cue, talk: Sequence[Utterance]) -> bool:
    """ "In the sand at the back. Down in the bunker": where it lies, told once more before it is struck;
    so too in "I'm lying four and I'm in a bunker"."""
    if cue.kind == before.kind == "stayed_out":
        if _said_again(cue, before):
            return True
        return cue.mention.text.startswith(_WONDERED) or _how_it_missed(cue, before, talk)
    same = cue.kind == before.kind == "place" and cue.value == before.value and cue.value in _LAIN
    said = talk[cue.utterance]
    opens = cue.mention.first - said.first <= _OPENING or _LYING.search(said.text)
    stays = _STAYS.search(_LYING.sub("", said.text))
    return same and bool(opens) and not stays and 0 < cue.utterance - before.utterance <= _NEAR


def _said_again(cue: Cue, before: Cue) -> bool:
    """ "I've missed it, I've missed it": the same words once more in one breath."""
    at_once = cue.mention.first - before.mention.last <= _OPENING + 1
    return at_once and cue.utterance == before.utterance and cue.mention.text == before.mention.text


def _sided(found: Sequence[Cue], at: int) -> bool:
    """ "Bunker. Left hand bunker": told with its side, it is the one that counts."""
    return any(cue.kind == "miss" and cue.mention.overlaps(found[at].mention) for cue in found)


def _how_it_missed(cue: Cue, before: Cue, talk: Sequence[Utterance]) -> bool:
    """ "Just missed. Slid by on the left": one putt, by the hole as the next breath tells at once."""
    said = talk[cue.utterance]
    opens = cue.mention.first - said.first <= 1 and not _ANOTHER.search(said.text)
    closed = talk[before.utterance].last - before.mention.last <= _OPENING
    soon = cue.utterance == before.utterance + 1
    return soon and opens and closed and _BY.match(cue.mention.text) is not None


def _fell_in(cue: Cue, before: Cue) -> bool:
    """ "It caught the left edge, thought about it and fell in": one putt, that did not stay out."""
    once = cue.utterance == before.utterance and cue.kind == "holed"
    touched = before.kind in _MISSED and _TOUCHED.match(before.mention.text) is not None
    return once and touched and _FELL.search(cue.mention.text) is not None

"""What became of a ball that found trouble, where the hole has that on one side, or of one kind, only."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from reviewkit.model import Mention, Utterance, Word
from reviewkit.shots.cue import Cue
from reviewkit.shots.steps import Step

_GONE = ("ob", "penalty", "lost")
_TANGLED = ("trees", "rough", "unplayable", "")
_BUNKER = re.compile(r"\b(?:bunkers?|traps?|sand)\b")
_AFTER = 12
"""Words behind the last that tells of the stroke, at most, that may name what it found."""
_NAMED = re.compile(r"\b(?:the|that|those|them|these|your|their|in|into) (?:[a-z]+ )?([a-z]{3,}?)s?\b")
_THINGS = re.compile(r"\b([a-z]{3,}?)s?\b")
_NO_THINGS = re.compile(
    r"left|right|side|hole|green|fairway|middle|yard|metre|foot|feet|par|driver|iron|wood|hybrid|wedge|thi|that"
    r"|there|then|they|with|from|and|the|for|one|two|three|four|five|way|all|long|short|first|front|back|hand"
    r"|rough|gras|bit|ball|shot|air|wind|end|whole|line|tee|edge|over|down|along|acro|you|have|ha|got|which"
    r"|big|next|other|time|day"
)
"""Words, without an s at their end, that name nothing that stands on one side of a hole."""


def sides(
    talk: Sequence[Utterance], cues: Sequence[Cue], steps: Sequence[Step], words: Sequence[Word]
) -> dict[int, str]:
    """Misses by the index of their step: "fence down the right", and later "over the fence"."""
    begun = next((step.draft.first for step in steps if step.draft.first < step.draft.last), 0)
    land = list(_of_the_land(talk, cues[begun:]))
    found: dict[int, str] = {}
    for index, step in enumerate(steps if land else ()):
        if step.draft.miss or not step.told:
            continue
        sandy = step.draft.result == "sand" and step.lie == "tee"
        told: set[str] = set()
        if sandy or step.draft.result in _GONE:
            until = cues[step.draft.last - 1].mention.first if step.draft.last else 0
            told = {side for side, text, at in land if (not sandy or _BUNKER.search(text)) and at < until}
        elif step.draft.result in _TANGLED and step.lie == "tee":
            named = _named(cues, step, steps[index + 1 :], words)
            told = {side for side, text, _ in land if named & set(_THINGS.findall(text))}
        if step.lie == "tee":
            told -= {"short"}
        if len(told) == 1:
            found[index] = told.pop()
    return found


def _named(cues: Sequence[Cue], step: Step, later: Sequence[Step], words: Sequence[Word]) -> set[str]:
    """Things in the words of a stroke: gum, by "there's a gum on the left. 7 wood. And there's the gums"."""
    draft = step.draft
    if draft.first == draft.last:
        return set()
    first, until = cues[draft.first].mention.first, cues[draft.last - 1].mention.last + _AFTER
    if later and later[0].draft.first < len(cues):
        until = min(until, cues[later[0].draft.first].mention.first - 1)
    said = " ".join(word.text.strip().lower() for word in words[first : until + 1])
    return {thing for thing in _NAMED.findall(said) if not _NO_THINGS.fullmatch(thing)}


def out_of_bounds(talk: Sequence[Utterance], steps: Sequence[Step]) -> list[int]:
    """Indices of steps given up for lost without a word where the only trouble told of is out of bounds."""
    places = [m for said in talk for m in said.mentions if m.kind == "place" and m.mood != "other"]
    gone = {str(m.value) for m in places} & {"ob", "lost", "penalty"}
    if gone != {"ob"}:
        return []
    return [at for at, step in enumerate(steps) if step.draft.result == "lost"]


def _of_the_land(talk: Sequence[Utterance], cues: Sequence[Cue]) -> Iterator[tuple[str, str, int]]:
    """The sides on which something lies, the words that say so, and where they stand if told by the way."""
    strokes = [cue.mention for cue in cues]
    for utterance in talk:
        for mention in utterance.mentions:
            if mention.value in ("left", "right", "short") and _is_land(mention, strokes):
                yield str(mention.value), utterance.text, -1 if mention.mood else mention.first


def _is_land(mention: Mention, strokes: Sequence[Mention]) -> bool:
    """Told of the land, or a miss of no stroke's before the first."""
    if mention.kind != "miss" or mention.mood:
        return mention.kind == "miss" and mention.mood == "land"
    return (
        bool(strokes) and mention.first < strokes[-1].first and all(mention is not told for told in strokes)
    )

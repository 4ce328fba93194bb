"""A place heard in the words of a stroke of which nothing else says where it ended.

"Position was the fairway, right half", "3 wood, at the middle, fairway to see": no rule knows the words
beside it, but the ball is somewhere, and that is the only place told behind the stroke.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from reviewkit.model import Utterance, Word
from reviewkit.shots.behind import AFTER, bare, last_word, swung
from reviewkit.shots.cue import Cue
from reviewkit.shots.steps import Step

_BEFORE = 4
"""Words before a place in which one may stand that denies it."""
_PLACES = {
    "fairway": re.compile(r"fairway"),
    "rough": re.compile(r"rough|semi"),
    "fringe": re.compile(r"fringe|collar|apron"),
}
_DENIED = re.compile(
    r"not|no|never|nor|nowhere|near|[a-z]+n't|miss(?:ed|es)?|off|across|cross|over|past|for|towards?|other|next|if|of"
    r"|between|want(?:ed)?|hop(?:e|ed|ing)|need(?:ed)?|should|would|could|might|narrow|wide|firm|dry|wet"
)
_ELSE = re.compile(
    r"bunkers?|sand|traps?|woods?|metals?|finder|is|are|runs|bends|narrows|here|idea|day|one|patch"
)


def stray_places(
    talk: Sequence[Utterance], cues: Sequence[Cue], steps: Sequence[Step], words: Sequence[Word]
) -> dict[int, str]:
    """Places by the index of their step, of strokes of which no rule found any, nor where they missed."""
    found: dict[int, str] = {}
    lost = [at for at, step in enumerate(steps) if _untold(step)]
    taken = _taken(talk) if lost else set[int]()
    for at in lost:
        draft = steps[at].draft
        until = min(last_word(cues, draft), len(words) - 1)
        told = set(_told(words, cues[draft.first].mention.last + 1, until, taken))
        if len(told) == 1:
            found[at] = told.pop()
    return found


def _untold(step: Step) -> bool:
    draft = step.draft
    return swung(draft) and not (draft.result or draft.miss or draft.close)


def _taken(talk: Sequence[Utterance]) -> set[int]:
    """The words that a rule understands as more than the name of a place, and all behind another's name."""
    taken: set[int] = set()
    for said in talk:
        for mention in said.mentions:
            if mention.kind == "who?" and mention.value == "other":
                taken.update(range(mention.first, said.mentions[-1].last + AFTER))
            elif not mention.kind.endswith("?") and mention.kind not in ("hazard", "lie"):
                taken.update(range(mention.first, mention.last + 1))
    return taken


def _told(words: Sequence[Word], first: int, until: int, taken: set[int]) -> Iterator[str]:
    spelt = {at: bare(words[at]) for at in range(first, until + 1)}
    for at, word in spelt.items():
        place = next((name for name, pattern in _PLACES.items() if pattern.fullmatch(word)), "")
        if not place or at in taken or words[at].text.rstrip().endswith("?"):
            continue
        before = [spelt[by] for by in range(max(first, at - _BEFORE), at)]
        if not any(map(_DENIED.fullmatch, before)) and not _ELSE.fullmatch(spelt.get(at + 1, "")):
            yield place

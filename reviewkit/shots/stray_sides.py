"""A side heard in the words of a stroke that found trouble, whatever was misheard around it.

"It ended up in the left room", "it's found the right and fairway bunker": no rule knows the words beside it,
but the ball is in the rough or the sand, and the only side that is told of it is where that is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model import Utterance, Word
from reviewkit.shots.behind import bare, last_word, swung
from reviewkit.shots.cue import Cue
from reviewkit.shots.drafts import Draft
from reviewkit.shots.steps import Step

_TROUBLE = ("rough", "trees", "sand", "ob", "penalty", "lost", "unplayable", "")
_LEADS = re.compile(
    r"the|dead|way|well|miles?|far|hard|fore|wide|off|away|out|over|too|little|bit|touch|slightly|safe|then|so|and"
    r"|hand|drift(?:ed|ing)|go(?:es|ing|ne)?|went|ran|run|kicked|bounced?|fell|rolled|turned|finished|ended"
    r"|that's|it's"
)
"""Words before a side of the ball. A side between two stops is one whatever stands before it."""
_FOLLOWS = re.compile(
    r"hand(?:ed)?|side|and|in|into|inside|under|behind|among(?:st)?|of|near|towards|on|over|beside|against|with"
    r"|rough|semi|bunker|trap|trees|rub|room|run|roof|route|rust|first|up|down|from|again|but|by"
)
_ELSEWHERE = re.compile(r"half|cent(?:re|er)|middle|edge|tier|wind|me|us|myself|it|them|to|for|there|here")
_SIDE = re.compile(r"(left|right)(hand(?:ed)?)?(?:side)?")
_STOP = re.compile(r"[,.!;]$")
_ASKED = "?"


def stray_sides(
    talk: Sequence[Utterance], cues: Sequence[Cue], steps: Sequence[Step], words: Sequence[Word]
) -> dict[int, str]:
    """Sides by the index of their step, of strokes into trouble of which no rule found any."""
    found: dict[int, str] = {}
    troubled = [at for at, step in enumerate(steps) if _troubled(step.draft)]
    known = _spoken_for(talk) if troubled else set[int]()
    for at in troubled:
        draft = steps[at].draft
        # "Ended up in the left room. 150": the stroke before the next one's own words.
        until = last_word(cues, draft) + 1
        sides = _sides(words, cues[draft.first].mention.first, until, known)
        if len(sides) == 1:
            found[at] = sides.pop()
    return found


def _troubled(draft: Draft) -> bool:
    return swung(draft) and not draft.miss and draft.result in _TROUBLE


def _spoken_for(talk: Sequence[Utterance]) -> set[int]:
    """The words that a rule understands, as something else than a side of the ball."""
    told = [mention for said in talk for mention in said.mentions]
    return {at for mention in told for at in range(mention.first, mention.last + 1)}


def _sides(words: Sequence[Word], first: int, until: int, known: set[int]) -> set[str]:
    near = words[max(0, first - 1) : until + 1]
    texts, spelt = [word.text for word in near], [bare(word) for word in near]
    inner = range(min(1, first), len(spelt) - 1)
    return {
        side[1]
        for at in inner
        if (side := _SIDE.fullmatch(spelt[at]))
        and first - min(1, first) + at not in known
        and _of_the_ball(texts, spelt, at)
    }


def _of_the_ball(texts: Sequence[str], spelt: Sequence[str], at: int) -> bool:
    """Whether a side at `at` tells where a ball went, not what is left, nor that something is right."""
    before, after = spelt[at - 1] if at else "", spelt[at + 1]
    if texts[at].endswith(_ASKED) or _ELSEWHERE.fullmatch(after):
        return False
    stopped = _STOP.search(texts[at]) is not None or spelt[at] not in ("left", "right")
    if at and _STOP.search(texts[at - 1]) and stopped:
        return True
    told = stopped or before == "the" or _FOLLOWS.fullmatch(after)
    return bool(told and _LEADS.fullmatch(before))

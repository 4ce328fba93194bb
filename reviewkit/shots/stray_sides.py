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
_CORRECT = re.compile(  # as in the rule "what is right and no side", whose words leave no mention
    r"answer|things?|club|time|idea|shot|choice|numbers?|decision|call|play|yardage|distance|words?|speed|pace|weight"
)
_IS = ("it's", "that's", "and", "then", "so")
_AMID = re.compile(r"in(?:to|side)?|under|behind|among(?:st)?|against|near|beside|on|over")
_WENT = ("went", "ran", "run", "rolled", "it's", "fell")
_MEANT = {("says", "go"), ("said", "go"), ("to", "go"), ("me", "go"), ("i'm", "going")}
""" "She says go left, I'm going left": where it is to be hit."""
_SIDE = re.compile(r"(left|right)(hand(?:ed)?)?(?:side)?")
_PAST = re.compile(
    r"by|past|wide|miss(?:ed|es|ing)?|burn(?:ed|s|t|ing)?|catch(?:es|ing)?|caught|clip(?:s|ped|ping)?|graz(?:ed|es|ing)"
    r"|shav(?:ed|es|ing)|kiss(?:ed|es|ing)?|lip(?:s|ped)?|rimm?(?:s|ed)?|brush(?:ed|es)"
)
"""What a putt does at the hole that does not go in."""
_PAST_WITHIN = 4
_SOON = 8
"""Words behind the last stroke told of, at most, that tell how the putt went."""
_ALONG = {"short": "short", "shy": "short", "past": "long", "by": "long", "beyond": "long"}
"""Last words of a clause that tell how far a missed putt went: "stopped the beer coaster short"."""
_NOT_SO = re.compile(r"not?|never|[a-z]+n't|to|get|be|don't|too|is|the|a")
_ON_A = ("the", "a", "i'm", "that", "it", "on", "its", "by", "just")
_ASIDE = re.compile(r"at|on|now|then|there|side|up|away|down|back|through|across|over|off")
_STOP = re.compile(r"[,.!;]$")
_ASKED = "?"


def stray_sides(
    talk: Sequence[Utterance], cues: Sequence[Cue], steps: Sequence[Step], words: Sequence[Word]
) -> dict[int, str]:
    """Sides by the index of their step, of strokes into trouble of which no rule found any."""
    found: dict[int, str] = {}
    troubled = [at for at, step in enumerate(steps) if _troubled(step.draft)]
    putted = [at for at in range(1, len(steps) - 1) if _stayed_out(steps, at)]
    known = _spoken_for(talk) if troubled or putted else set[int]()
    for at in putted:
        if side := _by_the_hole(cues, steps, at, words[: talk[-1].last + 2], known):
            found[at] = side
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


def _stayed_out(steps: Sequence[Step], at: int) -> bool:
    """A putt of which no side is known, and not the second of which nothing at all is told."""
    draft, before = steps[at].draft, steps[at - 1].draft
    putt = draft.shape == "putt" and draft.result != "holed" and not draft.miss
    return putt and (draft.first < draft.last or before.first < before.last)


def _by_the_hole(
    cues: Sequence[Cue], steps: Sequence[Step], at: int, words: Sequence[Word], known: set[int]
) -> str:
    """ "It slipped by the left neck": a putt that went by on a side, of whatever that is of."""
    told = [step.draft for step in steps if step.draft.first < step.draft.last]
    before = [draft for draft in told if draft.last <= steps[at].draft.first]
    behind = [draft for draft in told if draft.first >= max(steps[at].draft.last, 1)]
    if not before:
        return ""
    first = cues[before[-1].last - 1].mention.last + 1
    until = cues[behind[0].first].mention.first if behind else first + _SOON
    near = range(first, min(until, len(words) - 1))
    said = [at for at in near if at not in known and bare(words[at]) in ("left", "right")]
    sides = {bare(words[at]) for at in said if _gone_by(words, at)}
    if not (sides or steps[at].draft.putts):
        sides = {_ALONG[bare(words[by])] for by in near if by not in known and _so_far(words, by)}
    return sides.pop() if len(sides) == 1 else ""


def _so_far(words: Sequence[Word], at: int) -> bool:
    """ "It wasn't by short.", where five was said: what a clause ends with."""
    ends = bare(words[at]) in _ALONG and _STOP.search(words[at].text.strip()) is not None
    return ends and at > 0 and not _NOT_SO.fullmatch(bare(words[at - 1]))


def _gone_by(words: Sequence[Word], at: int) -> bool:
    lead = [bare(word) for word in words[max(0, at - _PAST_WITHIN) : at]]
    past = any(_PAST.fullmatch(word) for word in lead)
    after = bare(words[at + 1])
    if lead[-2:] in (["high", "side"], ["low", "side"]) or _between_stops(words, at):
        # "Stayed up on the high side, left bobe 4", "At least put it. Left, I told you".
        return True
    return past and lead[-1] in _ON_A and not _ELSEWHERE.fullmatch(after) and not _ASIDE.fullmatch(after)


def _between_stops(words: Sequence[Word], at: int) -> bool:
    return all(_STOP.search(words[by].text.strip()) for by in (at - 1, at))


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
    if spelt[at] == "right" and _no_side(before, after):
        return False
    if texts[at].endswith(_ASKED) or _ELSEWHERE.fullmatch(after):
        return False
    if at > 1 and (spelt[at - 2], before) in _MEANT:
        return False
    stopped = _STOP.search(texts[at]) is not None or spelt[at] not in ("left", "right")
    if at and _STOP.search(texts[at - 1]) and stopped:
        return True
    told = stopped or before == "the" or _FOLLOWS.fullmatch(after)
    return bool(told and _LEADS.fullmatch(before))


def _no_side(before: str, after: str) -> bool:
    """ "The right answer", "in the gorse, it's right inside it", "it ran right up into the bunker"."""
    amid = before in _IS and _AMID.fullmatch(after)
    return bool(_CORRECT.fullmatch(after) or amid or (before in _WENT and after in ("up", "down")))

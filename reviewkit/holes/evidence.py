"""What each utterance says for or against a hole beginning with it, in natural log odds.

Weights are common sense put in numbers and checked on invented rounds; no source.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from reviewkit.holes.chat import LONGEST, PLANS, amid, asides, begun, idle, settles, small_talk
from reviewkit.holes.contents import TOLD_OF_IT, Array, Contents
from reviewkit.holes.named import APART_S, COUNTS_HOLES, Names
from reviewkit.holes.outline import OPENING, Outline, outline
from reviewkit.holes.signs import (
    ENDED,
    HOLED,
    plain,
    plain_of,
    slight,
    tee,
    tells_length,
    tells_par,
    turns,
    turns_away,
    under_way,
)
from reviewkit.holes.told_first import told_first
from reviewkit.model import Mention, Talk
from reviewkit.model.values import MAX_HOLE

LOOK_AHEAD = 4
"""Utterances at a hole's start in which its number, par and length are looked for."""
_NEARNESS = (1.0, 0.85, 0.65, 0.5)
_LATE = 0.65
"""Nearness of a hole's number told as an afterthought: "the fifth, I should have said"."""
_PAUSE_S = 0.55
"""Speakers and editors leave more than this between two holes; within one, mostly less."""
_SHORT_PAUSES = ((0.1, -3.0), (0.3, -2.3), (0.5, -1.8), (0.6, -0.4), (0.75, 0.8))
_PAUSES = (*_SHORT_PAUSES, (1.0, 1.5), (2.0, 2.1), (math.inf, 1.8))
"""(silence shorter than this in seconds, log odds of a new hole): the longest is often a wait for a ball."""
_LEAST_S, _LONG_S, _SURELY = 0.75, 2.0, 1.5
"""The least pause between two holes, a long one, and the weight of a number that announces a hole."""
_USUAL = 0.2
"""For a pause as they are before what announces a hole, at most: a ball rolls as long. Another kind is more
against it."""
_BEGUN = 1.4
"""Against a start behind small talk that stands behind a pause itself."""
_SETTLED = 0.7
"""Against a start with talk that settles the score of the hole before, or stands for itself."""
_MOST_TURN = 1.8
"""Weight of several words for going on to the next hole."""
_LAST = 1.0
"""For "last one for us", which tells no number; of a round of which nothing is told yet, it is another's."""
_NAMED, _NOT_NAMED = 1.8, 0.5
"""For the hole that is named, and against all, by the weight of the words."""
_NAMES_IT = 2.0
"""Words for a hole that weigh so much announce it."""
_SCORES = {*TOLD_OF_IT, "running", "hole_to_par", "total", "to_play"}
_STILL_ENDING = {"score_word", *HOLED}
_SUMS_UP = re.compile(r"(?:on|at) this (?:one|1|hole)|in (?:the (?:last|next) )?[2-9] holes")
"""A score told beforehand, the hole after it: "three putts on this one. The long version...", or needed."""


@dataclass(frozen=True)
class Evidence:
    """Evidence over one round's talk; everything is computed once, in time linear in the talk."""

    talk: Talk

    @cached_property
    def contents(self) -> Contents:
        """What any stretch of the talk tells of one hole."""
        return Contents(self.talk, self.told_first)

    @cached_property
    def pauses_tell(self) -> bool:
        """False for timed text whose cues touch: its silences say nothing."""
        long = sum(utterance.gap_s >= _PAUSE_S for utterance in self.talk[1:])
        return long >= max(3, len(self.talk) // 60)

    @cached_property
    def opening(self) -> tuple[float, ...]:
        """Log odds that a hole, whichever, begins at each utterance."""
        return tuple(self._opening(at) for at in range(len(self.talk)))

    def _opening(self, at: int) -> float:
        utterance = self.talk[at]
        score = (self._pause(utterance.gap_s) if at else 0.0) - 1.2
        turned = turns(utterance) + (turns_away(self.talk[at - 1]) if at else []) + self._turns_on(at)
        score += min(_MOST_TURN, sum(m.weight for m in turned))
        last = any(plain(m, "hole") and m.value == "last" for m in utterance.mentions)
        score += _LAST * (last and self._ended[at] > 0)
        announced = bool(turned) or any(m.kind in ("hole", "par") and not m.mood for m in utterance.mentions)
        # "Next is the short one, 126 to the flag": what is left is the hole's length.
        score -= 1.2 * any(
            under_way(m) and not (announced and m.kind == "distance") for m in utterance.mentions
        )
        first = at in self.told_first
        # Nobody looks for a ball or putts on a tee.
        score -= 1.5 * (not first and amid(self.talk, at))
        for near, place in zip(_NEARNESS, self._ahead[at], strict=False):
            ahead = self.talk[place]
            if place > self._chat[at] and ahead.gap_s >= 2 * _PAUSE_S and self.pauses_tell:
                break
            if self._asides[place] <= at < place:
                break
            score += 1.0 * near * tells_par(ahead)
            score += 0.9 * near * tells_length(self.talk, place)
            score += 0.8 * near * any(tee(m) for m in ahead.mentions)
        score -= _SETTLED * (self.pauses_tell and not first and settles(self.talk, at))
        score -= _SETTLED * (at in self._asides[at + 1 : at + 1 + LONGEST])
        score -= _BEGUN * (self.pauses_tell and begun(self.talk, at, self._asides[at], self._ended))
        return score + self.closing(at) + self.told_first.get(at, -self.still_ending(at))

    def _turns_on(self, at: int) -> list[Mention]:
        """Words for going on behind a mere breath of talk: "Righto. Next one"."""
        if not slight(self.talk[at]) or at + 1 == len(self.talk) or self.talk[at + 1].gap_s >= _PAUSE_S:
            return []
        return turns(self.talk[at + 1])

    def still_ending(self, at: int) -> float:
        """ "Clink. Bogey. Next is the short one": a hole does not begin with the end of the one before."""
        near = [self.talk[place] for place in self._ahead[at][:2]]
        if turns(near[0]) or any(plain(m, "hole") for m in near[0].mentions):
            return 0.0
        ends = [
            any(plain_of(m, _STILL_ENDING) for m in said.mentions) and not _SUMS_UP.search(said.text)
            for said in near
        ]
        return 1.0 if ends[0] else 0.7 if any(ends) else 0.0

    @cached_property
    def _ahead(self) -> list[list[int]]:
        """For each utterance those from it on; "no, sorry," torn off by commas is passed over."""
        telling = [not slight(utterance) for utterance in self.talk]
        starts = (max(at + 1, chat) for at, chat in enumerate(self._chat))
        ends = (min(len(self.talk), at + 2 * LOOK_AHEAD) for at in range(len(self.talk)))
        spans = map(range, starts, ends)
        return [[at, *(by for by in span if telling[by])] for at, span in enumerate(spans)]

    @cached_property
    def _ended(self) -> tuple[float, ...]:
        """Balls holed and scores told before each utterance."""
        return tuple(map(sum, zip(self.contents.counts["over"], self.contents.counts["score"], strict=True)))

    @cached_property
    def _names(self) -> Names:
        return Names(self.talk, self.pauses_tell, self._ahead, self.told_first)

    @cached_property
    def told_first(self) -> dict[int, float]:
        """Utterances that open a hole with its score -> log odds."""
        return told_first(self.talk) if self.pauses_tell else {}

    @cached_property
    def _chat(self) -> tuple[int, ...]:
        """For each utterance the one up to which small talk reaches from it."""
        if not self.pauses_tell:
            return tuple(range(len(self.talk)))
        return small_talk(self.talk, self._ended)

    @cached_property
    def _asides(self) -> tuple[int, ...]:
        """For each utterance the first of the small talk before it that is no part of what it begins."""
        if not self.pauses_tell:
            return tuple(range(len(self.talk)))
        return asides(self.talk, self._ended)

    def _pause(self, gap_s: float) -> float:
        if not self.pauses_tell:
            return 0.0
        short, long = self._own_pauses
        own = 0.0 if gap_s < _LEAST_S else long if gap_s >= _LONG_S else short
        return own + next(odds for longest, odds in _PAUSES if gap_s < longest)

    @cached_property
    def _own_pauses(self) -> tuple[float, float]:
        """Log odds for short and for long pauses by those before what announces a hole in this round.

        One leaves a second between two holes and three while a ball rolls, another three between two holes.
        """
        gaps = [said.gap_s for at, said in enumerate(self.talk) if at and self._announces(at)]
        told = [gap_s >= _LONG_S for gap_s in gaps if gap_s >= _LEAST_S]
        long = (sum(told) + 1) / (len(told) + 2)
        return min(_USUAL, math.log(2 * (1 - long))), min(_USUAL, math.log(2 * long))

    def _announces(self, at: int) -> bool:
        said = self.talk[at]
        numbered = any(
            plain(m, "hole") and isinstance(m.value, int) and m.weight >= _SURELY for m in said.mentions
        )
        return numbered or tells_par(said) or tells_length(self.talk, at)

    def closing(self, at: int) -> float:
        """Before a new hole the ball went in, or a score was told."""
        end = self._asides[at]
        before = [m for utterance in self.talk[max(0, end - 3) : end] for m in utterance.mentions]
        before = [m for m in before if not m.kind.endswith("?")]
        if not before:
            return 0.0
        over = any(m.kind in ENDED or m.kind in _SCORES for m in before if m.mood in ("", "not"))
        return 0.8 if over else -0.8

    @cached_property
    def number(self) -> tuple[tuple[float, ...], ...]:
        """`number[at][n]`: log odds that utterance `at` opens hole n, from hole numbers near it."""
        return tuple(self._number(at) for at in range(len(self.talk)))

    def _number(self, at: int) -> tuple[float, ...]:
        against, odds = 0.0, [0.0] * (MAX_HOLE + 1)
        # Behind its score a hole is named after another breath.
        apart_s = 2 * _PAUSE_S if at in self.told_first else APART_S
        for step, place in enumerate(self._ahead[at]):
            ahead = self.talk[place]
            told = _NEARNESS[step] if step < len(_NEARNESS) else 0.0
            paused = place > self._chat[at] and ahead.gap_s >= apart_s and self.pauses_tell
            near = told * 0.4 if paused else told
            for mention in ahead.mentions:
                if self._names.late(place, mention):
                    near = max(near, _LATE)
                if near and self._names.named(place, mention):
                    against += _NOT_NAMED * near * mention.weight
                    number = int(mention.value or 0)
                    if 0 <= number <= MAX_HOLE:
                        odds[number] += _NAMED * near * mention.weight
        return tuple(odd - against for odd in odds)

    @cached_property
    def announced(self) -> bool:
        """The very first utterance names one hole, and tells nothing of the round's plan.

        "So I'm standing on the first tee. Par's 72. Number one, par 4" announces it where its par is told.
        """
        first = self.talk[0].mentions
        named = {m.value for m in first if plain(m, "hole") and m.weight >= _NAMES_IT}
        if len(named) != 1 or any(m.kind in PLANS for m in first):
            return False
        return not any(
            tells_par(said) and any(plain(m, "hole") and m.value in named for m in said.mentions)
            for at, said in enumerate(self.talk[1:OPENING], 1)
            if not self.contents.counts["swung"][at]
        )

    @cached_property
    def inside(self) -> Array:
        """`inside[n, at]`: log odds of the numbers said before utterance `at` if hole n is told."""
        said = np.zeros((len(self.talk) + 1, MAX_HOLE + 1))
        for at, utterance in enumerate(self.talk, 1):
            for m in utterance.mentions:
                if m.kind in COUNTS_HOLES:
                    said[at] += self._names.tells(at - 1, m, self.outline.ends)
        return said.cumsum(axis=0).T

    @cached_property
    def outline(self) -> Outline:
        return outline(self.talk)

    def ends(self, at: int, which: str, until: int = 0) -> float:
        """Weight of "first", "last" or "shotgun" told from utterance `at` on, near it or before `until`."""
        ahead = self.talk[at : max(at + LOOK_AHEAD, until)]
        told = [m.weight for u in ahead for m in u.mentions if m.kind == "hole" and m.value == which]
        return max(told, default=0.0)

    @cached_property
    def measured(self) -> int:
        """The first utterance that tells a hole's length; the end of the talk where none does."""
        return next((at for at in range(len(self.talk)) if tells_length(self.talk, at)), len(self.talk))

    @cached_property
    def idle(self) -> tuple[int, ...]:
        """Utterances from each one to the first that tells of a hole."""
        return idle(self.talk)

    def parted(self, at: int) -> bool:
        """Whether a pause lies between utterance `at` and the first from it on that tells of a hole."""
        told = at + self.idle[at]
        return self.pauses_tell and at < told < len(self.talk) and self.talk[told].gap_s >= APART_S

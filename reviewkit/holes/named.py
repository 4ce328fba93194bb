"""Whether a number that may be a hole's is one: small numbers are as often scores, lengths and clubs."""

from __future__ import annotations

import math
import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from reviewkit.holes.chat import plays
from reviewkit.holes.outline import OPENING
from reviewkit.holes.signs import ENDED, fits, of_hole, plain
from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import MAX_HOLE, SMALL_UNITS

APART_S = 0.7
"""What is told behind such a silence does not go on with what was told before."""
_BREATH_S, _LONG_PAUSE_S = 0.3, 0.9
_IN = ("done?", "holed")
"""Words of a ball that goes in: "nudged that one in"."""
_LATELY = 4
"""Mentions at the end of the utterance before."""
_BARE = re.compile(r"(?:so |and )?\d+(?: now| then)?")
"""A hole's number with no other word for a hole."""
_NUMERAL = re.compile(r"(?:so |and )?\d(?: |$)")
"""A small number with what is said of it."""
_OF_THE_ROUND = {"stretch", "planned"}
"""What names holes that the round has: "you go 7 up to 12"."""
_TENS, _SOON = "teen", 3
"""Unit of a hole's number heard as tens, and utterances in which the hole's par is looked for."""
COUNTS_HOLES = {"hole", "played", "to_play", "about_hole"}
"""Kinds of mention whose number tells which hole is played."""
_NOTHING = (0.0,) * (MAX_HOLE + 1)
_A_SCORE_TOO = 9
"""A number alone up to this is a score or a club more often than a hole."""
_SCORE = {"score_word", "strokes", "hole_to_par"}
_AGAIN, _ON = 2, 2
"""Utterances in which a score is told again, and words from a score to the hole that it was made on."""


@dataclass(frozen=True)
class Names:
    """The talk's numbers of holes. `ahead` holds for each utterance those from it on that tell something.

    `told_first` are utterances that open a hole with its score.
    """

    talk: Talk
    pauses_tell: bool
    ahead: Sequence[Sequence[int]]
    told_first: Collection[int] = ()

    def tells(self, at: int, mention: Mention, ends: Collection[int]) -> tuple[float, ...]:
        """Log odds, by a mention, of the talk around utterance `at` being of hole 0, 1, ... 18."""
        if self.named(at, mention):
            return _each(mention, 0.25 * mention.weight, -0.35 * mention.weight)
        if not isinstance(mention.value, int) or mention.mood or mention.kind == "hole":
            return _NOTHING
        if mention.kind != "about_hole":
            return tuple(0.7 if fits(mention, number, ends) else -0.5 for number in range(MAX_HOLE + 1))
        if not self._made_on(at, mention):
            return _NOTHING
        if self._goes_in(at, mention):
            return _each(mention, 1.0, -1.0)
        # Told on that hole, or on the tee behind it.
        return _each(mention, 0.5, -0.3, behind=0.2)

    def late(self, at: int, mention: Mention) -> bool:
        """Whether a hole's number is an afterthought: "This is the fifth. I should have said." """
        behind = (m for said in self.talk[at + 1 : at + 2] for m in said.mentions)
        return mention.unit == "late" or (mention.kind == "hole" and any(m.kind == "late?" for m in behind))

    def _made_on(self, at: int, mention: Mention) -> bool:
        """ "A 7, on the 8th": a score, and right behind it the hole that it was made on."""
        scores = (m for m in self.talk[at].mentions if m.kind in _SCORE and not m.mood)
        return any(0 <= mention.first - m.last <= _ON for m in scores)

    def named(self, at: int, mention: Mention) -> bool:
        """Whether a mention gives a hole's number; "In. Four." in one breath is the score.

        "The tenth, then, which is our first" counts the holes played.
        """
        utterance = self.talk[at]
        told = not mention.mood or (mention.mood == "paused" and self._behind_a_pause(utterance))
        if mention.kind != "hole" or not isinstance(mention.value, int) or not told:
            return False
        if self._told_behind(at, mention) or (mention.unit == _TENS and not self._a_hole_follows(at)):
            return False
        if any(m.kind in _OF_THE_ROUND and m.overlaps(mention) for m in utterance.mentions):
            return False
        if at not in self.told_first and self._closes(at, mention):
            return False
        if self._planned(at, mention) or f"our {mention.text.removeprefix('our ')}" in utterance.text:
            return False
        bare = _BARE.fullmatch(_words(mention))
        if bare and (self._counts_else(at, mention) or self._goes_on(at, mention)):
            return False
        if not at or utterance.gap_s >= _BREATH_S:
            return True
        scored = any(m.kind == "strokes" and m.first == mention.first for m in utterance.mentions)
        return not (scored and any(m.kind in ENDED for m in self.talk[at - 1].mentions))

    def _goes_in(self, at: int, mention: Mention) -> bool:
        """Whether a hole is named as the ball goes in: "knock it in, bogey on 12"."""
        before = [m for m in self.talk[at].mentions if m.first < mention.first]
        if self.talk[at].gap_s < APART_S:
            before += self.talk[at - 1].mentions[-_LATELY:] if at else ()
        return any((m.kind in ENDED and not m.mood) or (m.kind, m.value) == _IN for m in before)

    def _closes(self, at: int, mention: Mention) -> bool:
        """ "Brushed it in, a three at seventeen and on we go": the hole is over, not begun."""
        about = (m for m in self.talk[at].mentions if m.kind == "about_hole" and m.overlaps(mention))
        return any(not m.mood and self._made_on(at, m) and self._goes_in(at, m) for m in about)

    def _planned(self, at: int, mention: Mention) -> bool:
        """ "We're starting on ten, I'd like a 40. | Ten, then, 360": where the round begins, told before."""
        if not any(m.kind == "opener" and m.overlaps(mention) for m in self.talk[at].mentions):
            return False
        for said in self.talk[at + 1 : at + 1 + OPENING]:
            if any(plain(m, "hole") and m.value == mention.value for m in said.mentions):
                return True
            if self._told_apart(at, said):
                return True
            if plays(said):
                return False
        return False

    def _told_apart(self, at: int, said: Utterance) -> bool:
        """ "They sent us out to the fourteenth. I'm old. | Our first one is 372 metres": begun there."""
        if not self.pauses_tell or said.gap_s < APART_S:
            return False
        return any(map(_measures, said.mentions)) and not any(map(_measures, self.talk[at].mentions))

    def _told_behind(self, at: int, mention: Mention) -> bool:
        """Whether a small number goes on behind a hole's length: "168, par 3. 8's a max" is a club."""
        if not (at and _small(mention) and _NUMERAL.match(_words(mention))) or self.talk[at].gap_s >= APART_S:
            return False
        return any(of_hole(m) for m in self.talk[at - 1].mentions)

    def _counts_else(self, at: int, mention: Mention) -> bool:
        """Whether a number alone says a length again ("7 feet short. 7!") or counts points ("18 now")."""
        if at in self.told_first or self._told_again(at, mention):
            return True
        heard = list(self.talk[at].mentions)
        if at and self.talk[at].gap_s < _BREATH_S:
            heard += self.talk[at - 1].mentions
        lengths = {m.value for m in heard if m.kind == "distance" and m.unit in SMALL_UNITS}
        return mention.value in lengths or any(m.kind == "points?" for m in heard)

    def _told_again(self, at: int, mention: Mention) -> bool:
        """ "7. There's no nice way of saying it. A 7": a score; "5 is 431, and I've made 5" is a hole."""
        near = [m for said in self.talk[at : at + 1 + _AGAIN] for m in said.mentions]
        hole = min((m.first for m in near if plain(m, "par") or of_hole(m)), default=math.inf)
        again = (m for m in near if plain(m, "strokes") and m.value == mention.value)
        return any(mention.last < m.first < hole for m in again)

    def _goes_on(self, at: int, mention: Mention) -> bool:
        """Whether a small number alone goes on with the talk, and no par or length of a hole follows.

        "Look at that. Four." is a score, "148. So eight. No, seven." a club; "Four. Par five." a hole. What
        follows behind a pause is of another hole: "Four. | 561, all of it uphill".
        """
        if not (at and _small(mention) and self.pauses_tell) or self.talk[at].gap_s >= APART_S:
            return False
        return not self._a_hole_follows(at, at_once=True)

    def _a_hole_follows(self, at: int, at_once: bool = False) -> bool:
        """Whether a par or a hole's length is told there or soon after: "This is 80. Last one. 405"."""
        for place in self.ahead[at][:_SOON]:
            if at_once and place > at and self.talk[place].gap_s >= APART_S:
                return False
            if any(map(_measures, self.talk[place].mentions)):
                return True
        return False

    def _behind_a_pause(self, utterance: Utterance) -> bool:
        return self.pauses_tell and utterance.gap_s >= _LONG_PAUSE_S


def _each(mention: Mention, on_it: float, else_: float, behind: float | None = None) -> tuple[float, ...]:
    """Odds for each hole by whether it is the one mentioned, the one behind that, or another."""
    odds = [else_] * (MAX_HOLE + 1)
    named = int(mention.value or 0)
    if behind is not None and named + 1 <= MAX_HOLE:
        odds[named + 1] = behind
    if 0 <= named <= MAX_HOLE:
        odds[named] = on_it
    return tuple(odds)


def _words(mention: Mention) -> str:
    """What was said without its commas: "so, 7"."""
    return " ".join(mention.text.replace(",", " ").split())


def _measures(mention: Mention) -> bool:
    return plain(mention, "par") or of_hole(mention)


def _small(mention: Mention) -> bool:
    return isinstance(mention.value, int) and mention.value <= _A_SCORE_TOO

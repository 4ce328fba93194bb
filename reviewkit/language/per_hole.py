"""Two standings in one breath: "plus one, plus six with one to play" is the hole's, then the round's."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from reviewkit.language.tokens import Sentence
from reviewkit.model import Mention

_SIGNED = "plus or minus so many"
"""The rule for standings told with a sign, which name a hole's score as readily."""
_MOST = 4
"""A larger figure is a round's."""
_WITHIN = 22
"""Words from the hole's figure to the round's."""
_JUMP, _HABIT_JUMP = 4, 2
"""A figure so far below the standing told last is the hole's; less will do for a speaker with the habit."""
_HABIT = 2
"""Such pairs, or figures said to be of the hole, that make a habit."""
_NO_HOLE = (
    "from",
    "was",
    "were",
    "at",
    "to",
    "of",
    "went",
    "stood",
    "still",
    "back",
    "now",
    "i'm",
    "i",
    "we're",
)
"""Words before a figure that is a standing: "from plus 3 to plus 5", "I was plus 2"."""
_WEIGHT = 0.9


def with_scores_of_holes(found: Sequence[Mention], said: Sequence[Sentence]) -> list[Mention]:
    """The claims, those standings that can only be a hole's own score made so."""
    words = {token.first: token.text for sentence in said for token in sentence.tokens}
    pairs = {id(one) for one, two in pairwise(_told(found)) if _pair(one, two, words)}
    habit = len(pairs) + sum(claim.kind == "hole_to_par" and _signed(claim) for claim in found) >= _HABIT
    return list(_settled(found, pairs, habit, words))


def _settled(
    found: Sequence[Mention], pairs: set[int], habit: bool, words: Mapping[int, str]
) -> Iterator[Mention]:
    last: float | None = None
    for claim in found:
        own = id(claim) in pairs or (
            last is not None
            and _small(claim)
            and not claim.mood
            and _alone(claim, words)
            and last - float(claim.value or 0) >= (_HABIT_JUMP if habit else _JUMP)
        )
        if own:
            yield replace(claim, kind="hole_to_par", weight=_WEIGHT)
            continue
        if claim.kind == "running" and not claim.mood:
            last = float(claim.value or 0)
        yield claim


def _told(found: Sequence[Mention]) -> list[Mention]:
    """Standings, and the scores that part those of two holes: "bogey, plus 3. Birdie, plus 2"."""
    kinds = ("running", "score_word", "strokes")
    return [claim for claim in found if claim.kind in kinds and claim.mood in ("", "plan")]


def _pair(one: Mention, two: Mention, words: Mapping[int, str]) -> bool:
    """Whether two figures told one behind the other are a hole's and the round's."""
    near = two.kind == "running" and two.first - one.last <= _WITHIN
    return near and not one.mood and _small(one) and one.value != two.value and _alone(one, words)


def _small(claim: Mention) -> bool:
    return claim.kind == "running" and claim.rule == _SIGNED and abs(float(claim.value or 0)) <= _MOST


def _signed(claim: Mention) -> bool:
    return claim.text.startswith(("plus", "minus"))


def _alone(claim: Mention, words: Mapping[int, str]) -> bool:
    """Whether no word right before it makes a standing of it."""
    return words.get(claim.first - 1, "") not in _NO_HOLE

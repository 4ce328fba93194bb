"""Holes told by their result first: "Bogey. And here's what it was made of: driver, 371 off the yellows".

Most players tell a hole's score once the ball is in, and then pause. Some pause, tell the score and then how
it came about; where a round is told so, a score behind a pause is how a hole begins.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from reviewkit.holes.signs import plain_of
from reviewkit.model import Mention, Talk, Utterance

_PAUSE_S = 0.9
"""Silence that parts two stretches of talk; common sense."""
_SOON = 3
"""Utterances at either end of a stretch in which a score is looked for."""
_PLAIN, _HEARD, _UNHEARD = 2.0, 1.5, 0.8
"""For a start with a score, with a number that may be one, and with neither, where the round is told so."""
_LEAST = 3
"""Scores told first by which the manner shows."""
_SCORE = {"score_word", "strokes"}
_SETTLES = {*_SCORE, "running", "hole_to_par", "total", "points", "holed", "tap", "putts"}
_PLAYED = {"club", "place", "strike", "holed", "tap", "miss"}
_LONE = "a number by itself"
"""The rule for a number that nothing is said beside: a hole's as often as a score."""


def told_first(talk: Talk) -> dict[int, float]:
    """Utterances behind a pause that open a hole with its score, or would had that been heard -> log odds.

    Empty where most scores are told last: "In. Bogey. | Fourth, par 4": the bar is a pause.
    """
    opens, plainly, last, before = {}, 0, 0, 0
    for begin, end in _stretches(talk):
        score = _score(talk, begin, end)
        plain = score is not None and score.rule != _LONE
        settled = _tells(talk[max(before, begin - _SOON) : begin], _SETTLES)
        settled |= plain and not _tells(talk[:begin], _PLAYED)
        if settled and _tells(talk[begin:end], _PLAYED):
            opens[begin] = _PLAIN if plain else _HEARD if score is not None else _UNHEARD
            plainly += plain
        if score is None:
            last += _tells(talk[max(begin, end - _SOON) : end], _SCORE)
        before = begin
    return opens if plainly >= max(_LEAST, last + 1) else {}


def _stretches(talk: Talk) -> Iterator[tuple[int, int]]:
    """First utterances of what is told in one go, and the ones behind it."""
    begins = [at for at, said in enumerate(talk) if not at or said.gap_s >= _PAUSE_S]
    return pairwise([*begins, len(talk)])


def _score(talk: Talk, begin: int, end: int) -> Mention | None:
    """A score told in the first words of a stretch, before any stroke, that a stroke follows."""
    for at in range(begin, min(end, begin + _SOON)):
        score = next((m for m in talk[at].mentions if _scores(m)), None)
        played = next((m for m in talk[at].mentions if plain_of(m, _PLAYED)), None)
        if score is not None and (played is None or score.first <= played.first):
            later = (m for said in talk[at:end] for m in said.mentions if m.first > score.last)
            return score if any(plain_of(m, _PLAYED) for m in later) else None
        if played is not None:
            return None
    return None


def _scores(mention: Mention) -> bool:
    """Whether a mention may be the score: "Two! Did you hear that?" too."""
    return plain_of(mention, _SCORE) or (plain_of(mention, {"count"}) and mention.rule == _LONE)


def _tells(said: tuple[Utterance, ...], kinds: set[str]) -> bool:
    return any(plain_of(m, kinds) for utterance in said for m in utterance.mentions)

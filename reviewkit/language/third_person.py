"""A speaker who tells of himself as of another: "he's pulling the 6 iron, he lashes at it".

Who calls a round like a commentator says "he" of the player, and hardly ever "I". Where a whole round is told
so, "he" is read as "I"; a partner who is named stands for the rest of the sentence as the one meant.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from reviewkit.language.players import PARTNER
from reviewkit.language.tokens import Sentence, Token, of_tokens

_HE = {"he": "i", "he'd": "i'd", "he'll": "i'll", "his": "my", "him": "me", "himself": "myself"}
_HES = "he's"
_I = frozenset({"i", "i'm", "i've", "i'd", "i'll"})
_LEAST, _OFTEN = 20, 1.5
"""How often he is named at least, and how many times as often as I am; most partners are half as often."""
_HAS = frozenset({"got", "had", "been", "made", "hit", "gone", "left", "put", "lost", "found", "come"})


def as_told_by_himself(said: Sequence[Sentence]) -> tuple[Sentence, ...]:
    """The sentences with the player as "I", where he is told of as "he" all the round."""
    words = [token.text for sentence in said for token in sentence.tokens]
    he = sum(word == "he" or word == _HES for word in words)
    if he < _LEAST or he < _OFTEN * sum(word in _I for word in words):
        return tuple(said)
    return tuple(_as_i(sentence) for sentence in said)


def _as_i(sentence: Sentence) -> Sentence:
    return of_tokens(tuple(_tokens(sentence.tokens)), sentence.segment, sentence.goes_on)


def _tokens(tokens: Sequence[Token]) -> Iterator[Token]:
    theirs = False
    for at, token in enumerate(tokens):
        theirs = theirs or token.text.removesuffix("'s") == PARTNER
        after = tokens[at + 1].text if at + 1 < len(tokens) else ""
        text = token.text if theirs else _said_of_me(token.text, after)
        yield token if text == token.text else replace(token, text=text)


@lru_cache(maxsize=256)
def _said_of_me(word: str, after: str) -> str:
    """ "I" for "he"; "he's" is "I've" before "got" and "crushed", else "I'm"."""
    if word == _HES:
        return "i've" if after in _HAS or after.endswith("ed") else "i'm"
    return _HE.get(word, word)

"""A speaker who tells of himself as of another: "he's pulling the 6 iron", "you've got 160, you take the 6".

Who calls a round like a commentator says "he" of the player, who coaches himself aloud "you", and both hardly
ever "I". Where a whole round is told so, that is read as "I"; a partner who is named stands for the rest of
the sentence as the one meant.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from reviewkit.language.players import PARTNER
from reviewkit.language.tokens import Sentence, Token, of_tokens

_HE = {"he": "i", "he'd": "i'd", "he'll": "i'll", "his": "my", "him": "me", "himself": "myself"}
_HES = "he's"
_YOU = {
    "you": "i",
    "you're": "i'm",
    "you've": "i've",
    "you'd": "i'd",
    "you'll": "i'll",
    "your": "my",
    "yours": "mine",
    "yourself": "myself",
}
_I = frozenset({"i", "i'm", "i've", "i'd", "i'll"})
_LEAST = 20
"""How often the player is named at least."""
_OFTEN = {"he": 1.5, "you": 4.0}
"""How many times as often as I am: most partners are half as often; a listener is spoken to now and then."""
_HAS = frozenset({"got", "had", "been", "made", "hit", "gone", "left", "put", "lost", "found", "come"})


def as_told_by_himself(said: Sequence[Sentence]) -> tuple[Sentence, ...]:
    """The sentences with the player as "I", where he is told of as "he" or "you" all the round."""
    words = Counter(token.text for sentence in said for token in sentence.tokens)
    mine = sum(words[word] for word in _I)
    for name, forms in (("he", ("he", _HES)), ("you", ("you", "you're", "you've"))):
        told = sum(words[form] for form in forms)
        if told >= _LEAST and told >= _OFTEN[name] * mine:
            return tuple(_as_i(sentence, name) for sentence in said)
    return tuple(said)


def _as_i(sentence: Sentence, name: str) -> Sentence:
    return of_tokens(tuple(_tokens(sentence.tokens, name)), sentence.segment, sentence.goes_on)


def _tokens(tokens: Sequence[Token], name: str) -> Iterator[Token]:
    theirs = False
    for at, token in enumerate(tokens):
        theirs = theirs or token.text.removesuffix("'s") == PARTNER
        after = tokens[at + 1].text if at + 1 < len(tokens) else ""
        text = token.text if theirs else _said_of_me(token.text, after, name)
        yield token if text == token.text else replace(token, text=text)


@lru_cache(maxsize=256)
def _said_of_me(word: str, after: str, name: str) -> str:
    """ "I" for "he" or "you"; "he's" is "I've" before "got" and "crushed", else "I'm"."""
    if name == "you":
        return _YOU.get(word, word)
    if word == _HES:
        return "i've" if after in _HAS or after.endswith("ed") else "i'm"
    return _HE.get(word, word)

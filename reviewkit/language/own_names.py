"""What a speaker's own words for clubs stand for: a driver with a name, the only hybrid in the bag."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.language.number_words import words_of
from reviewkit.language.players import words_of_golf
from reviewkit.language.tokens import Sentence, of_tokens
from reviewkit.model import Mention, Talk, Utterance

_NAMED = re.compile(
    r"(?:^| )([a-z]{3,})(?: is|'s) (?:my|the name of my|what i call my|the) (driver|putter)(?= |$)"
)
_CLUB = r"(driver|putter|[2-9] (?:wood|iron|hybrid)|(?:pitching|gap|sand|lob) wedge)"
_CALLED = re.compile(
    rf"(?:^| )the ([a-z]{{3,}}) , (?:(?:and )?(?:that's|that is|which is|which means|it's)|being|meaning)"
    rf" (?:just |only )?(?:my|the|a|our) (?:old |trusty |little )?{_CLUB}(?= [,.!?]|$)"
)
_NO_NAMES = frozenset(
    words_of(
        """that this what which here there now mine where problem club issue trouble only idea plan first last
        next one enemy friend play answer shot hero choice it he she who how when today call"""
    )
)
_HYBRIDS = ("hybrid", "rescue", "utility")
_ONLY_ONE = re.compile(
    r"(?:^|[ ,])(?:hybrid|rescue|utility)(?: now)? [.,!] (?:and |because |well , )?i(?:'ve)? (?:only|just)"
    r" (?:ever )?(?:got|have|had|carry|own|use)(?: got)?(?: the| that)? (?:one|1)(?: of them| hybrid)?"
    r"(?= [.,!]|$)"
)
_ITS_NUMBER = re.compile(r"(?:it's|that's|mine's|mine is) (?:a|the|my) ([2-6])(?= [,.!?]|$)")
_ENDS_WITH_ONE = re.compile(r"(?:^| )(?:the|my|a|with|hit|hybrid) (?:old )?(?:hybrid|rescue|utility) [.,!]$")
_OPENS_WITH_NUMBER = re.compile(
    r"(?:the |my |that's the |it's the |number )([2-6])"
    r"(?= (?:[,.!?]|again|and (?:i|it)|up|off|from|out|for|get|come)(?![a-z])|$)"
)
_NAMED_SO = 1.6
"""The weight of a club that is named without its number."""
_AT_ONCE = 4
"""Words from "the hybrid" to the number that tells which: "the hybrid, the 3 hybrid"."""
_SO_SOON = 20
"""Words from a numbered hybrid to "hybrid" for the same."""
_TWICE_AS_OFTEN = 2
"""A number that is misheard once or twice does not make a second hybrid."""


def nicknames(said: Sequence[Sentence]) -> dict[str, str]:
    """Name -> club of such as "Doris is my driver" and "the spoon, that's my 3 wood"."""
    named = (match for sentence in said for match in _NAMED.finditer(sentence.text))
    found = {match.group(1): match.group(2) for match in named if match.group(1) not in _NO_NAMES}
    called = (match for sentence in said for match in _CALLED.finditer(sentence.text))
    # "Into the trees, that's my driver" names no club, nor does any other word of the game.
    return found | {m.group(1): m.group(2) for m in called if m.group(1) not in words_of_golf()}


def plainly(sentence: Sentence, names: dict[str, str]) -> Sentence:
    """The sentence with every word of the speaker's own as the club or the place that it stands for."""
    if not any(token.text.removesuffix("'s") in names for token in sentence.tokens):
        return sentence
    tokens = tuple(
        replace(token, text=token.text.replace(name, names[name], 1))
        if (name := token.text.removesuffix("'s")) in names
        else token
        for token in sentence.tokens
    )
    return of_tokens(tokens, sentence.segment, sentence.goes_on)


def with_the_only_hybrid(talk: Talk) -> Talk:
    """The talk with every bare "hybrid" as the one that has a number, where no other is ever named."""
    numbered = Counter(
        str(mention.value)
        for said in talk
        for mention in said.mentions
        if mention.kind == "club" and str(mention.value).endswith("H") and mention.mood != "other"
    )
    numbered += Counter(_told_behind(talk))
    often = numbered.most_common(2)
    if not often or (len(often) > 1 and often[0][1] < _TWICE_AS_OFTEN * often[1][1]):
        return talk
    made, only = [], often[0][0]
    named, since = only, -_SO_SOON
    for said in talk:
        # "5 hybrid. I say hybrid, it's more of a rake": the one just named, whatever is carried.
        made.append(_numbered(said, named if said.first - since <= _SO_SOON else only))
        told = [m for m in said.mentions if m.kind == "club" and str(m.value).endswith("H") and not m.mood]
        if told:
            named, since = str(told[-1].value), said.last
    return tuple(made)


def _told_behind(talk: Talk) -> Iterator[str]:
    """ "Hybrid. I only have the one. It's a 4", "the rescue. The 3": the number told in the next sentence."""
    for at in range(1, len(talk)):
        said, text = talk[at - 1].text, talk[at].text
        before = f"{talk[at - 2].text} {said}" if at > 1 else said
        only = any(f" {word} , i" in f" {said}" for word in _HYBRIDS) or _ONLY_ONE.search(before)
        number = _ITS_NUMBER.match(text) if only else None
        number = number or (_OPENS_WITH_NUMBER.match(text) if _ENDS_WITH_ONE.search(said) else None)
        if number:
            yield f"{number.group(1)}H"


def _numbered(said: Utterance, only: str) -> Utterance:
    clubs = [mention for mention in said.mentions if mention.kind == "club"]

    def bare(mention: Mention) -> bool:
        named = mention.kind == "strike" and mention.text in _HYBRIDS
        return named and not any(mention.first <= club.last <= mention.last + _AT_ONCE for club in clubs)

    made = (replace(m, kind="club", value=only, weight=_NAMED_SO) if bare(m) else m for m in said.mentions)
    return replace(said, mentions=tuple(made))

"""What a speaker's own words for clubs stand for: a driver with a name, the only hybrid in the bag."""

from __future__ import annotations

import re
from collections.abc import Sequence
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
    mentions = [mention for said in talk for mention in said.mentions]
    numbered = {
        str(mention.value)
        for mention in mentions
        if mention.kind == "club" and str(mention.value).endswith("H") and mention.mood != "other"
    }
    numbered = numbered or _told_behind(talk)
    if len(numbered) != 1:
        return talk
    (only,) = numbered
    return tuple(_numbered(said, only) for said in talk)


def _told_behind(talk: Talk) -> set[str]:
    """ "Hybrid. I only have the one. It's a 4": the number told in a sentence of its own."""
    found = set()
    for at in range(1, len(talk)):
        number = _ITS_NUMBER.match(talk[at].text)
        said = talk[at - 1].text
        before = f"{talk[at - 2].text} {said}" if at > 1 else said
        if number and (any(f" {word} , i" in f" {said}" for word in _HYBRIDS) or _ONLY_ONE.search(before)):
            found.add(f"{number.group(1)}H")
    return found


def _numbered(said: Utterance, only: str) -> Utterance:
    clubs = [mention for mention in said.mentions if mention.kind == "club"]

    def bare(mention: Mention) -> bool:
        named = mention.kind == "strike" and mention.text in _HYBRIDS
        return named and not any(mention.overlaps(club) for club in clubs)

    made = (replace(m, kind="club", value=only) if bare(m) else m for m in said.mentions)
    return replace(said, mentions=tuple(made))

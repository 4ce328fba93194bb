"""Words that a speaker says at the beginning they use for the parts of a course: "carpet is the fairway"."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from reviewkit.language.number_words import words_of
from reviewkit.language.tokens import Sentence

_PARTS = "fairway|green|rough|bunker|sand|trees|water|fringe"
_MEANS = re.compile(
    rf"(?<![a-z'])([a-z]{{4,}})(?: is|'s| are| means?| equals)"
    rf"(?: (?:the|a|my|our|just|always|what i call the))* ({_PARTS})(?= [,.!?]| and |$)"
)
_IS_MEANT = re.compile(
    rf"(?<![a-z'])({_PARTS})(?: is|'?s| are|'re)"
    rf" (?:the|a|my|your|our|what i call the) ([a-z]{{4,}})(?= [,.!?]| and |$)"
)
_CALLS = re.compile(
    rf"(?:i|we) call (?:the |a |my |any )?({_PARTS})(?:,)? (?:the |a |my )?([a-z]{{4,}})(?= [,.!?]| and |$)"
    rf"|when i say (?:the |a )?([a-z]{{4,}})(?: ,)? i mean (?:the |a )?({_PARTS})(?![a-z])"
)
_NEAR = 2
"""Sentences from one entry of a glossary to the next."""
_BEGINNING, _USES = 30, 2
"""Sentences in which a glossary is given, and those in which one of its words is used at least."""
_NO_WORDS = frozenset(
    words_of(
        """that this what which here there everything nothing left right short long front back beyond middle
        behind ahead target miss danger trouble line best worst answer play enemy only first next last side
        rest where thing hole flag ball fairway green rough bunker trees water fringe from pond lake whole
        hers mine theirs yours same place game story difference reward winner killer problem issue size aim
        goal thin width shape sand"""
    )
)


def glossary(said: Sequence[Sentence]) -> dict[str, str]:
    """Word -> the part of a course that it stands for; empty where no glossary is given.

    "Carpet is the fairway, the pancake's the green" is one, and so is "the green's the pancake, sand's the
    porridge"; "the left is rough", said alone, is none.
    """
    entries = [
        (at, word, part)
        for at, sentence in enumerate(said[:_BEGINNING])
        for word, part in _entries(sentence.text)
        if word not in _NO_WORDS
    ]
    used = Counter(word for sentence in said for word in set(sentence.text.replace("'s", "").split()))
    return {
        word: part
        for at, word, part in entries
        if used[word] > _USES and (_called(said[at].text, word) or _in_company(entries, at, word))
    }


def _entries(text: str) -> list[tuple[str, str]]:
    means = [(found.group(1), found.group(2)) for found in _MEANS.finditer(text)]
    calls = [
        (found.group(2) or found.group(3), found.group(1) or found.group(4))
        for found in _CALLS.finditer(text)
    ]
    meant = [(found.group(2), found.group(1)) for found in _IS_MEANT.finditer(text)]
    return means + meant + calls


def _called(text: str, word: str) -> bool:
    return any(word in found.groups() for found in _CALLS.finditer(text))


def _in_company(entries: Sequence[tuple[int, str, str]], at: int, word: str) -> bool:
    """Whether another word is explained near by: one by itself may describe a hole."""
    return any(other != word and abs(place - at) <= _NEAR for place, other, _ in entries)

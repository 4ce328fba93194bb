"""The words as meant, for people to read: what a repair put right, in the shape of the words heard.

Only repairs of misheard words show. A number said stays as it is written ("two putts"), but for a club, which
has its digit ("3 wood"). Marks stay where they were; a capital stays where a sentence or a quotation begins,
because within one it came with the word misheard ("Leia" for "lay up").
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

from reviewkit.language import lexicon
from reviewkit.language.number_words import CLUB_NOUNS
from reviewkit.language.pieces import COMMA, ENDS
from reviewkit.language.tokens import Sentence, Token, sentences
from reviewkit.model import Transcript, Word

_MARKS = (COMMA, *ENDS)
_LEADING = re.compile(r"^[^\w+#-]*")
_TRAILING = re.compile(r"[.,?!…;:\"”»)\]—–-]*$")
# Letters that stand for a word, as they are written.
_WRITTEN = {"i": "I", "i'm": "I'm", "i'll": "I'll", "i've": "I've", "i'd": "I'd", "ob": "OB"}


def as_meant(transcript: Transcript, user_rules: Path | None = None) -> Transcript:
    """The transcript with `Word.meant` where a repair changed a word, and nowhere else.

    Where a repair made one of several words, the first shows it and the others show nothing. The words as
    heard and their times stay. Raises CardError for a mistake in the user's rules file.
    """
    known = lexicon.load(user_rules)
    found = _single(transcript.words, known.misheard)
    found |= meant(transcript, sentences(transcript, known))
    segments, at = [], 0
    for segment in transcript.segments:
        words = tuple(replace(word, meant=found.get(at + n)) for n, word in enumerate(segment.words))
        segments.append(replace(segment, words=words))
        at += len(words)
    return replace(transcript, segments=tuple(segments))


def meant(transcript: Transcript, said: Sequence[Sentence]) -> dict[int, str]:
    """What each word that a repair changed reads as meant, by its index; "" for one that is swallowed."""
    words = transcript.words
    found: dict[int, str] = {}
    for sentence in said:
        clubs = {id(number) for number, noun in pairwise(sentence.tokens) if _is_club(number, noun)}
        begin = next((token.first for token in sentence.tokens if token.text not in _MARKS), -1)
        for group in _groups(sentence.tokens):
            if not any(token.repaired or id(token) in clubs for token in group):
                continue
            first, last = min(token.first for token in group), max(token.last for token in group)
            opens = first == begin or words[first - 1].text.endswith(ENDS)
            text = _written(group, words[first : last + 1], opens)
            if text and text != words[first].text:
                found |= {first: text, **dict.fromkeys(range(first + 1, last + 1), "")}
    return found


def _single(words: Sequence[Word], misheard: Mapping[str, str]) -> dict[int, str]:
    """Words that are never what they seem, each by itself."""
    found = {}
    for index, word in enumerate(words):
        core = _core(word.text)
        if core and (plain := misheard.get(core.lower())):
            opens = index == 0 or words[index - 1].text.endswith(ENDS)
            found[index] = word.text.replace(core, _cased(plain, core, opens), 1)
    return found


def _is_club(number: Token, noun: Token) -> bool:
    """Whether a number as heard stands before a club's name that a repair made of another word."""
    return bool(noun.repaired) and noun.text in CLUB_NOUNS and number.text.isdigit()


def _groups(tokens: Sequence[Token]) -> Iterator[list[Token]]:
    """Tokens together that came from the same words."""
    group: list[Token] = []
    for token in tokens:
        if group and token.first > max(each.last for each in group):
            yield group
            group = []
        group.append(token)
    if group:
        yield group


def _written(group: Sequence[Token], heard: Sequence[Word], opens: bool) -> str:
    """The tokens as one text with the marks of the words heard; nothing when no word is left."""
    text = " ".join(_WRITTEN.get(token.text, token.text) for token in group)
    text = re.sub(r" (?=[,.?!])", "", text).rstrip(".,?!")
    core = _core(heard[0].text)
    opening = heard[0].text[: heard[0].text.index(core)] if core else ""
    trail = _TRAILING.search(heard[-1].text)
    text = _cased(text, core, opens or bool(opening))
    return f"{opening}{text}{trail.group() if trail else ''}" if text else ""


def _core(text: str) -> str:
    """A word as written without the marks around it."""
    return _TRAILING.sub("", _LEADING.sub("", text))


def _cased(text: str, heard: str, opens: bool) -> str:
    """`text` with capitals where the word heard had them by right."""
    if heard.isupper() and sum(map(str.isalpha, heard)) > 1:
        return text.upper()
    return text[:1].upper() + text[1:] if opens and heard[:1].isupper() else text

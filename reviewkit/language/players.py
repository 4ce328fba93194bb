"""Who else is in the talk: partners are found by their names, so that their strokes are not the player's."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from reviewkit.language.tokens import Sentence, Token
from reviewkit.model import Transcript

PARTNER = "partner"
_BEFORE = frozenset(
    {"and", "with", "buddy", "mate", "sister", "brother", "friend", "wife", "oh", "while", "when"}
)
_AFTER = frozenset(
    """is was has had says said hit hits goes went made makes got knocked took shot played wrote told gave did
    reckons reckoned thinks clapped stuck won lost nearly always just also wants never calls looks shouts
    laughs asked keeps splashed chipped putted holed found drove rolled missed tapped finished birdied parred
    bogeyed doubled picked lagged pitched pulled sliced hooked duffed topped""".split()  # noqa: SIM905, a list of words reads best as words
)
_NEVER = frozenset(
    """i monday tuesday wednesday thursday friday saturday sunday january february march april may june july
    august september october november december easter christmas driver par birdie bogey ok okay god jesus lord
    english irish american australian power mike fringe bracken""".split()  # noqa: SIM905
)
_NAME = re.compile(r"[A-Z][a-z]{1,11}(?:['’]s)?[,.!?]?$")


def partners(
    transcript: Transcript, sentences: Iterable[Sentence], told: Iterable[str] = ()
) -> frozenset[str]:
    """First names, lower case, of people whom the talk treats as acting. `told` are known beforehand."""
    words = transcript.words
    votes: Counter[str] = Counter()
    inside: Counter[str] = Counter()
    for sentence in sentences:
        texts = [token.text for token in sentence.tokens]
        for at, token in enumerate(sentence.tokens):
            name = token.text.removesuffix("'s")
            if (
                not name.isalpha()
                or token.first != token.last
                or name in _NEVER
                or not _NAME.match(words[token.first].text.strip())
            ):
                continue
            before = texts[at - 1] if at else ""
            after = texts[at + 1] if at + 1 < len(texts) else ""
            inside[name] += bool(before) and before not in ".!?"
            acts = token.text.endswith("'s") or after in _AFTER or before in _BEFORE
            votes[name] += (
                acts and not _capital(words, token.first - 1) and not _capital(words, token.last + 1)
            )
    known = {part.lower() for name in told for part in name.split()}
    return frozenset(name for name, count in votes.items() if count and (inside[name] or name in known))


def _capital(words: tuple[object, ...], at: int) -> bool:
    """Another capitalised word beside it makes a place of a name."""
    text = getattr(words[at], "text", "").strip() if 0 <= at < len(words) else ""
    return bool(re.match(r"[A-Z][a-z]{2,}$", text)) and text.lower() not in {"and", "but", "so", "oh", "me"}


def anonymise(sentence: Sentence, names: frozenset[str]) -> Sentence:
    """The sentence with every partner's name as `partner`, for rules that need not know who it is."""
    if not any(token.text.removesuffix("'s") in names for token in sentence.tokens):
        return sentence
    tokens = tuple(_rename(token, names) for token in sentence.tokens)
    starts, at = [], 0
    for token in tokens:
        starts.append(at)
        at += len(token.text) + 1
    return replace(
        sentence, tokens=tokens, text=" ".join(token.text for token in tokens), starts=tuple(starts)
    )


def _rename(token: Token, names: frozenset[str]) -> Token:
    name = token.text.removesuffix("'s")
    return replace(token, text=token.text.replace(name, PARTNER, 1)) if name in names else token

"""Words that make no sense as written, taken for the phrase of the game that they sound like.

A listener who does not know the game writes what it hears: "biviren" for a five iron, "power floor" for a
par four. Every stretch of a few words with an unsure one among them is held against the phrases of
`reviewkit/rules/by_ear.toml`, sound by sound: how often is this sound heard for that one, and how often
anyway? What is likely enough, by that and by the words beside it, is put right like any other misheard words,
with what was heard kept. Costs and weights are in `by_ear.json`; they were counted over invented rounds whose
words are known (`tests/language/ear.py`).
"""

from __future__ import annotations

import json
import math
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

import numpy as np

from reviewkit.language.following import Following, sense
from reviewkit.language.following import counted as words_that_follow
from reviewkit.language.phones import SOUNDS, sounds
from reviewkit.language.pieces import COMMA, ENDS, Piece, text_at
from reviewkit.language.repair import laid_over, renamed

PHRASES = Path(__file__).parents[1] / "rules" / "by_ear.toml"
COUNTED = PHRASES.with_suffix(".json")
UNSURE = 0.8
"""A word as likely as this, by the listener's own account, is what was heard."""
WORDS, LONGEST = 4, 14
"""A stretch has so many words at most, and so many sounds."""
LEAST = 2.0
"""Log odds of the sounds below which a stretch is not looked at."""
HOPELESS = -5.0
"""Log odds of a phrase's first sounds below which its others do not help."""
STRAY = 4
"""Sounds that a stretch may have more or fewer than the phrase."""
_PLACE = {sound: at for at, sound in enumerate(SOUNDS)}
LIKELY = 0.6
"""Probability from which a stretch is mended."""


@dataclass(frozen=True, slots=True)
class Phrase:
    """One phrase: its kind (what it tells of), its words and their sounds, as numbers of `SOUNDS`."""

    kind: str
    said: str
    sounds: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Likeness:
    """Words `begin` to `end` (excluded) against the phrase that they sound most like: log odds."""

    begin: int
    end: int
    phrase: Phrase
    odds: float


@dataclass(frozen=True, slots=True)
class Weights:
    """What one kind of phrase goes by: `of` the measures of `measures`, in their order, the words before and
    after, and the phrase itself."""

    of: tuple[float, ...]
    before: Mapping[str, float]
    after: Mapping[str, float]
    phrase: Mapping[str, float]


def mended(given: list[Piece]) -> list[Piece]:
    """The pieces with every likely stretch put right."""
    costs, weights = _counted()
    made: list[Piece] = []
    at = 0
    for each in sorted(likenesses(given, costs), key=lambda likeness: likeness.begin):
        # These are many counts to load, and text that was heard surely needs none of them.
        measured = measures(given, each, costs, words_that_follow())
        if weighed(each, measured, beside(given, each), weights[each.phrase.kind]) < LIKELY:
            continue
        made += given[at : each.begin]
        said = each.phrase.said.split()
        over = laid_over(given[each.begin : each.end], len(said))
        made += [renamed(piece, word, heard) for word, (piece, heard) in zip(said, over, strict=True)]
        at = each.end
    return [*made, *given[at:]]


def measures(given: list[Piece], found: Likeness, costs: Costs, following: Following) -> tuple[float, ...]:
    """What speaks for a likeness: 1, odds for each sound that is not of a word heard as said, great odds, the
    listener's probability, sounds too many, a number in it, a single word, more than two, words heard as
    said, how much better it goes with the words around it than what was heard."""
    heard, phrase = given[found.begin : found.end], found.phrase
    said = phrase.said.split()
    words = set(said)
    count = sum(len(coded(piece.text)) for piece in heard)
    same = [sound for word in words & {piece.text for piece in heard} for sound in coded(word)]
    odds = found.odds - sum(costs.heard[sound, sound] for sound in same)
    return (
        1.0,
        float(odds / max(1, len(phrase.sounds) - len(same))),
        float(max(0.0, odds - 10) / 5),
        min(piece.probability for piece in heard),
        (count - len(phrase.sounds)) / 2,
        float(any(piece.value is not None for piece in heard)),
        float(len(heard) == 1),
        float(len(heard) > 2),
        len(words & {piece.text for piece in heard}) / len(words),
        sense(following, given, found.begin, found.end, said) / 3,
    )


def beside(given: list[Piece], found: Likeness) -> tuple[str, str]:
    """The words before and after, "#" for a number, a full stop beyond either end."""
    before, after = text_at(given, found.begin - 1) or ".", text_at(given, found.end) or "."
    return "#" if before[0].isdigit() else before, "#" if after[0].isdigit() else after


def weighed(found: Likeness, measured: Sequence[float], around: tuple[str, str], weights: Weights) -> float:
    """How likely the phrase was said, by its `measures` and the words `beside` it."""
    odds = sum(weight * measure for weight, measure in zip(weights.of, measured, strict=True))
    odds += weights.before.get(around[0], 0.0) + weights.after.get(around[1], 0.0)
    return 1 / (1 + math.exp(-odds - weights.phrase.get(found.phrase.said, 0.0)))


@lru_cache(maxsize=1)
def _counted() -> tuple[Costs, dict[str, Weights]]:
    table = json.loads(COUNTED.read_text(encoding="utf-8"))
    costs = Costs(*(np.array(table[name]) for name in ("heard", "lost", "added")))
    return costs, {kind: Weights(**entry) for kind, entry in table["weights"].items()}


@lru_cache(maxsize=1)
def _table() -> dict[str, Any]:
    return tomllib.loads(PHRASES.read_text(encoding="utf-8"))


@lru_cache(maxsize=1)
def phrases() -> tuple[Phrase, ...]:
    """Every phrase that may be heard."""
    return tuple(
        Phrase(kind, said, coded(said)) for kind, listed in _table()["said"].items() for said in listed
    )


@lru_cache(maxsize=16384)
def coded(text: str) -> tuple[int, ...]:
    """A text's sounds as their places in `SOUNDS`."""
    return tuple(_PLACE[sound] for sound in sounds(text))


@dataclass(frozen=True)
class Costs:
    """Log odds of what is heard for a sound said, against that sound anyhow.

    `heard[said, heard]`, shape (39, 39); `lost[said]` for a sound that nobody heard and `added[heard]` for
    one that nobody said, shape (39,).
    """

    heard: np.ndarray
    lost: np.ndarray
    added: np.ndarray


def likenesses(given: list[Piece], costs: Costs) -> list[Likeness]:
    """The best phrase for every stretch that may be one, the likest first, none overlapping another."""
    stretches = list(_stretches(given))
    if not stretches:
        return []
    begins = sorted({begin for begin, *_ in stretches})
    row_of = {begin: row for row, begin in enumerate(begins)}
    heard = np.zeros((len(begins), LONGEST), dtype=np.intp)
    for begin, _, spelt in stretches:
        heard[row_of[begin], : len(spelt)] = spelt
    rows = np.array([row_of[begin] for begin, *_ in stretches])
    lengths = np.array([len(spelt) for *_, spelt in stretches])
    odds = np.full((len(phrases()), len(stretches)), -np.inf)
    place = np.empty(len(begins), dtype=np.intp)
    for at, (alive, reached) in enumerate(_aligned(heard, costs)):
        place[:] = -1
        place[alive] = np.arange(len(alive))
        near = (np.abs(lengths - len(phrases()[at].sounds)) <= STRAY) & (place[rows] >= 0)
        odds[at, near] = reached[place[rows[near]], lengths[near]]
    best, found = odds.argmax(axis=0), odds.max(axis=0)
    taken: set[int] = set()
    chosen = []
    for at in np.argsort(-found, kind="stable"):
        if found[at] < LEAST:
            break
        begin, end, _ = stretches[at]
        if taken.isdisjoint(range(begin, end)):
            taken.update(range(begin, end))
            chosen.append(Likeness(begin, end, phrases()[best[at]], float(found[at])))
    return chosen


def _stretches(given: list[Piece]) -> Iterator[tuple[int, int, tuple[int, ...]]]:
    """(begin, end, sounds) of all stretches that may be misheard."""
    doubted = [piece.probability < UNSURE for piece in given]
    if not any(doubted):
        return
    settled = _settled(given)
    for begin, piece in enumerate(given):
        if piece.text == COMMA or settled[begin] or not any(doubted[begin : begin + WORDS]):
            continue
        spelt: tuple[int, ...] = ()
        unsure, known = False, True
        for end in range(begin + 1, min(begin + WORDS, len(given)) + 1):
            last = given[end - 1]
            if settled[end - 1]:
                break
            if last.text == COMMA:
                continue
            spelt += coded(last.text)
            if len(spelt) > LONGEST:
                break
            unsure = unsure or last.probability < UNSURE
            known = known and (last.value is not None or last.text in _known())
            if unsure and not known and len(spelt) > 1:
                yield begin, end, spelt


def _settled(given: list[Piece]) -> list[bool]:
    """Which pieces are what they seem: ends, what was put right, sure words, whole phrases."""
    settled = [piece.text in ENDS or bool(piece.heard) or piece.text in _table()["sure"] for piece in given]
    for at, piece in enumerate(given):
        for words in _opened().get(piece.text, ()):
            if all(text_at(given, at + step) in (word, f"{word}s") for step, word in enumerate(words)):
                settled[at : at + len(words)] = [True] * len(words)
    return settled


@lru_cache(maxsize=1)
def _opened() -> dict[str, list[list[str]]]:
    """Every phrase's words, by the first of them, of one or several."""
    opened: dict[str, list[list[str]]] = {}
    for phrase in phrases():
        words = phrase.said.split()
        for first in (words[0], f"{words[0]}s"):
            opened.setdefault(first, []).append(words)
    return opened


@lru_cache(maxsize=1)
def _known() -> frozenset[str]:
    """Words of the phrases, of one or several: a stretch of nothing else is what it seems."""
    said = {word for phrase in phrases() for word in phrase.said.split() if word.isalpha()}
    return frozenset({*said, *(f"{word}s" for word in said)})


def _aligned(heard: np.ndarray, costs: Costs) -> Iterator[tuple[np.ndarray, np.ndarray]]:
    """For every phrase the rows of `heard` that may be it, and the log odds of its sounds against the first
    0, 1, ... sounds of each.

    Shapes (rows,) and (rows, LONGEST + 1). The phrases' common beginnings are gone through once, and rows
    that sound too little like one are left behind.
    """
    added = np.concatenate([np.zeros((len(heard), 1)), costs.added[heard].cumsum(axis=1)], axis=1)
    # Odds are kept beside those of sounds that nobody said: one more of these is then no step at all.
    beside = costs.heard - costs.added
    steps = {
        sound: beside[sound][heard] for sound in {sound for phrase in phrases() for sound in phrase.sounds}
    }
    known: dict[tuple[int, ...], tuple[np.ndarray, np.ndarray]]
    known = {(): (np.arange(len(heard)), np.zeros_like(added))}
    for phrase in phrases():
        for at, sound in enumerate(phrase.sounds):
            said = phrase.sounds[: at + 1]
            if said in known:
                continue
            alive, before = known[phrase.sounds[:at]]
            reached = before + costs.lost[sound]
            np.maximum(reached[:, 1:], before[:, :-1] + steps[sound][alive], out=reached[:, 1:])
            np.maximum.accumulate(reached, axis=1, out=reached)
            like = (reached + added[alive]).max(axis=1) > HOPELESS
            known[said] = alive[like], reached[like]
        alive, reached = known[phrase.sounds]
        yield alive, reached + added[alive]

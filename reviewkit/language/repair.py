"""Words that a listener misheard, put right where the words around them say what was meant.

`reviewkit/rules/lexicon.toml` holds the entries, and a user's rules file may add its own:

    [[repair]]
    heard = ["two pots"]              # what stands there, numbers as digits; <group>, <number>,
                                      # <number 3-6>, <nth> stand for many; <end> is a
                                      # sentence's border, <break> that or a comma;
                                      # "~iron" is an unsure word that sounds like it, "~~gap"
                                      # one that does though the listener was sure of it;
                                      # "word?" may be missing, "a|b" is either
    meant = "2 putts"                 # what it becomes; "<1>" keeps the first word heard as it is,
                                      # "<1 number>" makes an ordinal plain ("7th" to "7"),
                                      # "<1 tens>" and "<1 unit>" part a number (148 to 140 and 8),
                                      # "<1 plus 400>" adds to one (81 to 481), "<1 and 3>" adds
                                      # two of them up (500 and 4 to 504),
                                      # "<1 sound>" takes the closest of "~chipped|pitched"
    swap = { "30" = "13" }            # instead of heard and meant: several of a kind in one company
    before = ["in"]                   # optional: one of these must stand right before
    after = ["from <number>"]         # optional: one of these must stand right after
    not_before, not_after = [...]     # optional: none of these may
    near = ["<golf>"]                 # optional: one of these must stand within ten words
    often = ["metre", "metres"]       # optional: the talk must say these at least three times
    below = 0.6                       # optional: only where the listener's own probability is lower
    examples = [["two pots for par", "2 putts for par"]]
    counterexamples = ["two pots of tea"]

Repairs work on pieces with numbers already as digits. Earlier entries win over later ones.
"""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from reviewkit.language.number_words import shown, simple
from reviewkit.language.pieces import COMMA, ENDS, Piece
from reviewkit.language.sound import distance, least_distance

NEAR = 10
OFTEN = 3
UNSURE = 0.7
"""The listener's own probability below which a word may be taken for one that sounds like it."""
ALIKE = 0.28
"""How far two words may sound apart, see `sound.distance`."""
ALIKE_BEFORE = 0.45
"""The same before a word that only such a word goes with: "gag wedge" is a gap wedge."""
PASSES = 3
"""How often one place may be mended: "80 nober" to "80 over" to "18 over"."""
_KEPT = re.compile(r"<(\d+)( number| sound| tens| unit| plus \d+| and \d+)?>")
_NUMBER = re.compile(r"<(number|nth)(?: (\d+)-(\d+))?>")


@dataclass(frozen=True, slots=True)
class Element:
    """One place in a pattern: any of `words`, or a number (`nth`: an ordinal) from `low` to `high`.

    `kind` "sound" is a word that the listener was unsure of, that sounds like one of `words` and is none
    of the `known` words, which are what they seem. "sure" is one that may sound less like it, sure or not.
    """

    words: frozenset[str] = frozenset()
    kind: str = "word"
    low: float = 0
    high: float = 10_000
    known: frozenset[str] = frozenset()

    def fits(self, piece: Piece | None) -> bool:
        if piece is None or piece.text in ENDS:
            soft = piece is not None and piece.soft and COMMA in self.words
            return soft or self.kind in ("end", "break")
        if self.kind == "word":
            return piece.text in self.words
        if self.kind in ("sound", "sure"):
            return (self.kind == "sure" or piece.probability < UNSURE) and self.closest(
                piece.text
            ) is not None
        if self.kind in ("end", "break"):
            return self.kind == "break" and piece.text == COMMA
        if piece.value is None or not self.low <= piece.value <= self.high:
            return False
        return piece.text[-1].isdigit() is (self.kind == "number")

    def closest(self, text: str) -> str | None:
        """The word of `words` that sounds most like `text`, None when none is close."""
        least, limit = (3, ALIKE_BEFORE) if self.kind == "sure" else (4, ALIKE)
        if len(text) < least or text in self.known or text in self.words or not text.isalpha():
            return None
        near = (word for word in sorted(self.words) if least_distance(text, word) <= limit)
        best = min(near, key=lambda word: distance(text, word), default=None)
        return best if best is not None and distance(text, best) <= limit else None


Pattern = tuple[Element, ...]


@dataclass(frozen=True, slots=True)
class Repair:
    """One entry, compiled. `meant` are the new words, "<2>" for a heard word that stays."""

    name: str
    heard: Pattern
    meant: tuple[str, ...]
    before: tuple[Pattern, ...] = ()
    after: tuple[Pattern, ...] = ()
    not_before: tuple[Pattern, ...] = ()
    not_after: tuple[Pattern, ...] = ()
    near: frozenset[str] = frozenset()
    often: frozenset[str] = frozenset()
    below: float = 1.1
    second: frozenset[str] = field(init=False)
    """Words of which one must be the next one heard; empty where that is open. Asked first, being cheap."""

    def __post_init__(self) -> None:
        plain = len(self.heard) > 1 and self.heard[1].kind == "word" and COMMA not in self.heard[1].words
        object.__setattr__(self, "second", self.heard[1].words if plain else frozenset())

    def applies(self, given: Sequence[Piece], at: int) -> bool:
        """Whether the words at `at` are those heard and stand in the right company."""
        end = at + len(self.heard)
        if not _matches(self.heard, given, at) or min(p.probability for p in given[at:end]) >= self.below:
            return False
        if self.before and not any(_matches(p, given, at - len(p)) for p in self.before):
            return False
        if self.after and not any(_matches(p, given, end) for p in self.after):
            return False
        if any(_matches(p, given, at - len(p)) for p in self.not_before):
            return False
        if any(_matches(p, given, end) for p in self.not_after):
            return False
        return not self.near or any(
            piece.text in self.near
            for piece in itertools.chain(given[max(0, at - NEAR) : at], given[end : end + NEAR])
        )

    def at_home(self, said: Mapping[str, int]) -> bool:
        """Whether the talk says so often what it must; `said` are its words with their numbers."""
        return not self.often or sum(said[word] for word in self.often) >= OFTEN

    def mend(self, given: Sequence[Piece], at: int) -> list[Piece]:
        """The pieces meant, each over the words it replaces where their number is the same."""
        old = given[at : at + len(self.heard)]
        made = []
        for word, (source, said) in zip(self.meant, laid_over(old, len(self.meant)), strict=True):
            kept = _KEPT.fullmatch(word)
            if kept and not kept.group(2):
                made.append(old[int(kept.group(1)) - 1])
                continue
            if kept:
                word = self._reading(old, int(kept.group(1)) - 1, kept.group(2))
            made.append(source if source.text == word else renamed(source, word, said))
        return made

    def _reading(self, old: Sequence[Piece], place: int, how: str) -> str:
        if how == " sound":
            word = self.heard[place].closest(old[place].text) or old[place].text
            number = simple(word)
            return word if number is None else shown(number)
        value = old[place].value or 0
        if how.startswith((" plus", " and")):
            _, kind, other = how.split(" ")
            return shown(value + (int(other) if kind == "plus" else old[int(other) - 1].value or 0))
        return shown({" tens": value // 10 * 10, " unit": value % 10}.get(how, value))


def laid_over(old: Sequence[Piece], count: int) -> list[tuple[Piece, str]]:
    """For each of `count` new words the piece that it stands for, and what was heard there.

    One for one where there are as many, else all of the old for each.
    """
    if len(old) == count:
        return [(piece, piece.heard or piece.text) for piece in old]
    return [(old[0].to(old[-1], ""), " ".join(piece.heard or piece.text for piece in old))] * count


def renamed(source: Piece, word: str, said: str) -> Piece:
    """A piece with another word, over what was heard."""
    digits = re.fullmatch(r"(\d+(?:\.\d+)?)(?:st|nd|rd|th|s)?", word)
    return replace(source, text=word, value=float(digits.group(1)) if digits else None, heard=said)


def _matches(pattern: Pattern, given: Sequence[Piece], at: int) -> bool:
    for step, element in enumerate(pattern):
        place = at + step
        if not element.fits(given[place] if 0 <= place < len(given) else None):
            return False
    return True


@dataclass(frozen=True, slots=True, eq=False)
class Lexicon:
    """Spellings made one, and repairs by the word they begin with: "" for a number, "~" for a sound,
    "~wedge" for one that goes before that word.

    `misheard` are those spellings that no one means.
    """

    spelling: dict[str, str]
    repairs: dict[str, tuple[Repair, ...]]
    misheard: Mapping[str, str] = field(default_factory=dict)

    def mend(self, given: list[Piece]) -> list[Piece]:
        """All pieces with every repair made, left to right; a mended word may serve as another's company."""
        work = list(given)
        said = Counter(piece.text for piece in given)
        numeric, sounding = self.repairs.get("", ()), self.repairs.get("~", ())
        at = 0
        while at < len(work):
            for _ in range(PASSES):
                piece, after = work[at], work[at + 1].text if at + 1 < len(work) else ""
                entries = self.repairs.get(piece.text, ())
                if piece.value is not None:
                    entries = entries + numeric
                else:
                    if piece.probability < UNSURE:
                        entries = entries + sounding
                    if after:
                        entries = entries + self.repairs.get("~" + after, ())
                likely = (entry for entry in entries if not entry.second or after in entry.second)
                fitting = (entry for entry in likely if entry.applies(work, at))
                found = next((entry for entry in fitting if entry.at_home(said)), None)
                if found is None:
                    break
                work[at : at + len(found.heard)] = found.mend(work, at)
            at += 1
        return work


def patterns(text: str, groups: dict[str, frozenset[str]]) -> list[Pattern]:
    """Compile one pattern as written; each optional word doubles them. KeyError: an unknown group."""
    choices: list[list[tuple[Element, ...]]] = []
    for word in re.findall(r"<[^>]*>\??|\S+", text):
        optional = word.endswith("?") and len(word) > 1
        element = _element(word[:-1] if optional else word, groups)
        choices.append([(element,), ()] if optional else [(element,)])
    return [tuple(itertools.chain.from_iterable(combo)) for combo in itertools.product(*choices)]


def _element(word: str, groups: dict[str, frozenset[str]]) -> Element:
    number = _NUMBER.fullmatch(word)
    if number:
        low, high = number.group(2), number.group(3)
        return Element(kind=number.group(1), low=float(low or 0), high=float(high or 10_000))
    if word in ("<end>", "<break>"):
        return Element(kind=word[1:-1])
    if word.startswith("~"):
        kind = "sure" if word.startswith("~~") else "sound"
        return Element(frozenset(word.lstrip("~").split("|")), kind, known=groups.get("known", frozenset()))
    if "<" in word or ">" in word:
        if word[1:-1] not in groups:
            raise KeyError(word)
        return Element(words=groups[word[1:-1]])
    return Element(words=frozenset(word.split("|")))

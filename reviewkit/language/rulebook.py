"""Keyword rules at work: what they match in a sentence and the mentions they make."""

from __future__ import annotations

import bisect
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache

from reviewkit.language.needed import beginnings
from reviewkit.language.pieces import COMMA
from reviewkit.language.tokens import Sentence
from reviewkit.model import Mention

Value = str | int | float


@cache
def compiled(source: str) -> re.Pattern[str]:
    """A rule's pattern between word ends, compiled when it is first tried. 1.5 is one word, not two."""
    return re.compile(rf"(?<![\w'])(?<!\d\.)(?:{source})(?![\w'])(?!\.\d)")


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule. `source` is its pattern with classes inserted; `meanings` maps a group's name to what its
    spellings stand for. `need` and `begin` are words, see needed; without them it is tried everywhere."""

    name: str
    kind: str
    source: str
    value: Value | None = None
    need: frozenset[str] = frozenset()
    begin: frozenset[str] = frozenset()
    unit: str = ""
    mood: str = ""
    weight: float = 1.0
    meanings: dict[str, dict[str, Value]] = field(default_factory=dict)
    examples: tuple[str, ...] = ()
    counterexamples: tuple[str, ...] = ()

    @property
    def pattern(self) -> re.Pattern[str]:
        """The pattern between word ends."""
        return compiled(self.source)

    def matches(self, text: str, places: Sequence[int]) -> Iterator[re.Match[str]]:
        """Matches that say anything and do not overlap, begun at these places; anywhere if none are told."""
        pattern, end = self.pattern, 0
        if not places:
            yield from (match for match in pattern.finditer(text) if match.group())
        for at in places:
            if at >= end and (match := pattern.match(text, at)) and match.group():
                end = match.end()
                yield match

    def resolve(self, slot: Value | None, match: re.Match[str]) -> Value | None:
        """A literal as it is, "{group}" filled in; "$a|b" as what the first non-empty group's words mean."""
        if not isinstance(slot, str) or not slot.startswith("$"):
            return slot.format_map(match.groupdict()) if isinstance(slot, str) else slot
        group = next((name for name in slot[1:].split("|") if match.group(name)), None)
        if group is None:
            return None
        text = match.group(group)
        if text in self.meanings.get(group, {}):
            return self.meanings[group][text]
        digits = re.search(r"-?\d+(?:\.\d+)?", text)
        if not digits:
            return text
        number = float(digits.group())
        return int(number) if number.is_integer() else number


@dataclass(frozen=True, slots=True)
class RuleBook:
    """All rules in force, in file order."""

    rules: tuple[Rule, ...]
    needing: dict[str, frozenset[int]] = field(init=False, repr=False, compare=False)
    beginning: dict[str, frozenset[int]] = field(init=False, repr=False, compare=False)
    """Places of the rules that need a word, or begin with it; under "" of those that may do without any."""

    def __post_init__(self) -> None:
        object.__setattr__(self, "needing", _by_word([rule.need for rule in self.rules]))
        object.__setattr__(self, "beginning", _by_word([rule.begin for rule in self.rules]))

    def _matches(self, text: str) -> Iterator[tuple[Rule, re.Match[str]]]:
        """All that the rules find in a sentence's text, by rule in file order, then by place."""
        worth = frozenset().union(*(self.needing.get(word, ()) for word in ("", *text.split(" "))))
        tries: dict[int, list[int]] = {place: [] for place in worth & self.beginning[""]}
        for at, word in beginnings(text):
            for place in worth & self.beginning.get(word, frozenset()):
                tries.setdefault(place, []).append(at)
        for place in sorted(tries):
            rule = self.rules[place]
            for match in rule.matches(text, tries[place]):
                yield rule, match

    def mentions(self, sentences: Iterable[Sentence]) -> list[Mention]:
        """Mentions of all sentences in order of their first word."""
        found = [mention for sentence in sentences for mention in self.in_sentence(sentence)]
        return sorted(found, key=lambda mention: (mention.first, mention.last))

    def in_sentence(self, sentence: Sentence) -> list[Mention]:
        """Mentions of one sentence, overlaps within a kind resolved, masked ones dropped."""
        hits: list[tuple[float, int, int, Rule, re.Match[str]]] = []
        masks: list[tuple[int, int, str]] = []
        for rule, match in self._matches(sentence.text):
            start, end = match.span()
            if rule.kind == "mask":
                masks.append((start, end, f",{rule.value},"))
            else:
                hits.append((-rule.weight, start - end, start, rule, match))
        hits.sort(key=lambda hit: hit[:3])
        taken: dict[str, list[tuple[int, int]]] = {}
        mentions = []
        for _, _, _, rule, match in hits:
            start, end = match.span()
            spans = taken.setdefault(rule.kind, [])
            hidden = any(a < end and start < b and f",{rule.kind}," in kinds for a, b, kinds in masks)
            if hidden or any(a < end and start < b for a, b in spans):
                continue
            spans.append((start, end))
            mentions.append(_mention(rule, match, sentence))
        return mentions


def _by_word(sets: Sequence[frozenset[str]]) -> dict[str, frozenset[int]]:
    found: dict[str, set[int]] = {"": set()}
    for place, words in enumerate(sets):
        for word in words or ("",):
            found.setdefault(word, set()).add(place)
    return {word: frozenset(places) for word, places in found.items()}


def _mention(rule: Rule, match: re.Match[str], sentence: Sentence) -> Mention:
    starts = sentence.starts
    at, end = bisect.bisect_right(starts, match.start()) - 1, bisect.bisect_left(starts, match.end()) - 1
    if sentence.tokens[at].text == COMMA and at < end:
        # A comma belongs to the word before it, of which the mention does not speak.
        at += 1
    left, right = sentence.tokens[at], sentence.tokens[end]
    unit, mood = rule.resolve(rule.unit, match), rule.resolve(rule.mood, match)
    return Mention(
        kind=rule.kind,
        value=rule.resolve(rule.value, match),
        first=left.first,
        last=max(left.first, right.last),
        start_s=left.start_s,
        end_s=max(left.end_s, right.end_s),
        text=match.group(),
        unit=str(unit or ""),
        mood=str(mood or ""),
        rule=rule.name,
        weight=rule.weight,
    )

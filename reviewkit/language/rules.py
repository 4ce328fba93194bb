"""Keyword rules as data: `reviewkit/rules/*.toml`, and a user's own file that adds to them or overrides them.

A rules file holds named fragments under [classes] and a [[rule]] table a rule:

    [[rule]]
    name = "hole by number"            # unique; a user's rule of the same name replaces it, `off = true` drops it
    kind = "hole"                      # kind of the Mention it makes
    pattern = 'hole (?:number )?<n>'   # regular expression over a sentence's text; <name> inserts a class
    value = "$n"                       # a literal; "$a|b" the first non-empty group's meaning; "{n}I" a template
    need = ["hole"]                    # optional: words of which one must occur, so that most rules cost nothing
    unit = "", mood = "", weight = 1.0 # optional, see Mention; "$group" works for unit and mood too
    examples = ["hole 7 is a par 4"]   # sentences it must fire on, tests by themselves
    counterexamples = ["a hole in 1"]  # sentences it must not fire on

A class may be a table of spelling = value; then <name> matches any spelling and "$name" gives the value.
A sentence's text is lower case, numbers as digits, words and marks parted by one space. Matches begin and
end at word borders. Where rules of one kind overlap, the heavier wins, then the longer, then the earlier.
A rule of kind "mask" hides its words from every rule whose kind is listed in `value` (comma-separated).
"""

from __future__ import annotations

import bisect
import re
import tomllib
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path

from reviewkit.errors import CardError
from reviewkit.language.tokens import Sentence
from reviewkit.model import Mention

RULES = Path(__file__).parents[1] / "rules"
_FRAGMENT = re.compile(r"(?<!\?P)<([a-z_0-9]+)(?::([a-z_0-9]+))?>")
_KEYS = {
    "name",
    "kind",
    "pattern",
    "value",
    "need",
    "unit",
    "mood",
    "weight",
    "off",
    "examples",
    "counterexamples",
}


@dataclass(frozen=True, slots=True)
class Rule:
    """One compiled rule. `meanings` maps a group's name to what its spellings stand for."""

    name: str
    kind: str
    pattern: re.Pattern[str]
    value: str | int | float | None = None
    need: frozenset[str] = frozenset()
    unit: str = ""
    mood: str = ""
    weight: float = 1.0
    meanings: dict[str, dict[str, str | int | float]] = field(default_factory=dict)
    examples: tuple[str, ...] = ()
    counterexamples: tuple[str, ...] = ()

    def resolve(self, slot: str | int | float | None, match: re.Match[str]) -> str | int | float | None:
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
    """All rules in force, in file order. `words` are the user's own readings of words (see language/repair)."""

    rules: tuple[Rule, ...]

    def mentions(self, sentences: Iterable[Sentence]) -> list[Mention]:
        """Mentions of all sentences in order of their first word."""
        found = [mention for sentence in sentences for mention in self.in_sentence(sentence)]
        return sorted(found, key=lambda mention: (mention.first, mention.last))

    def in_sentence(self, sentence: Sentence) -> list[Mention]:
        """Mentions of one sentence, overlaps within a kind resolved, masked ones dropped."""
        words = frozenset(token.text for token in sentence.tokens)
        hits: list[tuple[float, int, int, Rule, re.Match[str]]] = []
        masks: list[tuple[int, int, str]] = []
        for rule in self.rules:
            if rule.need and rule.need.isdisjoint(words):
                continue
            for match in rule.pattern.finditer(sentence.text):
                if match.end() == match.start():
                    continue
                if rule.kind == "mask":
                    masks.append((match.start(), match.end(), f",{rule.value},"))
                else:
                    hits.append((-rule.weight, match.start() - match.end(), match.start(), rule, match))
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


def _mention(rule: Rule, match: re.Match[str], sentence: Sentence) -> Mention:
    starts = sentence.starts
    left = sentence.tokens[bisect.bisect_right(starts, match.start()) - 1]
    right = sentence.tokens[bisect.bisect_left(starts, match.end()) - 1]
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


@lru_cache(maxsize=8)
def load(user: Path | None = None) -> RuleBook:
    """The rules that ship with reviewkit, joined by a user's own file. Raises CardError naming the file."""
    tables = [(path, _parse(path)) for path in sorted(RULES.glob("*.toml"))]
    if user is not None:
        tables.append((user, _parse(user)))
    classes: dict[str, str | dict[str, str | int | float]] = {}
    rows: dict[str, tuple[Path, dict[str, object]]] = {}
    for path, table in tables:
        for name, fragment in table.get("classes", {}).items():
            known = classes.get(name)
            classes[name] = (
                {**known, **fragment} if isinstance(known, dict) and isinstance(fragment, dict) else fragment
            )
        for row in table.get("rule", []):
            _check(path, row)
            rows[row["name"]] = (path, row)
    return RuleBook(tuple(_compile(path, row, classes) for path, row in rows.values() if not row.get("off")))


def _parse(path: Path) -> dict[str, dict[str, dict[str, str | int | float]]]:
    try:
        data: dict[str, dict[str, dict[str, str | int | float]]] = tomllib.loads(
            path.read_text(encoding="utf-8")
        )
    except OSError as error:
        raise CardError(
            path, f"cannot be read ({error.strerror}).", "Check the name of the rules file."
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise CardError(path, f"is not valid TOML ({error}).", "Mend that line.") from error
    return data


def _check(path: Path, row: dict[str, object]) -> None:
    name = row.get("name")
    unknown = sorted(set(row) - _KEYS)
    if not isinstance(name, str) or unknown:
        raise CardError(
            path, f"rule {name or '(no name)'}: {', '.join(unknown) or 'needs a name'}.", "See docs/rules.md."
        )
    if not row.get("off") and not (isinstance(row.get("kind"), str) and isinstance(row.get("pattern"), str)):
        raise CardError(path, f"rule {name} needs a kind and a pattern.", "See docs/rules.md.")


def _compile(
    path: Path, row: dict[str, object], classes: dict[str, str | dict[str, str | int | float]]
) -> Rule:
    meanings: dict[str, dict[str, str | int | float]] = {}

    def fragment(found: re.Match[str]) -> str:
        name, alias = found.group(1), found.group(2) or found.group(1)
        if name not in classes:
            raise CardError(
                path,
                f"rule {row['name']} uses <{name}>, which no [classes] table defines.",
                "See docs/rules.md.",
            )
        body = classes[name]
        if isinstance(body, dict):
            meanings[alias] = body
            body = alternatives(body)
        else:
            body = _FRAGMENT.sub(fragment, body)
        return f"(?P<{alias}>{body})" if f"(?P<{alias}>" not in "".join(seen) else f"(?:{body})"

    seen: list[str] = []
    pattern = ""
    at = 0
    text = str(row["pattern"])
    for found in _FRAGMENT.finditer(text):
        seen.append(text[at : found.start()])
        seen.append(fragment(found))
        at = found.end()
    pattern = "".join([*seen, text[at:]])
    try:
        compiled = re.compile(rf"(?<![\w'])(?:{pattern})(?![\w'])")
    except re.error as error:
        raise CardError(
            path, f"rule {row['name']}: the pattern is not valid ({error}).", "Mend it."
        ) from error
    return Rule(
        name=str(row["name"]),
        kind=str(row["kind"]),
        pattern=compiled,
        value=row.get("value"),  # type: ignore[arg-type]
        need=frozenset(_texts(row.get("need"))),
        unit=str(row.get("unit", "")),
        mood=str(row.get("mood", "")),
        weight=float(str(row.get("weight", 1.0))),
        meanings=meanings,
        examples=_texts(row.get("examples")),
        counterexamples=_texts(row.get("counterexamples")),
    )


def _groups(slot: object) -> list[str]:
    """Names of the pattern's groups that a slot refers to."""
    if not isinstance(slot, str):
        return []
    return slot[1:].split("|") if slot.startswith("$") else re.findall(r"\{(\w+)\}", slot)


def _texts(value: object) -> tuple[str, ...]:
    return tuple(str(item) for item in value) if isinstance(value, list) else ()


def alternatives(words: Sequence[str] | dict[str, str | int | float]) -> str:
    """A regular expression for any of the spellings, longest first so that `sand wedge` beats `sand`."""
    return "|".join(re.escape(word).replace(r"\ ", " ") for word in sorted(words, key=len, reverse=True))

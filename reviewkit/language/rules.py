"""Keyword rules as data: `reviewkit/rules/*.toml`, and a user's own file that adds to them or overrides them.

A rules file holds named fragments under [classes] and a [[rule]] table a rule:

    [[rule]]
    name = "hole by number"            # unique; a user's rule of the same name replaces it,
    off = false                        # and true drops it
    kind = "hole"                      # kind of the Mention it makes
    pattern = 'hole (?:number )?<n>'   # over a sentence's text; a list: any of them; <name>: a class
    value = "$n"                       # a literal, a group's meaning, or a template such as "{n}I"
    need = ["iron"]                    # optional: words of which one must stand somewhere in the sentence
    unit = "", mood = "", weight = 1.0 # optional, see Mention; "$group" works for unit and mood too
    examples = ["hole 7 is a par 4"]   # sentences it must fire on, tests by themselves
    counterexamples = ["a hole in 1"]  # sentences it must not fire on

"$a|b" is the meaning of the first of these groups that is not empty. A class may be a table of spelling =
value; then <name> matches any spelling and "$name" gives the value.
A sentence's text is lower case, numbers as digits, words and marks parted by one space. Matches begin and
end at word borders. Where rules of one kind overlap, the heavier wins, then the longer, then the earlier.
A rule of kind "mask" hides its words from every rule whose kind is listed in `value` (comma-separated).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from reviewkit.errors import CardError
from reviewkit.language.needed import known
from reviewkit.language.rule_files import read, stamp
from reviewkit.language.rule_form import HELP, check_form, check_rule
from reviewkit.language.rulebook import Rule, RuleBook, Value, compiled

RULES = Path(__file__).parents[1] / "rules"
_FRAGMENT = re.compile(r"(?<!\?P)<([a-z_0-9]+)(?::([a-z_0-9]+))?>")
Classes = dict[str, str | dict[str, Value]]


def load(user: Path | None = None) -> RuleBook:
    """The rules that ship with reviewkit, joined by a user's own file. Raises CardError naming the file."""
    return _load(user, stamp(user))


@lru_cache(maxsize=8)
def _load(user: Path | None, changed: int) -> RuleBook:
    """`changed` is the user's file's time of change, so that a changed file is read again."""
    paths = sorted(RULES.glob("*.toml")) + ([user] if user is not None else [])
    classes: Classes = {}
    rows: dict[str, tuple[Path, dict[str, Any]]] = {}
    for path in paths:
        table = read(path)
        check_form(path, table)
        for name, fragment in table.get("classes", {}).items():
            if isinstance(fragment, dict):
                known = classes.get(name)
                classes[name] = {**known, **fragment} if isinstance(known, dict) else fragment
            else:
                classes[name] = _whole(fragment)
        for row in table.get("rule", []):
            check_rule(path, row)
            rows[row["name"]] = (path, row)
    return RuleBook(tuple(_compile(path, row, classes) for path, row in rows.values() if not row.get("off")))


def _compile(path: Path, row: Mapping[str, Any], classes: Classes) -> Rule:
    meanings: dict[str, dict[str, Value]] = {}
    used: set[str] = set()

    def insert(found: re.Match[str]) -> str:
        """The class's text, named at its first use so that `value` can refer to it."""
        name, alias = found.group(1), found.group(2) or found.group(1)
        if name not in classes:
            raise CardError(
                path, f"rule {row['name']} uses <{name}>, which no [classes] table defines.", HELP
            )
        body = classes[name]
        if isinstance(body, dict):
            meanings[alias] = body
            body = alternatives(body)
        else:
            body = _FRAGMENT.sub(insert, body)
        group = f"(?:{body})" if alias in used else f"(?P<{alias}>{body})"
        used.add(alias)
        return group

    source = _FRAGMENT.sub(insert, _whole(row["pattern"]))
    words = known(source)
    # A shipped rule of which something is known is compiled when it is first tried, and checked by the tests.
    if not any(words) or path.parent != RULES:
        _check(path, row, source)
    return Rule(
        name=row["name"],
        kind=row["kind"],
        source=source,
        value=row.get("value"),
        need=frozenset(row.get("need", ())) or words.need,
        begin=words.begin,
        unit=row.get("unit", ""),
        mood=row.get("mood", ""),
        weight=float(row.get("weight", 1.0)),
        meanings=meanings,
        examples=tuple(row.get("examples", ())),
        counterexamples=tuple(row.get("counterexamples", ())),
    )


def _check(path: Path, row: Mapping[str, Any], source: str) -> None:
    """Raise CardError where the pattern is none, or lacks a group that the rule refers to."""
    try:
        groups = compiled(source).groupindex
    except re.error as error:
        raise CardError(
            path, f"rule {row['name']}: the pattern is not valid ({error}).", "Mend it."
        ) from error
    wanted = {name for key in ("value", "unit", "mood") for name in groups_of(row.get(key))}
    if missing := sorted(wanted - set(groups)):
        raise CardError(path, f"rule {row['name']} has no group {', '.join(missing)}.", HELP)


def groups_of(slot: object) -> list[str]:
    """Names of the pattern's groups that a slot refers to."""
    if not isinstance(slot, str):
        return []
    return slot[1:].split("|") if slot.startswith("$") else re.findall(r"\{(\w+)\}", slot)


def _whole(pattern: str | list[str]) -> str:
    """One regular expression, which a file may hold as a list of its alternatives."""
    return pattern if isinstance(pattern, str) else "|".join(pattern)


def alternatives(words: Mapping[str, Value]) -> str:
    """A regular expression for any of the spellings, longest first so that `sand wedge` beats `sand`."""
    return "|".join(re.escape(word).replace(r"\ ", " ") for word in sorted(words, key=len, reverse=True))

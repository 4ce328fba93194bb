"""Loads the lexicon that ships with reviewkit, joined by a user's own rules file."""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from pathlib import Path
from typing import Any

from reviewkit.errors import CardError
from reviewkit.language.repair import Lexicon, Pattern, Repair, patterns
from reviewkit.language.rule_files import read, stamp

LEXICON = Path(__file__).parents[1] / "rules" / "lexicon.toml"
_COMPANY = ("before", "after", "not_before", "not_after", "near", "often")
_KEYS = {*_COMPANY, "heard", "meant", "swap", "below", "examples", "counterexamples"}


def load(user: Path | None = None) -> Lexicon:
    """The lexicon in force; a user's [spelling], [misheard], [group] and [[repair]] tables come first."""
    return _load(user, stamp(user))


@lru_cache(maxsize=8)
def _load(user: Path | None, changed: int) -> Lexicon:
    """`changed` is the user's file's time of change, so that a changed file is read again."""
    spelling: dict[str, str] = {}
    misheard: dict[str, str] = {}
    groups: dict[str, frozenset[str]] = {}
    repairs: dict[str, list[Repair]] = {}
    for path in (LEXICON, user):
        if path is not None:
            table = read(path)
            misheard |= {text: meant for text, meant in table.get("misheard", {}).items() if " " not in text}
            spelling |= table.get("spelling", {})
            for name, members in table.get("group", {}).items():
                groups[name] = groups.get(name, frozenset()) | _members(path, name, members, groups)
    for path in (LEXICON,) if user is None else (user, LEXICON):
        for row in _rows(read(path)):
            for entry in _compile(path, row, groups):
                for word in _openings(entry.heard):
                    repairs.setdefault(word, []).append(entry)
    return Lexicon(misheard | spelling, {word: tuple(entries) for word, entries in repairs.items()}, misheard)


def _rows(table: dict[str, Any]) -> list[dict[str, Any]]:
    """A file's repairs, and before them its misheard sayings of several words: "southern wood", a 7 wood."""
    sayings = {heard: meant for heard, meant in table.get("misheard", {}).items() if " " in heard}
    return [*([{"swap": sayings}] if sayings else []), *table.get("repair", [])]


def _openings(heard: Pattern) -> Iterable[str]:
    """Where `Lexicon.repairs` keeps an entry."""
    if heard[0].kind == "sure":
        return [f"~{word}" for word in heard[1].words]
    return ("~",) if heard[0].kind == "sound" else heard[0].words or ("",)


def _members(path: Path, name: str, members: list[str], groups: dict[str, frozenset[str]]) -> frozenset[str]:
    """A group's words; "<other>" takes in a group defined before it."""
    found: set[str] = set()
    for member in members:
        if member.startswith("<"):
            if member[1:-1] not in groups:
                raise CardError(
                    path, f"group {name} uses {member}, which is not defined above it.", "Move it up."
                )
            found |= groups[member[1:-1]]
        else:
            found.add(member)
    return frozenset(found)


def _compile(path: Path, row: dict[str, Any], groups: dict[str, frozenset[str]]) -> list[Repair]:
    unknown = sorted(set(row) - _KEYS)
    pairs = list(row.get("swap", {}).items())
    if "heard" in row and "meant" in row:
        heard = [row["heard"]] if isinstance(row["heard"], str) else row["heard"]
        pairs += [(text, row["meant"]) for text in heard]
    if unknown or not pairs or ("heard" in row) != ("meant" in row):
        problem = f"has {', '.join(unknown)}" if unknown else "needs heard and meant, or swap"
        raise CardError(path, f"a repair {problem}.", f"The keys are {', '.join(sorted(_KEYS))}.")
    _check_kept(path, pairs, groups)
    try:
        company = {key: _patterns(row.get(key, []), groups) for key in _COMPANY}
        return [
            Repair(
                name=f"{text} > {meant}",
                heard=heard_pattern,
                meant=tuple(re.findall(r"<[^>]*>|\S+", meant)),
                before=company["before"],
                after=company["after"],
                not_before=company["not_before"],
                not_after=company["not_after"],
                near=_words(company["near"]),
                often=_words(company["often"]),
                below=float(row.get("below", 1.1)),
            )
            for text, meant in pairs
            for heard_pattern in patterns(text, groups)
        ]
    except KeyError as error:
        problem = f"the repair of {pairs[0][0]} uses {error.args[0]}, which no [group] defines."
        raise CardError(path, problem, "Define it or correct its name.") from error


def _check_kept(path: Path, pairs: list[tuple[str, str]], groups: dict[str, frozenset[str]]) -> None:
    """ "<4>" keeps the fourth word heard: there must be one, whichever words are left out."""
    for text, meant in pairs:
        last = max((int(place) for place in re.findall(r"<(\d+)", meant)), default=0)
        fewest = sum(not word.endswith("?") for word in re.findall(r"<[^>]*>\??|\S+", text))
        if last > fewest:
            raise CardError(
                path,
                f"the repair of {text} keeps word {last} of {fewest}.",
                "Write what has fewer words apart.",
            )


def _words(listed: tuple[Pattern, ...]) -> frozenset[str]:
    return frozenset(word for pattern in listed for step in pattern for word in step.words)


def _patterns(texts: str | list[str], groups: dict[str, frozenset[str]]) -> tuple[Pattern, ...]:
    """Every pattern of a list, or of one text."""
    listed = [texts] if isinstance(texts, str) else texts
    return tuple(pattern for text in listed for pattern in patterns(text, groups))

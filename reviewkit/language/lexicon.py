"""Loads the lexicon that ships with reviewkit, joined by a user's own rules file."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any

from reviewkit.errors import CardError
from reviewkit.language.repair import Lexicon, Pattern, Repair, patterns

LEXICON = Path(__file__).parents[1] / "rules" / "lexicon.toml"
_LISTS = ("heard", "before", "after", "not_before", "not_after", "near")
_KEYS = {*_LISTS, "meant", "below", "examples", "counterexamples"}


def read(path: Path) -> dict[str, Any]:
    """One TOML file. Raises CardError naming it."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise CardError(
            path, f"cannot be read ({error.strerror}).", "Check the name of the rules file."
        ) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise CardError(path, f"is not valid TOML ({error}).", "Mend that line.") from error


@lru_cache(maxsize=8)
def load(user: Path | None = None) -> Lexicon:
    """The lexicon in force; a user's [spelling], [group] and [[repair]] tables come first."""
    spelling: dict[str, str] = {}
    groups: dict[str, frozenset[str]] = {}
    repairs: dict[str, list[Repair]] = {}
    for path in (LEXICON, user):
        if path is not None:
            table = read(path)
            spelling |= table.get("spelling", {})
            for name, members in table.get("group", {}).items():
                groups[name] = groups.get(name, frozenset()) | _members(path, name, members, groups)
    for path in (user, LEXICON):
        for row in read(path).get("repair", []) if path is not None else []:
            for entry in _compile(path, row, groups):
                for word in entry.heard[0].words or ("",):
                    repairs.setdefault(word, []).append(entry)
    return Lexicon(spelling, {word: tuple(entries) for word, entries in repairs.items()})


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
    name = str(row.get("meant", "(nothing meant)"))
    unknown = sorted(set(row) - _KEYS)
    if unknown or "heard" not in row or "meant" not in row:
        problem = (
            f"repair to '{name}' has {', '.join(unknown)}" if unknown else "a repair needs heard and meant"
        )
        raise CardError(path, f"{problem}.", f"The keys are {', '.join(sorted(_KEYS))}.")
    made: dict[str, tuple[Pattern, ...]] = {}
    for key in _LISTS:
        texts = row.get(key, [])
        try:
            made[key] = tuple(
                p for text in ([texts] if isinstance(texts, str) else texts) for p in patterns(text, groups)
            )
        except KeyError as error:
            raise CardError(
                path, f"repair to '{name}' uses <{error.args[0][1:-1]}>, which no [group] defines."
            ) from error
    near = frozenset(word for pattern in made["near"] for element in pattern for word in element.words)
    meant = tuple(int(word[1:-1]) - 1 if word.startswith("<") else word for word in name.split())
    return [
        Repair(
            name=name,
            heard=heard,
            meant=meant,
            before=made["before"],
            after=made["after"],
            not_before=made["not_before"],
            not_after=made["not_after"],
            near=near,
            below=float(row.get("below", 1.1)),
        )
        for heard in made["heard"]
    ]

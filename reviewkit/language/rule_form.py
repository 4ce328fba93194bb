"""Whether a rules file has the form that language/rules.py describes; a mistake is told by file and rule."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from reviewkit.errors import CardError
from reviewkit.model.values import CLUBS, MISSES

HELP = "See docs/rules.md."
_TEXTS = ("name", "kind", "unit", "mood")
_LISTS = ("need", "examples", "counterexamples")
_KEYS = {*_TEXTS, *_LISTS, "pattern", "value", "weight", "off"}
_VALUES = {"club": (*CLUBS, "same"), "miss": (*MISSES, "same")}
"""What a kind may be, where it is one of a few."""


def check_form(path: Path, table: Mapping[str, Any]) -> None:
    """Raise CardError unless [classes] holds fragments or spellings and [[rule]] is a list of tables."""
    classes, rules = table.get("classes", {}), table.get("rule", [])
    if not isinstance(classes, dict):
        raise CardError(path, "classes is not a table.", f"Begin it with [classes]. {HELP}")
    if not isinstance(rules, list) or not all(isinstance(row, dict) for row in rules):
        raise CardError(path, "rule is not a list of tables.", f"Begin each rule with [[rule]]. {HELP}")
    for name, fragment in classes.items():
        values = fragment.values() if isinstance(fragment, dict) else (fragment,)
        plain = all(isinstance(value, str | int | float) for value in values)
        if not (plain if isinstance(fragment, dict) else _is_pattern(fragment)):
            raise CardError(
                path,
                f"class {name} is neither a text, a list of texts nor a table of spelling = value.",
                HELP,
            )
        for value in values if name == "club" and isinstance(fragment, dict) else ():
            _check_value(path, "class club", "club", value)


def check_rule(path: Path, row: Mapping[str, Any]) -> None:
    """Raise CardError for a rule that lacks something, has a key that is not known or a value of no use."""
    name = row.get("name")
    unknown = ", ".join(sorted(set(row) - _KEYS))
    if not isinstance(name, str) or unknown:
        raise CardError(path, f"rule {name or '(no name)'}: {unknown or 'needs a name'}.", HELP)
    if not row.get("off") and not (isinstance(row.get("kind"), str) and _is_pattern(row.get("pattern"))):
        raise CardError(path, f"rule {name} needs a kind and a pattern.", HELP)
    wrong = [key for key in _TEXTS if not isinstance(row.get(key, ""), str)]
    wrong += [key for key in _LISTS if not _is_texts(row.get(key, []))]
    wrong += [] if isinstance(row.get("value", ""), str | int | float) else ["value"]
    wrong += [] if _is_number(row.get("weight", 1.0)) else ["weight"]
    if wrong:
        raise CardError(path, f"rule {name}: {', '.join(wrong)} cannot be read.", HELP)
    _check_value(path, f"rule {name}", row.get("kind", ""), row.get("value", ""))


def _check_value(path: Path, where: str, kind: str, value: object) -> None:
    """Raise CardError for a value, written out, that its kind does not know."""
    allowed, text = _VALUES.get(kind, ()), str(value)
    if allowed and text and not text.startswith("$") and "{" not in text and text not in allowed:
        raise CardError(path, f"{where}: '{text}' is no {kind}.", f"Write one of {', '.join(allowed)}.")


def _is_pattern(value: object) -> bool:
    """A regular expression, or a list of the alternatives that make one."""
    return isinstance(value, str) or (bool(value) and _is_texts(value))


def _is_texts(value: object) -> bool:
    return isinstance(value, list) and all(isinstance(text, str) for text in value)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)

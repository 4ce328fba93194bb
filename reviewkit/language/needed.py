"""What a rule's match needs and begins with, worked out beforehand: most are tried at few places or none.

`rules/needed.json` holds it by a mark of the whole pattern, classes inserted, so that a pattern which a
user's file changes is simply tried everywhere. `python -m tests.language.needs` writes the file.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

NEEDED = Path(__file__).parents[1] / "rules" / "needed.json"
DIGITS = "#"
"""Stands for every word that begins with a digit."""
_BEGINNING = re.compile(r"(?<![\w'])(?:[\w']+|[^\w\s'])")


class Known(NamedTuple):
    """Words of which every match has at least one, and those with which it begins; empty where not known."""

    need: frozenset[str]
    begin: frozenset[str]


def known(pattern: str) -> Known:
    """What is known of the matches of `pattern`."""
    row = _table().get(mark(pattern), {})
    return Known(frozenset(row.get("need", ())), frozenset(row.get("begin", ())))


def beginnings(text: str) -> Iterator[tuple[int, str]]:
    """Where in a text a match may begin, and the word or mark that stands there."""
    for found in _BEGINNING.finditer(text):
        word = found.group()
        yield found.start(), DIGITS if word[0].isdigit() else word


def mark(pattern: str) -> str:
    return hashlib.sha256(pattern.encode()).hexdigest()[:16]


@lru_cache(maxsize=1)
def _table() -> dict[str, dict[str, list[str]]]:
    table: dict[str, dict[str, list[str]]] = (
        json.loads(NEEDED.read_text(encoding="utf-8")) if NEEDED.exists() else {}
    )
    return table

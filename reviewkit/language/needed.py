"""Words without which a rule's pattern cannot match, worked out beforehand: most rules need no search at all.

`rules/needed.json` holds them by a mark of the whole pattern, classes inserted, so that a pattern which a
user's file changes is simply tried everywhere. `python -m tests.language.needs` writes the file.
"""

from __future__ import annotations

import hashlib
import json
from functools import lru_cache
from pathlib import Path

NEEDED = Path(__file__).parents[1] / "rules" / "needed.json"


def needed(pattern: str) -> frozenset[str]:
    """Words of which every match of `pattern` has at least one; empty where that is not known."""
    return frozenset(_table().get(mark(pattern), ()))


def mark(pattern: str) -> str:
    return hashlib.sha256(pattern.encode()).hexdigest()[:16]


@lru_cache(maxsize=1)
def _table() -> dict[str, list[str]]:
    table: dict[str, list[str]] = json.loads(NEEDED.read_text(encoding="utf-8")) if NEEDED.exists() else {}
    return table

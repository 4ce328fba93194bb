"""Teaching a word: a repair in the user's rules file, which every later reading obeys."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path

from reviewkit.errors import CardError, ValueRuleError
from reviewkit.files import write_text
from reviewkit.log import RoundFolder
from reviewkit.log.amendments import locked, plain

RULES_NAME = "rules.toml"
WORD = re.compile(r"[\w'-]+")


def rules_path(folder: RoundFolder) -> Path:
    """The rules file the round is read with; its own rules.toml when none was named."""
    named = str((folder.meta.get("settings") or {}).get("rules") or "")
    return Path(named) if named else folder.path / RULES_NAME


def teach(folder: RoundFolder, heard: str, meant: str) -> Path:
    """Add "always read `heard` as `meant`" to the rules file and return its path.

    Raises ValueRuleError without words, CardError for a file that is no TOML or cannot be written.
    """
    wrong, right = (" ".join(WORD.findall(plain(text).lower())) for text in (heard, meant))
    if not wrong or not right or wrong == right or len(wrong) + len(right) > 120:
        raise ValueRuleError("A rule needs the words as heard and other words that were meant.")
    path = rules_path(folder)
    entry = f"[[repair]]\nheard = {json.dumps(wrong, ensure_ascii=False)}\n"
    entry += f"meant = {json.dumps(right, ensure_ascii=False)}\n"
    with locked(folder):
        try:
            before = path.read_text(encoding="utf-8") if path.exists() else ""
            known = tomllib.loads(before).get("repair", [])
        except (OSError, ValueError) as error:
            raise CardError(path, f"cannot be read as rules ({error}).", "Mend it by hand.") from error
        if not any(row.get("heard") == wrong and row.get("meant") == right for row in known):
            gap = "\n" if before and not before.endswith("\n\n") else ""
            write_text(path, before + gap + entry)
    return path

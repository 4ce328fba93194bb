"""Reading rules files: one way to open them, and to see that one has changed."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from reviewkit.errors import CardError

_REMEDY = "Check the name of the rules file."


def read(path: Path) -> dict[str, Any]:
    """One TOML file. Raises CardError naming it."""
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except OSError as error:
        raise CardError(path, f"cannot be read ({error.strerror}).", _REMEDY) from error
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        raise CardError(path, f"is not valid TOML ({error}).", "Mend that line.") from error


def stamp(path: Path | None) -> int:
    """When a file was changed, in nanoseconds, to keep what was made of it until then; 0 for none."""
    try:
        return path.stat().st_mtime_ns if path is not None else 0
    except OSError as error:
        raise CardError(str(path), f"cannot be read ({error.strerror}).", _REMEDY) from error

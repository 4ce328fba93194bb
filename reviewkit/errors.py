"""Every error reviewkit raises on purpose.

A message names the thing, what is wrong with it and what to do. The command line prints it as one line
and exits 1; anything else that escapes is a bug.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any


class ReviewkitError(Exception):
    """Base of all told errors. `problem` is what is wrong, `remedy` what to do about it."""

    def __init__(self, problem: str, remedy: str = "") -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem} {remedy}".strip())

    def __reduce__(self) -> tuple[Any, ...]:
        # By default an exception is made anew from its message, which is not what these take.
        return _revived, (type(self), self.args, dict(self.__dict__))


class FileError(ReviewkitError):
    """A file or folder cannot be used; `path` is the one."""

    def __init__(self, path: Path | str, problem: str, remedy: str = "") -> None:
        self.path = Path(path)
        super().__init__(f"{path}: {problem}", remedy)


class SourceError(FileError):
    """Footage, sound or timed text that cannot be read."""


class CardError(FileError):
    """A course card, round.toml or rules file with a mistake in it."""


class FolderError(FileError):
    """A round folder that is missing, incomplete or written by another schema version."""


class ModelError(ReviewkitError):
    """No usable speech weights."""


class ValueRuleError(ReviewkitError, ValueError):
    """A value outside the documented set, raised by the model classes themselves."""


def _revived(kind: type[ReviewkitError], args: tuple[Any, ...], state: dict[str, Any]) -> ReviewkitError:
    """An error as another process raised it."""
    error = kind.__new__(kind, *args)
    error.__dict__.update(state)
    return error

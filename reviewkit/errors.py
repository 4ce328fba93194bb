"""Every error reviewkit raises on purpose.

A message names the thing, what is wrong with it and what to do. The command line prints it as one line
and exits 1; anything else that escapes is a bug.
"""

from __future__ import annotations

from pathlib import Path


class ReviewkitError(Exception):
    """Base of all told errors. `problem` is what is wrong, `remedy` what to do about it."""

    def __init__(self, problem: str, remedy: str = "") -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem} {remedy}".strip())


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

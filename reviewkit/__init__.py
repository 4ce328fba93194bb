"""Reads narrated golf footage into holes, strokes, scores and chapters, on your own machine."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reviewkit.log import RoundFolder

__version__ = "0.1.0"


def open_round(path: str | Path) -> RoundFolder:
    """The round folder at `path`; `.holes` and `.shots` are DataFrames. Raises FolderError."""
    from reviewkit.log import open_round as opened

    return opened(path)

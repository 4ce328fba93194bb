"""The clips that a round was read from, found again from its folder."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from reviewkit.errors import FolderError, SourceError
from reviewkit.footage.probe import probe
from reviewkit.footage.timeline import Clip, Timeline, join
from reviewkit.log import RoundFolder


def timeline_of(folder: RoundFolder, given: Sequence[Path] = ()) -> Timeline:
    """The round's clips on its timeline; `given` files, in their order, stand in for those it names.

    Raises FolderError when the round names no footage, SourceError when a file has moved or is no footage.
    """
    if given:
        return join(given)
    sources = folder.meta.get("sources") or []
    if not sources:
        raise FolderError(folder.path, "names no footage.", "Give it with --footage FILE.")
    return Timeline(tuple(_clip(folder.path, source) for source in sources))


def _clip(home: Path, source: dict[str, object]) -> Clip:
    path = home / str(source["path"])
    if not path.exists():
        raise SourceError(path, "has moved or gone.", "Give it with --footage FILE.")
    begin = float(str(source.get("in_s") or 0.0))
    length = float(str(source["duration_s"]))
    return Clip(probe(path), float(str(source["offset_s"])), begin, begin + length)

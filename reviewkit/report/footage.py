"""Footage that lies beside the round folder, as a page opened from disk can play it."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote

from reviewkit.log import RoundFolder

PROXIES = "proxies"
"""Folder of copies that a browser can play, named by the first sixteen signs of the footage's hash."""
NEAR = 2
"""How many folders up from the round folder still count as beside it."""


@dataclass(frozen=True, slots=True)
class Clip:
    """One file of the round's timeline: `url` relative to the round folder, from `start_s` to `end_s`.

    `in_s` is the second of the file at which it begins to count.
    """

    url: str
    start_s: float
    end_s: float
    in_s: float = 0.0


def clips_of(folder: RoundFolder) -> tuple[Clip, ...]:
    """The footage that is there, in order; a copy made for playing is taken before the original."""
    found: list[Clip] = []
    start_s = 0.0
    for source in folder.meta.get("sources") or ():
        start_s = float(source.get("offset_s") or start_s)
        end_s = start_s + float(source.get("duration_s") or 0.0)
        playable = proxy_path(folder, source)
        path = playable if playable.is_file() else source_path(folder, source)
        url = _relative(folder, path) if path is not None else None
        if url is not None:
            found.append(Clip(url, start_s, end_s, in_s(source)))
        start_s = end_s
    return tuple(found)


def in_s(source: dict[str, object]) -> float:
    """The second of a source at which it begins to count."""
    told = source.get("in_s")
    return float(told) if isinstance(told, int | float) else 0.0


def source_path(folder: RoundFolder, source: dict[str, object]) -> Path | None:
    """Where a source of round.json lies now, or None when it is gone."""
    told = str(source.get("path") or "")
    if not told or "\x00" in told:
        return None
    path = Path(told)
    spots = (path,) if path.is_absolute() else (folder.path / path, folder.path.parent / path)
    return next((spot for spot in spots if spot.is_file()), None)


def proxy_path(folder: RoundFolder, source: dict[str, object]) -> Path:
    """Where the copy of a source that a browser can play is kept."""
    name = "".join(mark for mark in str(source.get("sha256") or "")[:16] if mark.isalnum())
    return folder.path / PROXIES / f"{name or 'none'}.mp4"


def _relative(folder: RoundFolder, path: Path) -> str | None:
    told = os.path.relpath(path.resolve(), folder.path.resolve()).replace(os.sep, "/")
    return quote(told) if not os.path.isabs(told) and told.count("../") <= NEAR else None

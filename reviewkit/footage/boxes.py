"""The boxes that MP4 and QuickTime files are made of (ISO/IEC 14496-12): size, four-letter kind, body."""

from __future__ import annotations

import struct
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

MOST_HEADER = 256 << 20
"""Bytes of a movie header that are taken into memory; hours of footage need a hundredth of it."""


@dataclass(frozen=True, slots=True)
class Box:
    """A box in a file or in bytes: where it starts, where its body starts and where it ends."""

    kind: bytes
    start: int
    body: int
    end: int


def box(kind: bytes, *parts: bytes) -> bytes:
    """A box of less than 4 GB."""
    data = b"".join(parts)
    return struct.pack(">I4s", len(data) + 8, kind) + data


def full(kind: bytes, *parts: bytes, version: int = 0, flags: int = 0) -> bytes:
    """A box that begins with a version and flags."""
    return box(kind, struct.pack(">I", version << 24 | flags), *parts)


def inside(data: bytes, start: int = 0, end: int | None = None) -> Iterator[Box]:
    """The boxes of `data` between two places. Raises ValueError where they do not add up."""
    end = len(data) if end is None else end
    while start < end:
        found = _head(data[start : start + 16], start, end)
        yield found
        start = found.end


def outermost(path: Path) -> list[Box]:
    """The outermost boxes of a file. Raises ValueError where they do not add up."""
    size, start, found = path.stat().st_size, 0, []
    with path.open("rb") as source:
        while start < size:
            source.seek(start)
            found.append(_head(source.read(16), start, size))
            start = found[-1].end
    return found


def _head(head: bytes, start: int, limit: int) -> Box:
    if len(head) < 8:
        raise ValueError("a box is cut off")
    size, kind = struct.unpack(">I4s", head[:8])
    body = start + 8
    if size == 1:
        if len(head) < 16:
            raise ValueError("a box is cut off")
        size, body = struct.unpack(">Q", head[8:16])[0], start + 16
    # Size 0 means to the end of the file; nothing can follow such a box.
    if size < body - start or start + size > limit:
        raise ValueError(f"a box {kind!r} does not fit")
    return Box(kind, start, body, start + size)

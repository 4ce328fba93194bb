"""Chapters appended to an MP4 or QuickTime file: its bytes are copied, and a new header goes to the end.

The media stays byte for byte where it was, so every track keeps its place, whatever it holds. The old header
becomes free space. Chapters are written twice, as players want them: a text track that the other tracks refer
to (QuickTime File Format, chapter lists) and the short list `chpl`.
"""

from __future__ import annotations

import shutil
import struct
from collections.abc import Sequence
from pathlib import Path

from reviewkit.footage.boxes import MOST_HEADER, Box, box, full, inside, outermost

Mark = tuple[int, int, str]
"""Start and end of a chapter in milliseconds, and its title of 255 bytes at most."""
MATRIX = struct.pack(">9I", 0x10000, 0, 0, 0, 0x10000, 0, 0, 0, 0x40000000)
UTF8 = box(b"encd", b"\0\0\1\0")
# A text sample description with no style, and the media header that QuickTime wants for chapter text.
TEXT = b"\0\0\0\1" + bytes(22) + b"\0\1" + bytes(6) + b"\0\0\0\x0dftab\0\1\0\1\0"
GMIN = full(b"gmin", struct.pack(">6H", 0x40, 0x8000, 0x8000, 0x8000, 0, 0))
GMHD = box(b"gmhd", GMIN, box(b"text", struct.pack(">HIIIIIIIIH", 1, 0, 0, 0, 1, 0, 0, 0, 0x4000, 0)))
MOST_LISTED = 255


def header_of(path: Path) -> tuple[Box, bytes] | None:
    """The place and bytes of a file's movie header, or None when chapters cannot simply be appended: the
    file is of another kind, in fragments, or holds chapters already."""
    try:
        boxes = outermost(path)
        headers = [item for item in boxes if item.kind == b"moov"]
        if len(headers) != 1 or any(item.kind == b"moof" for item in boxes):
            return None
        place = headers[0]
        if place.end - place.start > MOST_HEADER or place.body != place.start + 8:
            return None
        with path.open("rb") as source:
            source.seek(place.start)
            data = source.read(place.end - place.start)
        kinds = {item.kind for item in inside(data, 8)}
    except ValueError:
        return None
    old = any(sign in data for sign in (b"chpl", b"chap"))
    return None if old or b"mvex" in kinds or b"mvhd" not in kinds else (place, data)


def append_chapters(source: Path, found: tuple[Box, bytes], marks: Sequence[Mark], out: Path) -> None:
    """Copy `source` to `out` with chapters; `found` is what `header_of` gave for it.

    Raises OSError when the copy fails and ValueError for a header that does not add up.
    """
    place, data = found
    samples = [_sample(title) for _, _, title in marks]
    shutil.copyfile(source, out)
    with out.open("rb+") as made:
        made.seek(0, 2)
        text_at = made.tell() + 8
        made.write(box(b"mdat", *samples))
        made.write(_header(data, marks, [len(item) for item in samples], text_at))
        made.seek(place.start + 4)
        made.write(b"free")


def _sample(title: str) -> bytes:
    text = title.encode("utf-8")
    return struct.pack(">H", len(text)) + text + UTF8


def _header(data: bytes, marks: Sequence[Mark], sizes: Sequence[int], text_at: int) -> bytes:
    """The old movie header with a chapter track, references to it and the short list."""
    parts = [(item.kind, data[item.start : item.end]) for item in inside(data, 8)]
    number = 1 + max((_track_number(part) for kind, part in parts if kind == b"trak"), default=0)
    scale = _time_scale(next(part for kind, part in parts if kind == b"mvhd"))
    made, has_user_data = [], False
    for kind, part in parts:
        if kind == b"mvhd":
            part = part[:-4] + struct.pack(">I", number + 1)
        elif kind == b"trak" and _handler(part) in (b"vide", b"soun"):
            part = _referring(part, number)
        elif kind == b"udta" and not has_user_data:
            part, has_user_data = box(b"udta", _short_list(marks), part[8:]), True
        made.append(part)
    made.append(_track(marks, sizes, text_at, number, scale))
    if not has_user_data:
        made.append(box(b"udta", _short_list(marks)))
    return box(b"moov", *made)


def _only(part: bytes, *path: bytes) -> bytes:
    """The body of a box within boxes. Raises ValueError when it is not there."""
    for name in path:
        item = next((item for item in inside(part, 8) if item.kind == name), None)
        if item is None:
            raise ValueError(f"no box {name!r}")
        part = part[item.start : item.end]
    return part[8:]


def _track_number(track: bytes) -> int:
    body = _only(track, b"tkhd")
    return int(struct.unpack_from(">I", body, 20 if body[0] else 12)[0])


def _time_scale(movie: bytes) -> int:
    return int(struct.unpack_from(">I", movie, 8 + (20 if movie[8] else 12))[0])


def _handler(track: bytes) -> bytes:
    return _only(track, b"mdia", b"hdlr")[8:12]


def _referring(track: bytes, number: int) -> bytes:
    """A track that refers to the chapter track, besides what it refers to already."""
    chapter = box(b"chap", struct.pack(">I", number))
    parts, found = [], False
    for item in inside(track, 8):
        part = track[item.start : item.end]
        if item.kind == b"tref":
            part, found = box(b"tref", part[8:], chapter), True
        parts.append(part)
    return box(b"trak", *parts, *([] if found else [box(b"tref", chapter)]))


def _short_list(marks: Sequence[Mark]) -> bytes:
    """`chpl`: times in units of 100 ns, a byte for the number of entries and for each title's length."""
    lines = []
    for start, _, title in marks[:MOST_LISTED]:
        text = title.encode("utf-8")
        lines.append(struct.pack(">QB", start * 10_000, len(text)) + text)
    return full(b"chpl", bytes(4), bytes([len(lines)]), *lines, version=1)


def _track(marks: Sequence[Mark], sizes: Sequence[int], text_at: int, number: int, scale: int) -> bytes:
    """The text track: a sample a chapter, in one chunk at `text_at`; not enabled, so that no player shows
    its text over the picture."""
    length = marks[-1][1]
    track = struct.pack(">QQIIQ", 0, 0, number, 0, length * scale // 1000)
    tkhd = full(b"tkhd", track, bytes(16), MATRIX, bytes(8), version=1)
    mdhd = full(b"mdhd", struct.pack(">QQIQHH", 0, 0, 1000, length, 0x55C4, 0), version=1)
    hdlr = full(b"hdlr", bytes(4), b"text", bytes(12), b"Chapters\0")
    dinf = box(b"dinf", full(b"dref", struct.pack(">I", 1), full(b"url ", flags=1)))
    entry = box(b"text", bytes(6), struct.pack(">H", 1), TEXT)
    lengths = b"".join(struct.pack(">II", 1, end - start) for start, end, _ in marks)
    stbl = box(
        b"stbl",
        full(b"stsd", struct.pack(">I", 1), entry),
        full(b"stts", struct.pack(">I", len(marks)), lengths),
        full(b"stsc", struct.pack(">4I", 1, 1, len(marks), 1)),
        full(b"stsz", struct.pack(">II", 0, len(marks)), *(struct.pack(">I", size) for size in sizes)),
        full(b"co64", struct.pack(">IQ", 1, text_at)),
    )
    return box(b"trak", tkhd, box(b"mdia", mdhd, hdlr, box(b"minf", GMHD, dinf, stbl)))

"""Files written whole or not at all, so that a killed run never leaves half of one."""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path

from reviewkit.errors import FileError


@contextlib.contextmanager
def whole(path: Path) -> Iterator[Path]:
    """Yield a temporary path beside `path`; on success it is synced and takes the name, on error it goes.

    The temporary name keeps the suffix, because writers such as ffmpeg choose the format by it.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".part-", suffix=path.suffix, dir=path.parent)
    except OSError as error:
        raise FileError(
            path, f"cannot be written ({error.strerror}).", "Choose a folder you may write to."
        ) from error
    os.close(handle)
    part = Path(name)
    try:
        yield part
        with part.open("rb+") as written:
            os.fsync(written.fileno())
        part.chmod(0o644)
        part.replace(path)
    except OSError as error:
        raise FileError(
            path, f"cannot be written ({error.strerror}).", "Free some space or choose another folder."
        ) from error
    finally:
        part.unlink(missing_ok=True)


def write_text(path: Path, text: str) -> None:
    """Write UTF-8 text with the line ends as given."""
    with whole(path) as part:
        part.write_text(text, encoding="utf-8", newline="")


def write_bytes(path: Path, data: bytes) -> None:
    with whole(path) as part:
        part.write_bytes(data)


def content_hash(path: Path) -> str:
    """sha256 of a file's content in hex, read in blocks of 1 MiB."""
    digest = hashlib.sha256()
    with path.open("rb") as source:
        while block := source.read(1 << 20):
            digest.update(block)
    return digest.hexdigest()

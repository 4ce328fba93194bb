"""The user's cache folder: joined weights, what was heard, cuts that were found. Safe to delete."""

from __future__ import annotations

import hashlib
import os
import sys
from pathlib import Path

from reviewkit.errors import FileError
from reviewkit.files import content_hash, write_text
from reviewkit.footage.probe import Media
from reviewkit.footage.sound import fingerprint


def cache_dir() -> Path:
    """$REVIEWKIT_CACHE, else the system's place for caches."""
    own = os.environ.get("REVIEWKIT_CACHE")
    if own:
        return Path(own).expanduser()
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches" / "reviewkit"
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA", str(Path.home()))) / "reviewkit" / "cache"
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "reviewkit"


def footage_hash(media: Media) -> str:
    """sha256 that tells footage by its content: of its sound track, or of the whole file when it is mute.

    It is kept, so that footage of many gigabytes is read for it only once; what is kept counts while the
    file's place, size and time of change (to the nanosecond) are the same. Raises FileError or SourceError
    when the file cannot be read.
    """
    path = media.path
    try:
        state = path.stat()
        tag = f"{path.resolve()}\n{state.st_size}\n{state.st_mtime_ns}\n{state.st_ino}\n{media.track}"
        kept = cache_dir() / "hashes" / hashlib.sha256(tag.encode()).hexdigest()[:32]
        if kept.is_file():
            return kept.read_text(encoding="ascii")
        found = content_hash(path) if media.track is None else fingerprint(path, media.track)
    except OSError as error:
        raise FileError(path, f"cannot be read ({error.strerror}).", "Check the file.") from error
    write_text(kept, found)
    return found

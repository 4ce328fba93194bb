"""The one place where seconds become text and text becomes seconds."""

from __future__ import annotations

import re

from reviewkit.errors import ReviewkitError

_CLOCK = re.compile(r"(?:(\d+):)?(\d{1,2}):(\d{1,2})(?:[.,](\d{1,9}))?$")


def clock(seconds: float) -> str:
    """`4:07` or `1:02:03`: whole seconds, rounded down, hours only when there are any."""
    whole = int(max(seconds, 0.0))
    hours, rest = divmod(whole, 3600)
    minutes, secs = divmod(rest, 60)
    return f"{hours}:{minutes:02d}:{secs:02d}" if hours else f"{minutes}:{secs:02d}"


def stamp(seconds: float, mark: str = ".") -> str:
    """`00:04:07.250`, as WebVTT (mark `.`) and SubRip (mark `,`) write it; milliseconds rounded."""
    millis = round(max(seconds, 0.0) * 1000)
    secs, millis = divmod(millis, 1000)
    minutes, secs = divmod(secs, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02d}:{minutes:02d}:{secs:02d}{mark}{millis:03d}"


def parse(text: str) -> float:
    """Seconds from `SS`, `SS.mmm`, `MM:SS`, `HH:MM:SS.mmm` or the comma form. Raises ReviewkitError."""
    found = _CLOCK.match(text.strip())
    if found:
        hours, minutes, secs, fraction = found.groups()
        return int(hours or 0) * 3600 + int(minutes) * 60 + int(secs) + float(f"0.{fraction or 0}")
    try:
        seconds = float(text)
    except ValueError:
        seconds = -1.0
    if not 0.0 <= seconds < float("inf"):
        raise ReviewkitError(f"'{text}' is not a time.", "Write seconds (75.5) or a clock time (1:15.5).")
    return seconds

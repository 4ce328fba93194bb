"""Seconds as frames, and frames as SMPTE time code, drop frame included (SMPTE ST 12-1)."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from reviewkit.errors import ReviewkitError
from reviewkit.log import RoundFolder

NTSC = {24: "23.976", 30: "29.97", 60: "59.94", 48: "47.952", 120: "119.88"}
USUAL = (*NTSC.values(), "24", "25", "30", "48", "50", "60", "100", "120")
DEFAULT = "25"
_STAMP = re.compile(r"(\d\d):(\d\d):(\d\d)[:;.](\d\d+)$")


@dataclass(frozen=True, slots=True)
class Rate:
    """`fps` frames a second, exactly; time code counts `nominal` a second and, with `drop`, leaves out the
    first numbers of each minute but every tenth, so that it keeps to the clock."""

    fps: Fraction
    nominal: int
    drop: bool = False

    def frame(self, seconds: float) -> int:
        """The frame nearest to `seconds`."""
        return round(Fraction(seconds).limit_denominator(1_000_000) * self.fps)

    def timecode(self, frame: int) -> str:
        """`01:02:03:04`, with a semicolon before the frames of drop-frame code."""
        if self.drop:
            frame += self._left_out(frame)
        seconds, frames = divmod(frame, self.nominal)
        minutes, seconds = divmod(seconds, 60)
        hours, minutes = divmod(minutes, 60)
        mark = ";" if self.drop else ":"
        return f"{hours % 24:02d}:{minutes:02d}:{seconds:02d}{mark}{frames:02d}"

    def parse(self, stamp: str) -> int:
        """The frame that a time code names. Raises ReviewkitError."""
        found = _STAMP.match(stamp)
        if not found:
            raise ReviewkitError(f"'{stamp}' is not a time code.", "Write it like 01:00:00:00.")
        hours, minutes, seconds, frames = map(int, found.groups())
        count = ((hours * 60 + minutes) * 60 + seconds) * self.nominal + frames
        if self.drop:
            whole = hours * 60 + minutes
            count -= self._per_minute * (whole - whole // 10)
        return count

    @property
    def _per_minute(self) -> int:
        return self.nominal // 15

    def _left_out(self, frame: int) -> int:
        dropped = self._per_minute
        minute = self.nominal * 60 - dropped
        ten = minute * 10 + dropped
        tens, rest = divmod(frame, ten)
        return tens * 9 * dropped + dropped * max((rest - dropped) // minute, 0)


def rate_of(text: str, folder: RoundFolder) -> Rate:
    """The rate asked for, or that of the round's first footage, or 25. Raises ReviewkitError.

    Text is a usual rate, `df` behind 29.97 or 59.94 for drop-frame code.
    """
    first: dict[str, Any] = next(iter(folder.meta.get("sources") or ()), {})
    drop = ";" in str(first.get("timecode") or "")
    if not text:
        text = _nearest(float(first.get("fps") or 0)) or DEFAULT
        if drop and text in ("29.97", "59.94"):
            text += "df"
    name, drop = text.removesuffix("df"), text.endswith("df")
    if name not in USUAL or (drop and name not in ("29.97", "59.94")):
        raise ReviewkitError(
            f"'{text}' is not a usual frame rate.", f"Choose {', '.join(USUAL)}, or 29.97df or 59.94df."
        )
    nominal = round(float(name))
    fps = Fraction(nominal * 1000, 1001) if name in NTSC.values() else Fraction(nominal)
    return Rate(fps, nominal, drop)


def _nearest(fps: float) -> str:
    """The usual rate within half a percent, which phones with uneven frames need; else empty."""
    best = min(USUAL, key=lambda name: abs(float(name) - fps))
    return best if abs(float(best) - fps) <= 0.005 * fps else ""

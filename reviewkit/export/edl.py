"""CMX 3600 edit decision list: an event a hole, markers as `LOC` comments.

The format is plain ASCII with three-digit events and eight-character reels. The record side starts at one
hour, as is usual; the source side counts the file's own time code when the camera wrote one.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from pathlib import Path

from reviewkit.export.base import Job
from reviewkit.export.frames import Rate
from reviewkit.export.markers import Marker, Piece, markers_of, pieces_of
from reviewkit.files import write_text

START_H = 1
MOST_EVENTS = 999


def write(job: Job, path: Path) -> Sequence[str]:
    rate, pieces = pieces_of(job)
    markers = markers_of(job)
    start = rate.parse(f"{START_H:02d}:00:00:00")
    title = plain(job.folder.path.resolve().name)
    fcm = "DROP FRAME" if rate.drop else "NON-DROP FRAME"
    events = [_event(number, piece, markers, rate, start) for number, piece in enumerate(pieces, 1)]
    write_text(path, f"TITLE: {title}\nFCM: {fcm}\n\n" + "\n".join(events))
    if len(pieces) > MOST_EVENTS:
        return [f"the list has {len(pieces)} events; the format counts {MOST_EVENTS}."]
    return ()


def _event(number: int, piece: Piece, markers: Sequence[Marker], rate: Rate, start: int) -> str:
    source = rate.timecode(piece.source_first), rate.timecode(piece.source_first + piece.last - piece.first)
    record = rate.timecode(piece.first + start), rate.timecode(piece.last + start)
    reel = f"CLIP{piece.source + 1:03d}"
    lines = [f"{number:03d}  {reel:<8} V     C        {' '.join((*source, *record))}"]
    name = piece.path.name if piece.path else piece.chapter.title
    lines.append(f"* FROM CLIP NAME:  {plain(name)}")
    for marker in markers:
        frame = rate.frame(marker.start_s)
        if piece.first <= frame < piece.last:
            at = rate.timecode(frame + start)
            lines.append(f"* LOC: {at} {marker.colour:<7} {plain(marker.name).upper()}")
    return "\n".join(lines) + "\n"


def plain(text: str) -> str:
    """Printable ASCII: accents fall off, anything else becomes `-`."""
    bare = unicodedata.normalize("NFKD", text)
    bare = "".join(sign for sign in bare if not unicodedata.combining(sign))
    return "".join(sign if " " <= sign <= "~" else "-" for sign in bare).strip() or "-"

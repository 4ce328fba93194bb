"""Contact sheet: the sharpest frame of each hole, four across, with hole and par below."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job
from reviewkit.export.chapters import chapters_of
from reviewkit.export.drawing import Text, pixels
from reviewkit.export.stills import stills_of
from reviewkit.files import whole
from reviewkit.timecode import clock

ACROSS, WIDE, HIGH, LINE, GAP = 4, 480, 270, 44, 16
PAPER, INK, QUIET = "#fbfaf5", "#1d2b26", "#5c6b64"


def write(job: Job, path: Path) -> Sequence[str]:
    from PIL import Image

    stills = stills_of(job)
    titles = {item.hole: item.title for item in chapters_of(job)}
    across = min(ACROSS, len(stills))
    down = ceil(len(stills) / across)
    size = (GAP + across * (WIDE + GAP), GAP + down * (HIGH + LINE + GAP))
    sheet = Image.new("RGBA", size, PAPER)
    for number, still in enumerate(stills):
        x = GAP + number % across * (WIDE + GAP)
        y = GAP + number // across * (HIGH + LINE + GAP)
        picture = fitted(still.frame)
        sheet.paste(picture, (x + (WIDE - picture.width) // 2, y + (HIGH - picture.height) // 2))
        title = titles.get(still.hole, f"Hole {still.hole}")
        labels = [
            Text(8, LINE / 2, title, 22, INK, "start"),
            Text(WIDE - 8, LINE / 2, clock(still.at_s), 22, QUIET, "end"),
        ]
        sheet.alpha_composite(pixels(labels, WIDE, LINE), (x, y + HIGH))
    with whole(path) as part:
        sheet.convert("RGB").save(part, format="JPEG", quality=88)
    return ()


def fitted(frame: Any) -> Any:
    """A frame as a Pillow picture no larger than a field of the sheet."""
    from PIL import Image

    picture = Image.fromarray(frame[:, :, ::-1])
    picture.thumbnail((WIDE, HIGH))
    return picture

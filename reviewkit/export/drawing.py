"""Boxes and text, drawn once and rendered as SVG or as pixels, so that a picture has one layout."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Literal
from xml.sax.saxutils import escape, quoteattr

from reviewkit.export.base import one_line

if TYPE_CHECKING:
    from PIL import Image, ImageFont

FONT = "DejaVu Sans, Verdana, sans-serif"
CORNERS = 3
"""Pixels drawn for each one kept, a side, so that edges come out smooth."""


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle with round corners; `fill` and `line` are #rrggbb or #rrggbbaa, empty for none."""

    x: float
    y: float
    wide: float
    high: float
    fill: str = ""
    line: str = ""
    radius: float = 0.0
    thick: float = 2.0


@dataclass(frozen=True, slots=True)
class Text:
    """One line whose middle is at height `y`; `at` says which point of it lies at `x`."""

    x: float
    y: float
    text: str
    size: float
    fill: str = "#000000"
    at: Literal["start", "middle", "end"] = "middle"
    bold: bool = False


Shape = Box | Text


def svg(shapes: Sequence[Shape], wide: int, high: int, title: str) -> str:
    """An SVG document with a title for screen readers."""
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{high}" '
        f'viewBox="0 0 {wide} {high}" role="img" font-family={quoteattr(FONT)}>\n'
        f"<title>{escape(one_line(title))}</title>\n"
    )
    return head + "".join(f"{_element(shape)}\n" for shape in shapes) + "</svg>\n"


def pixels(shapes: Iterable[Shape], wide: int, high: int) -> Image.Image:
    """The same as an RGBA picture, transparent where nothing is drawn."""
    from PIL import Image, ImageDraw

    boxes = [shape for shape in shapes if isinstance(shape, Box)]
    texts = [shape for shape in shapes if isinstance(shape, Text)]
    picture = Image.new("RGBA", (wide, high), (0, 0, 0, 0))
    for box in boxes:
        picture.alpha_composite(
            _smooth(box), (max(int(box.x - box.thick), 0), max(int(box.y - box.thick), 0))
        )
    draw = ImageDraw.Draw(picture)
    anchors = {"start": "lm", "middle": "mm", "end": "rm"}
    for text in texts:
        font = _font(round(text.size), text.bold)
        draw.text((text.x, text.y), one_line(text.text), text.fill, font, anchor=anchors[text.at])
    return picture


def _smooth(box: Box) -> Image.Image:
    from PIL import Image, ImageDraw

    left, top = max(int(box.x - box.thick), 0), max(int(box.y - box.thick), 0)
    size = (int(box.wide + 2 * box.thick) + 2, int(box.high + 2 * box.thick) + 2)
    large = Image.new("RGBA", (size[0] * CORNERS, size[1] * CORNERS), (0, 0, 0, 0))
    x, y = (box.x - left) * CORNERS, (box.y - top) * CORNERS
    ImageDraw.Draw(large).rounded_rectangle(
        (x, y, x + box.wide * CORNERS, y + box.high * CORNERS),
        radius=box.radius * CORNERS,
        fill=box.fill or None,
        outline=box.line or None,
        width=round(box.thick * CORNERS) if box.line else 0,
    )
    return large.resize(size, Image.Resampling.BOX)


@cache
def _font(size: int, bold: bool) -> ImageFont.FreeTypeFont:
    """DejaVu Sans, which matplotlib carries: free, and it has the signs of most languages."""
    import matplotlib
    from PIL import ImageFont

    name = "DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"
    return ImageFont.truetype(str(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / name), size)


def _element(shape: Shape) -> str:
    if isinstance(shape, Box):
        fill = f'fill="{shape.fill}"' if shape.fill else 'fill="none"'
        line = f' stroke="{shape.line}" stroke-width="{shape.thick:g}"' if shape.line else ""
        place = f'x="{shape.x:g}" y="{shape.y:g}" width="{shape.wide:g}" height="{shape.high:g}"'
        return f'<rect {place} rx="{shape.radius:g}" {fill}{line}/>'
    weight = ' font-weight="bold"' if shape.bold else ""
    place = f'x="{shape.x:g}" y="{shape.y:g}" font-size="{shape.size:g}"'
    look = f'fill="{shape.fill}" text-anchor="{shape.at}" dominant-baseline="central"{weight}'
    return f"<text {place} {look}>{escape(one_line(shape.text))}</text>"

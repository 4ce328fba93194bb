"""Drawing as text: SVG elements whose attributes and words are always escaped.

Colours are left to the style sheet by class, so that one drawing serves light, dark and print.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from markupsafe import Markup, escape

Attribute = str | int | float


def element(name: str, attributes: Mapping[str, Attribute], children: Iterable[Markup | str] = ()) -> Markup:
    """One element; an underscore in an attribute's name becomes a hyphen, floats get two decimals."""
    told = Markup("").join(
        Markup(' {}="{}"').format(key.replace("_", "-"), _number(value)) for key, value in attributes.items()
    )
    inside = Markup("").join(escape(child) for child in children)
    return Markup("<{}{}>{}</{}>").format(Markup(name), told, inside, Markup(name))


def line(kind: str, x1: float, y1: float, x2: float, y2: float) -> Markup:
    return element("line", {"class": kind, "x1": x1, "y1": y1, "x2": x2, "y2": y2})


def text(kind: str, x: float, y: float, words: str, anchor: str = "start") -> Markup:
    return element("text", {"class": kind, "x": x, "y": y, "text_anchor": anchor}, [words])


def circle(kind: str, x: float, y: float, radius: float, title: str = "") -> Markup:
    return element("circle", {"class": kind, "cx": x, "cy": y, "r": radius}, _title(title))


def rect(kind: str, x: float, y: float, width: float, height: float, title: str = "") -> Markup:
    shape: dict[str, Attribute] = {"class": kind, "x": x, "y": y, "width": max(width, 0.0), "height": height}
    return element("rect", shape, _title(title))


def path(kind: str, d: str, title: str = "") -> Markup:
    return element("path", {"class": kind, "d": d}, _title(title))


def steps(points: Iterable[tuple[float, float]]) -> str:
    """A path that goes right, then up or down, from point to point."""
    d = ""
    for x, y in points:
        d += f"H{x:.2f}V{y:.2f}" if d else f"M{x:.2f},{y:.2f}"
    return d


def curve(points: Iterable[tuple[float, float]]) -> str:
    """A path of straight lines through points."""
    return "".join(f"{'L' if place else 'M'}{x:.2f},{y:.2f}" for place, (x, y) in enumerate(points))


def drawing(
    width: float, height: float, label: str, children: Iterable[Markup], kind: str = "chart"
) -> Markup:
    """A whole drawing that scales with its place; `label` is its text alternative."""
    return element(
        "svg",
        {
            "class": kind,
            "viewBox": f"0 0 {_number(width)} {_number(height)}",
            "role": "img",
            "aria_label": label,
            "xmlns": "http://www.w3.org/2000/svg",
        },
        children,
    )


def _title(words: str) -> list[Markup]:
    return [element("title", {}, [words])] if words else []


def _number(value: Attribute) -> Attribute:
    return f"{value:.2f}".rstrip("0").rstrip(".") if isinstance(value, float) else value

"""Chapter titles from a template.

`{name}` stands for a field. A part in square brackets that holds a field is left out when that field is
not known: `Hole {hole}[ · par {par}]` gives `Hole 7 · par 4`, or `Hole 7` when the par is not known.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from reviewkit.errors import ReviewkitError

PLAIN = "Hole {hole}[ · par {par}]"
WITH_SCORE = "Hole {hole}[ · par {par}][ · {strokes}][ ({score})]"
FIELDS = ("hole", "par", "strokes", "to_par", "score", "running", "putts", "order")
UNKNOWN = "–"
_FIELD = re.compile(r"\{(\w+)\}")
_OPTIONAL = re.compile(r"\[([^\[\]]*\{\w+\}[^\[\]]*)\]")
_WORDS = {-3: "albatross", -2: "eagle", -1: "birdie", 0: "par", 1: "bogey"}
_WORDS |= {2: "double bogey", 3: "triple bogey"}


def fill(template: str, values: Mapping[str, str]) -> str:
    """The title. An empty or absent value is not known. Raises ReviewkitError for an unknown field."""
    for name in _FIELD.findall(template):
        if name not in FIELDS:
            raise ReviewkitError(
                f"the title template names '{{{name}}}'.", f"Its fields are: {', '.join(FIELDS)}."
            )

    def optional(found: re.Match[str]) -> str:
        names = _FIELD.findall(found[1])
        return found[1] if all(values.get(name) for name in names) else ""

    return _FIELD.sub(lambda found: values.get(found[1]) or UNKNOWN, _OPTIONAL.sub(optional, template))


def score_word(strokes: int, par: int) -> str:
    """The trade's word for a score: `birdie`, `double bogey`, `hole in one`, `+4`."""
    if strokes == 1:
        return "hole in one"
    return _WORDS.get(strokes - par, relative(strokes - par))


def relative(to_par: int) -> str:
    """`E`, `+3` or `-1`."""
    return f"{to_par:+d}" if to_par else "E"

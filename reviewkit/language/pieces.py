"""Words taken apart into the smallest pieces that mean something: spellings made one, marks made pieces.

A word as written may hold several pieces ("362-yard", "7-iron,") and a listener may write one as two words
("7", "-iron"); every piece remembers the words it came from.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from reviewkit.model import Word

ENDS = (".", "?", "!")
COMMA = ","
BREAKS = ("", COMMA, *ENDS)
"""What stands beside the words that begin or end something said; nothing at either end of the talk."""
_SIGNS = str.maketrans(
    {
        **dict.fromkeys("’‘ʼ`´", "'"),
        **dict.fromkeys("‐‑‒−", "-"),
        **dict.fromkeys("—–…;()[]", ", "),
        **dict.fromkeys('"“”«»*_~^=<>|{}\\♪£$', " "),
        "½": ".5",
        "¼": ".25",
        "¾": ".75",
        "°": " degree",
        "&": " and ",
        "%": " percent",
        "#": "number ",
    }
)
_FRACTIONS = (("1/2", ".5"), ("1/4", ".25"), ("3/4", "three-quarter"))
_THOUSANDS = re.compile(r"(?<=\d),(?=\d{2,3}\b)")
_INITIALS = re.compile(r"\b(?:[a-z]\.){2,}")
_DRAWN_OUT = re.compile(r"([a-z])\1{2,}")
_DROPPED_G = re.compile(r"([a-z]{2}in)'(?![a-z])")
""" "Fightin' the driver": a word of action as it is spoken."""
_PIECE = re.compile(
    r"\d{1,2}:\d\d|^,\d{3}\b|\d+(?:st|nd|rd|th)(?:'s)?\b|\d*\.\d+|\d+'?s\b|\d+"  # 1:43, 7th, 2.5, 70s
    r"|three-quarters?|[^\W\d]+(?:'[^\W\d]+)*"
    r"|[,.?!:/]+|[-+]"
)
_BEFORE_DASH = frozenset({"par", "hole", "number", "top", "stroke"})


@dataclass(slots=True)
class Piece:
    """`text` is lower case. `value` is a number's; `first` and `last` are word indices, both included.

    `joined`: hyphenated or glued to the piece before. `probability`: the lowest of its words.
    `heard`: the original words once a repair has changed them. `soft`: a full stop written as a comma.
    """

    text: str
    first: int
    last: int
    value: float | None = None
    joined: bool = False
    probability: float = 1.0
    heard: str = ""
    soft: bool = False

    def to(self, other: Piece, text: str, value: float | None = None) -> Piece:
        """One piece that covers this one and a later `other`."""
        lowest = min(self.probability, other.probability)
        return replace(self, text=text, value=value, last=other.last, probability=lowest)


def text_at(given: list[Piece], at: int) -> str:
    """The text of the piece at `at`, nothing beyond either end."""
    return given[at].text if 0 <= at < len(given) else ""


def digit_at(given: list[Piece], at: int) -> int:
    """The digit said there, 1 to 9; 0 where there is none."""
    if text_at(given, at) == "one":
        return 1
    value = given[at].value if 0 <= at < len(given) else None
    return int(value) if value is not None and value in range(1, 10) and given[at].text.isdigit() else 0


def pieces(words: tuple[Word, ...], spelling: Mapping[str, str]) -> list[Piece]:
    """Every word's pieces in order; `spelling` makes variants one ("meters" to "metres",
    "iron's" to "iron is")."""
    found: list[Piece] = []
    for index, word in enumerate(words):
        for text, joined in _split(word.text):
            for plain in spelling.get(text, text).split():
                _append(found, Piece(plain, index, index, None, joined, word.probability))
    return found


def _append(found: list[Piece], piece: Piece) -> None:
    """Add a piece, settling what only its neighbour tells: repeated marks, a score's sign."""
    before = found[-1] if found else None
    if piece.text in (COMMA, *ENDS):
        if before is None:
            return
        if before.text in (COMMA, *ENDS):
            before.text = piece.text if before.text == COMMA else before.text
            return
    if before is not None and before.text.isdigit() and re.fullmatch(r"\.\d+|,\d{3}", piece.text):
        # A listener's own word pieces: "4", ".7" and "6", ",740".
        before.text, before.last = before.text + piece.text.lstrip(","), piece.last
        return
    signed = piece.joined and piece.text[0].isdigit() and (before is None or before.last < piece.first)
    # "-6" alone is a score, while a listener's word pieces "par", "-4" and "4", "-6" are not.
    if signed and not (before and (before.text in _BEFORE_DASH or before.text[0].isdigit())):
        found.append(replace(piece, text="minus", joined=False))
        piece.joined = False
    found.append(piece)


def _split(text: str) -> Iterator[tuple[str, bool]]:
    """(piece, joined) for one word as written; a dash that stands alone is a comma."""
    text = text.strip()
    if text.isalpha() and text.isascii():
        yield _DRAWN_OUT.sub(r"\1", text.lower()), False
        return
    text = _THOUSANDS.sub("", text)
    if text == "1/2":
        yield "half", False
        return
    for mark, plain in _FRACTIONS:
        text = text.replace(mark, plain)
    text = text.translate(_SIGNS).replace("--", ", ").replace("...", ", ").lower().strip()
    text = _DROPPED_G.sub(r"\1g", text)
    if text == "-":
        text = COMMA
    text = _DRAWN_OUT.sub(r"\1", _INITIALS.sub(lambda found: found.group().replace(".", ""), text))
    end = -1
    for match in _PIECE.finditer(text):
        piece, start = match.group(), match.start()
        joined = start == end or (start > 0 and text[start - 1] == "-")
        end = match.end()
        if piece == "+":
            yield "plus", False
        elif piece[0] in ",.?!:/" and not piece[-1].isdigit():
            yield _mark(piece), False
        elif piece != "-":
            yield piece, joined


def _mark(marks: str) -> str:
    return next((end for end in "?!." if end in marks), COMMA)

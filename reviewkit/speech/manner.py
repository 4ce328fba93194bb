"""Ways to listen: how a speech model is asked for words."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Manner:
    """`beam` readings are followed at a time; `hinted` tells the model the words of the game beforehand."""

    name: str
    beam: int = 5
    hinted: bool = True


FIRST = Manner("first")
AGAIN = (Manner("wider", beam=10), Manner("unhinted", hinted=False))
"""For what stayed doubtful, in this order. They err in other places than the first: a wider search finds what
a narrow one dropped, and without the hint the model does not hear words of the game that were not said."""

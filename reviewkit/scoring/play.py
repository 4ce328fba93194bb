"""What the way a hole was played says of its par."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model import Mention, Shot
from reviewkit.model.values import IRONS, PARS, SMALL_UNITS, WEDGES

FAIRWAY = {3: 0.02, 4: 1.0, 5: 1.0, 6: 1.0}
"""How often the tee shot is told to end in the fairway, next to a par 4: a par 3 has none as a rule."""

NEAR_GREEN = {3: 1.0, 4: 0.06, 5: 0.01, 6: 0.01}
"""The same for a tee shot told to end on or beside the green."""

DRIVER = {3: 0.06, 4: 1.0, 5: 1.1, 6: 1.1}
"""The same for a driver from the tee."""

IRON = {3: 1.0, 4: 0.35, 5: 0.2, 6: 0.1}
"""The same for an iron or a wedge."""

LAID_UP = {3: 0.05, 4: 0.3, 5: 1.0, 6: 1.0}
"""The same for a second stroke told as a lay-up. All five are guesses, checked on invented rounds."""

_PUTTED = {"putt", "putts", "putter", "putt_for", "holed", "tap", "stayed_out"}
"""Kinds of mention that tell of a green."""


def par_of_play(shots: Sequence[Shot], mentions: Sequence[Mention]) -> dict[int, float]:
    """Likelihood of each par from the strokes told; even where they say nothing.

    A tee shot before putts that are but implied is on the green only where the `mentions` tell of one.
    """
    odds = dict.fromkeys(PARS, 1.0)
    if not shots or not shots[0].told or shots[0].kind != "tee":
        return odds
    first = shots[0]
    signs = []
    if first.result == "fairway":
        signs.append(FAIRWAY)
    if first.result in ("green", "fringe", "holed") and any(map(_at_green, mentions)):
        signs.append(NEAR_GREEN)
    if first.club == "D":
        signs.append(DRIVER)
    elif first.club in IRONS + WEDGES:
        signs.append(IRON)
    if any(shot.kind == "layup" and shot.told for shot in shots[1:3]):
        signs.append(LAID_UP)
    for sign in signs:
        odds = {par: share * sign[par] for par, share in odds.items()}
    return odds


def _at_green(mention: Mention) -> bool:
    if mention.kind == "distance":
        return mention.unit in SMALL_UNITS
    return mention.kind in _PUTTED or (mention.kind == "place" and mention.value in ("green", "fringe"))

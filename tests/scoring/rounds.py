"""Tales made by hand for the scoring tests."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from reviewkit.model import HoleSpan, HoleTale, Mention, Shot

HOLE_S = 100.0


def shot(
    hole: int, stroke: int, kind: str, at_s: float, result: str = "unknown", penalty: int = 0, lie: str = ""
) -> Shot:
    return Shot(
        hole,
        stroke,
        at_s,
        at_s + 5.0,
        kind,
        lie=lie,
        result=result,
        penalty_strokes=penalty,
        holed=result == "holed",
    )


def strokes(hole: int, count: int, begin_s: float = 0.0) -> tuple[Shot, ...]:
    """So many strokes ten seconds apart, the last of them holed."""
    kinds = ["tee", *["approach"] * (count - 1)]
    return tuple(
        shot(hole, k, kind, begin_s + 10.0 * k, "holed" if k == count else "rough")
        for k, kind in enumerate(kinds, 1)
    )


def said(
    kind: str,
    value: float,
    share: float = 0.95,
    hole: int = 1,
    mood: str = "",
    unit: str = "",
    weight: float = 1.0,
) -> Mention:
    """A claim made when `share` of the hole's time has passed."""
    at_s = HOLE_S * (hole - 1 + share)
    word = int(at_s)
    return Mention(kind, value, word, word, at_s, at_s + 1.0, f"{kind} {value}", unit, mood, weight=weight)


def tale(
    hole: int,
    counts: Mapping[int, float],
    par: int | None = 4,
    mentions: Sequence[Mention] = (),
    told: int | None = None,
    probability: float = 1.0,
) -> HoleTale:
    """A hole of a hundred seconds; `told` strokes are in the tale, the likeliest count when not given."""
    begin_s = HOLE_S * (hole - 1)
    count = told or max(counts, key=lambda k: counts[k])
    span = HoleSpan(
        hole, hole, begin_s, begin_s + HOLE_S, int(begin_s), int(begin_s + HOLE_S) - 1, True, probability
    )
    odds = {} if par is None else {par: 1.0}
    return HoleTale(span, strokes(hole, count, begin_s), odds, dict(counts), tuple(mentions))

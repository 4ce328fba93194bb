"""Why a person should look at a hole's score, in plain words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from reviewkit.model import Doubt, HoleScore, HoleTale, Mention
from reviewkit.scoring.standing import Claim
from reviewkit.scoring.witnesses import means_another

SURE = 0.82
"""A score or par less probable than this is worth a person's look; what else it may be is offered.

In invented rounds with known scores those between this and 0.9 came true as often as those above."""

SURE_AGAINST = 0.9
"""The same for a score that something said of the hole goes against."""

SURE_MISSTATED = 0.97
"""The same where a standing told in the hole's talk goes against the card: one of the two was misheard."""

PLACED = 0.3
"""The same for where a hole starts: of starts said to be 40% likely nearly all are right."""

PAR_SURE = 0.5
"""A score is not sure either where its par is less probable than this."""

WORTH_NAMING = 0.04
"""Readings less probable than this are not offered."""

ENOUGH, SURE_TOGETHER = 2, 0.75
"""Hearings that must be sure of a score, each by itself, and how probable it must be over all of them."""

NAMES = {
    -3: "albatross",
    -2: "eagle",
    -1: "birdie",
    0: "par",
    1: "bogey",
    2: "double bogey",
    3: "triple bogey",
}


@dataclass(frozen=True)
class Reading:
    """A hole as reconciled. `before` is the running score on its tee; the last two are probabilities."""

    tale: HoleTale
    par: int
    strokes: int
    before: int
    by_strokes: Mapping[int, float]
    by_par: Mapping[int, float]
    said: Sequence[Claim] = ()
    """Claims on the standing that the hole must meet."""

    @property
    def to_par(self) -> int:
        return self.strokes - self.par

    @cached_property
    def against(self) -> list[Doubt]:
        """Scores said of the hole that the reading goes against."""
        return _contradicted(self)

    @cached_property
    def misstated(self) -> list[Doubt]:
        """Standings said that do not fit the card before or after the hole."""
        return _misstated(self)

    @property
    def least(self) -> float:
        """How probable the score must be."""
        if self.misstated:
            return SURE_MISSTATED
        return SURE_AGAINST if self.against else SURE

    @property
    def sure(self) -> bool:
        """Whether nobody need look at the score."""
        return (
            self.by_strokes.get(self.strokes, 0.0) >= self.least
            and self.by_par.get(self.par, 0.0) >= PAR_SURE
            and self.tale.span.probability >= PLACED
        )


def doubts_of(reading: Reading) -> list[Doubt]:
    """The doubts of one hole, weightiest first."""
    found = [*_misplaced(reading), *_unsure(reading), *reading.against, *reading.misstated]
    return sorted(found, key=lambda doubt: -doubt.weight)


def over_hearings(
    score: HoleScore, odds: Mapping[int, float], hearings: Sequence[HoleScore]
) -> tuple[HoleScore, list[Doubt]]:
    """A score as sure as `odds` say, strokes -> probability over all `hearings`; with the doubt in that.

    Nobody need look at it where ENOUGH of them are sure of it and together they make it likely.
    """
    sure = odds.get(score.strokes or 0, 0.0)
    score = replace(score, confidence=round(sure, 3))
    alike = [heard for heard in hearings if (heard.status, heard.strokes) == ("sure", score.strokes)]
    borne_out = len(alike) >= min(ENOUGH, len(hearings)) and sure >= SURE_TOGETHER
    if score.status == "check" or borne_out:
        return score, []
    text = f"{score.strokes} strokes is {sure:.0%} likely: heard again, it sounds different."
    others = _others(odds, score.strokes or 0)
    doubt = Doubt(score.hole, score.start_s, text, weight=min(1.0, 1.1 - sure), alternatives=others)
    return replace(score, status="check", doubts=(*score.doubts, text)), [doubt]


def _misplaced(reading: Reading) -> list[Doubt]:
    """A hole whose start may lie elsewhere."""
    sure = reading.tale.span.probability
    if sure >= PLACED:
        return []
    text = f"that hole {reading.tale.span.hole} begins here is {sure:.0%} likely."
    return [_doubt(reading, text, "start_s", 0.9 * (1.0 - sure), ())]


def _unsure(reading: Reading) -> list[Doubt]:
    found = []
    sure = reading.by_strokes.get(reading.strokes, 0.0)
    if sure < reading.least:
        others = _others(reading.by_strokes, reading.strokes)
        text = f"{reading.strokes} strokes is {sure:.0%} likely: {_why_unsure(reading)}."
        found.append(_doubt(reading, text, "strokes", min(1.0, 1.1 - sure), others))
    par = reading.by_par.get(reading.par, 0.0)
    if par < SURE:
        text = f"par {reading.par} is {par:.0%} likely."
        found.append(_doubt(reading, text, "par", 0.9 * (1.0 - par), _others(reading.by_par, reading.par)))
    return found


def _why_unsure(reading: Reading) -> str:
    told = max(reading.tale.counts, key=lambda k: reading.tale.counts[k], default=None)
    if told not in (None, reading.strokes):
        return f"the strokes told make {told}"
    return "the talk leaves it open"


def _contradicted(reading: Reading) -> list[Doubt]:
    found = []
    for mention in reading.tale.mentions:
        if mention.mood or not isinstance(mention.value, int | float) or means_another(reading.tale, mention):
            continue
        value = int(mention.value)
        if mention.kind == "strokes" and value != reading.strokes:
            meant = f"{value}"
        elif mention.kind in ("score_word", "hole_to_par") and value != reading.to_par:
            meant = f"{NAMES.get(value, f'{value:+d}')}"
        else:
            continue
        text = f'said "{mention.text}" ({meant}), but read as {reading.strokes} on a par {reading.par}.'
        found.append(_doubt(reading, text, "strokes", 0.5, (), mention))
    return found


def _misstated(reading: Reading) -> list[Doubt]:
    found = []
    after = reading.before + reading.to_par
    for claim in reading.said:
        meant = (
            [reading.before]
            if claim.before > 0.9
            else [after]
            if claim.before < 0.1
            else [reading.before, after]
        )
        value = claim.mention.value
        if claim.mention.kind != "running" or value in meant or not isinstance(value, int | float):
            continue
        text = f'said "{claim.mention.text}" ({int(value):+d}), but the card makes it {meant[-1]:+d}.'
        found.append(_doubt(reading, text, "running_to_par", 0.4, (), claim.mention))
    return found


def _others(shares: Mapping[int, float], taken: int) -> tuple[str, ...]:
    likely = sorted(shares, key=lambda value: -shares[value])
    return tuple(str(value) for value in likely if value != taken and shares[value] >= WORTH_NAMING)


def _doubt(
    reading: Reading,
    text: str,
    field: str,
    weight: float,
    others: tuple[str, ...],
    mention: Mention | None = None,
) -> Doubt:
    return Doubt(
        hole=reading.tale.span.hole,
        at_s=mention.start_s if mention else reading.tale.span.start_s,
        text=text,
        words=mention.text if mention else "",
        weight=weight,
        field=field,
        alternatives=others,
    )

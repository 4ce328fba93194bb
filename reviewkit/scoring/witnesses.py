"""Which claims speak of a hole's score, how far each is trusted, and of which hole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from reviewkit.model import HoleTale, Mention
from reviewkit.scoring.moment import moment

RIGHT = {
    "strokes": 0.96,
    "score_word": 0.93,
    "hole_to_par": 0.9,
    "points": 0.85,
    "putt_for": 0.85,
    "count": 0.85,
}
"""How often a claim of a kind, as extracted, is about this player's hole and true."""

WALKING = {"strokes": 0.85, "score_word": 0.75}
"""How often a claim made before the hole's first stroke is of this hole; else it is of the one before."""

PAR_TOO = 0.15
"""How often a claim made before the first stroke is the score where its words may be the hole's par."""

FIRST = 0.97
"""The same where the round tells each hole's score before its strokes."""

OPENING = 25
"""Words from a hole's start in which such a score stands."""

TO_COME = {"stroke": 0.2, "putt": 0.3, "untold putt": 0.6}
"""How often what is claimed while strokes are still to come is the score, by the stroke that comes next."""

COUNTED = frozenset({"count", "putt_for"})
"""Kinds that rest on the tale of the strokes to come; they share its faults, and the last has the least."""

MOST_UNTOLD = 3
"""A count further ahead of the strokes told, penalties included, is none."""

TOLD_FIRST = 0.85
"""How often a number by itself before the first stroke, too large to count those to come, is the score."""

TOLD_LAST, SCORES = 0.85, range(2, 10)
"""How often a number by itself after the last stroke, one of SCORES, is the score: "no break, and three"."""

REPEATED = 0.6
"""What is left of a claim's error when it is said more than once: the same ears heard the same mouth."""

_LONE = "a number by itself"
"""The rule for a number that nothing is said beside."""

NAMES_THE_HOLE = 4
"""A number by itself that is the hole's, so few words from where it begins, names it."""

ABOUT_WITHIN = 1
"""Another hole's number belongs to the claim that ends at most so many words before it."""


@dataclass(frozen=True, slots=True)
class Witness:
    """A claim as evidence: `value` with strokes to come added, `right` how likely it is true.

    `here` is the probability that it is of the hole in whose talk it stands, not of the one before; `score`
    that it is one of the score at all.
    """

    kind: str
    value: int
    right: float
    here: float = 1.0
    score: float = 1.0


def witnesses(tale: HoleTale) -> list[Witness]:
    """The plain claims of a hole, each value of a kind once."""
    found: dict[tuple[str, int], Witness] = {}
    for mention in _plain(tale):
        new = _witness(tale, mention)
        key = (new.kind, new.value)
        old = found.get(key)
        if old is None:
            found[key] = new
            continue
        right = max(old.right, new.right)
        if mention.kind not in COUNTED:
            right = 1.0 - (1.0 - right) * REPEATED
        found[key] = Witness(new.kind, new.value, right, max(old.here, new.here), max(old.score, new.score))
    return list(found.values())


def _plain(tale: HoleTale) -> Iterator[Mention]:
    last = {m.kind: m for m in tale.mentions if m.kind in COUNTED and not m.mood and _countable(tale, m)}
    for mention in tale.mentions:
        if mention.mood or mention.kind not in RIGHT or not isinstance(mention.value, int | float):
            continue
        outlived = mention.kind in COUNTED and mention is not last.get(mention.kind)
        first = _told_first(tale, mention) or _putted_first(tale, mention) or _opens(tale, mention)
        if (first or not outlived) and not means_another(tale, mention):
            yield mention


def means_another(tale: HoleTale, mention: Mention) -> bool:
    """Whether the words of a claim are of another hole, name this one, or name a club that was hit."""
    return _elsewhere(tale, mention) or _names_the_hole(tale, mention) or _names_the_club(tale, mention)


def _names_the_hole(tale: HoleTale, mention: Mention) -> bool:
    """ "Seven. The tiddler, a hundred and twelve": no score of seven."""
    alone = mention.rule == _LONE and mention.value == tale.span.hole and not tale.span.score_first
    return alone and mention.first - tale.span.first < NAMES_THE_HOLE


def _names_the_club(tale: HoleTale, mention: Mention) -> bool:
    """ "I had eight here last week, so it's a seven today": no score of seven."""
    taken = {shot.club for shot in tale.shots if shot.club}
    return any(
        other.kind == "club" and not other.mood and other.value in taken and other.overlaps(mention)
        for other in tale.mentions
    )


def _countable(tale: HoleTale, mention: Mention) -> bool:
    """Whether a count can be one: before the first stroke, a number is the hole's or a club's."""
    if mention.kind != "count" or not isinstance(mention.value, int | float):
        return True
    begun = len(tale.shots) - moment(tale, mention).left
    return mention.value <= max(1, begun + MOST_UNTOLD)


def _alone(mention: Mention) -> bool:
    """A number with nothing to it, that counts strokes or is the score."""
    return mention.kind == "count" and mention.rule == _LONE


def _told_first(tale: HoleTale, mention: Mention) -> bool:
    """ "Seven. I'll spare you the details": no stroke's number, the first having been told of none."""
    return _alone(mention) and not _countable(tale, mention) and moment(tale, mention).walking


def _opens(tale: HoleTale, mention: Mention) -> bool:
    """ "Two! Did you hear that?": the score, where the round is told so."""
    if not tale.span.score_first or mention.first - tale.span.first >= OPENING:
        return False
    return mention.kind in WALKING or (_alone(mention) and mention.value in SCORES)


def _putted_first(tale: HoleTale, mention: Mention) -> bool:
    """ "Two putts from twenty foot for a three. And before that an eight-iron": nobody putts on a tee."""
    return mention.kind == "putt_for" and moment(tale, mention).walking and bool(tale.shots)


def _elsewhere(tale: HoleTale, mention: Mention) -> bool:
    """Whether the words just after a claim name another hole: "a double on the sixteenth"."""
    return any(
        other.kind == "about_hole" and other.value != tale.span.hole
        for other in tale.mentions
        if 0 <= other.first - mention.last <= ABOUT_WITHIN
    )


def _witness(tale: HoleTale, mention: Mention) -> Witness:
    kind, value = mention.kind, int(mention.value or 0)
    right = RIGHT[kind] * min(mention.weight, 1.0)
    when = moment(tale, mention)
    if _opens(tale, mention):
        alone = mention.rule == _LONE
        return Witness("strokes" if alone else kind, value, TOLD_FIRST if alone else right, FIRST)
    if _told_first(tale, mention):
        return Witness("strokes", value, TOLD_FIRST, WALKING["strokes"])
    if _putted_first(tale, mention):
        named = mention.unit or "score_word"
        return Witness(named, value, right, WALKING[named])
    if when.holed and _alone(mention) and value in SCORES:
        return Witness("strokes", value, RIGHT["strokes"], score=TOLD_LAST)
    if kind in COUNTED:
        to_come = mention.unit in ("lying", "on")
        value += when.left if to_come else max(when.unfinished - 1, 0)
        return Witness("strokes" if mention.unit else kind, value, right)
    if when.walking and not when.holed:
        return Witness(
            kind, value, right, WALKING.get(kind, 1.0), PAR_TOO if _par_too(tale, mention) else 1.0
        )
    done = when.holed or not tale.shots
    return Witness(kind, value, right, score=1.0 if done else TO_COME[_next(tale, mention)])


def _par_too(tale: HoleTale, mention: Mention) -> bool:
    """ "Sixth. It's a three": on the tee the same words tell the hole's par."""
    return mention.kind == "strokes" and any(
        other.kind == "par" and other.value == mention.value and other.overlaps(mention)
        for other in tale.mentions
    )


def _next(tale: HoleTale, mention: Mention) -> str:
    """What is told next: a stroke from off the green, or a putt."""
    shot = next((shot for shot in tale.shots if shot.start_s > mention.start_s), None)
    if shot is None or shot.kind != "putt":
        return "stroke"
    return "putt" if shot.told else "untold putt"

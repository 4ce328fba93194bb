"""From words to a round: the language, holes, shots and scoring rooms in order. No footage, no files."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from reviewkit.hearings import hearings, together
from reviewkit.holes import decode, from_tee, of_hole, pars
from reviewkit.language.silences import without_silences
from reviewkit.language.talk import read_talk
from reviewkit.model import (
    HoleSpan,
    HoleTale,
    Mention,
    Plan,
    Round,
    Shot,
    Talk,
    Transcript,
    Utterance,
    Word,
)
from reviewkit.model.fact import HoleFact
from reviewkit.model.values import SMALL_UNITS, YARDS_PER_METRE
from reviewkit.scoring import Reconciled, keep_card, reconcile
from reviewkit.shots import Telling, clubs_told_last, shots, tell
from reviewkit.shots.carried import as_carried
from reviewkit.shots.lone_numbers import with_clubs
from reviewkit.shots.reach import reach

_CARD_SAYS = 6.0
"""Weight of a par on the card against words, which weigh about one each."""
_PLAINLY, _BESIDE_WORDS = 1.0, 0.6
"""Where the words tell the par plainly, its length weighs less: forward tees are short."""
_OF_ITS_REACH = 0.55
"""The least of how far a club goes at most that it is taken for on a tee."""
_LENGTHS: tuple[tuple[float, dict[int, float]], ...] = (
    (200, {3: 0.7}),
    (240, {3: 0.6, 4: 0.3}),
    (260, {3: 0.4, 4: 0.5}),
    (370, {4: 0.7}),
    (420, {4: 0.65, 5: 0.3}),
    (450, {4: 0.6, 5: 0.4}),
    (490, {4: 0.5, 5: 0.5}),
    (math.inf, {5: 0.7}),
)
"""(shorter than this in yards, par -> weight), after the lengths that the Rules of Handicapping give for men
and women (Appendix F, 2020; from memory). The weights are guesses."""
_ENDED = ("place", "holed", "putt", "tap", "lie")
"""What is told once a ball was struck, as blows are; "this tee shot" and "you can drive it" come before."""
_LEAST = 90
"""Yards or metres of the shortest hole worth telling; a guess."""
_PLACES = 3
"""Other places of a hole that are read too."""
_BY_WORDS, _BY_LENGTH, _TOLD_LEAST = (3.0, 0.995), (2.0, 0.95), 0.7
"""How sharply the weights for each par count and how far they are known, where words of at least so much tell
it and where only a length does: of pars told in so many words in invented rounds hardly one was wrong."""
_PRIOR = {3: 0.12, 4: 0.3, 5: 0.12}


def reason(
    transcript: Transcript,
    plan: Plan,
    rules: Path | None = None,
    cuts: Sequence[float] = (),
    amendments: Sequence[HoleFact] = (),
) -> Round:
    """The round as an attentive listener would write it down, from all hearings of it.

    `rules` is a user's own rules file, `cuts` times of hard cuts in seconds, `amendments` what a person has
    confirmed, taken as certain. Raises CardError for a mistake in the rules file.
    """
    return together(
        {
            name: reason_talk(heard, read_talk(heard, plan, rules), plan, cuts, amendments)
            for name, heard in hearings(transcript)
        }
    )


def reason_talk(
    transcript: Transcript,
    talk: Talk,
    plan: Plan,
    cuts: Sequence[float] = (),
    amendments: Sequence[HoleFact] = (),
) -> Round:
    """The round as one hearing tells it, from talk already read."""
    spans = decode(talk, plan, cuts, amendments)
    units = plan.units or spoken_units(talk)
    words = without_silences(transcript.words)
    facts = facts_by_hole(spans, amendments)
    clubs_last = clubs_told_last(within(talk, span) for span in spans)
    tellings, tales = [], []

    def told(span: HoleSpan) -> tuple[Telling, HoleTale]:
        return _told(talk, span, plan, units, words, clubs_last)

    for span in spans:
        telling, tale = told(span)
        others = ((share, told(other)[1]) for share, other in elsewhere(talk, span))
        tellings.append(telling)
        tales.append(replace(tale, others=tuple(others)))
    settled = reconcile(tales, plan, facts)
    return _fitted(settled, tellings, spans, plan, units, words)


def _told(
    talk: Talk, span: HoleSpan, plan: Plan, units: str, words: Sequence[Word], clubs_last: bool
) -> tuple[Telling, HoleTale]:
    """What the talk of one hole's span tells."""
    spoken = within(talk, span)
    mentions = [mention for utterance in spoken for mention in utterance.mentions]
    odds = par_odds(mentions, plan, span.hole)
    telling = tell(span, spoken, likeliest(odds), clubs_last)
    likely = shots(telling, None, likeliest(odds), units, words)
    return telling, HoleTale(span, likely, odds, telling.counts, tuple(mentions))


def elsewhere(talk: Talk, span: HoleSpan) -> list[tuple[float, HoleSpan]]:
    """The likeliest spans of the hole that tell something else than its own, with their probability.

    Spans are alike where what one adds to the other has no mention in it.
    """
    telling = [utterance.first for utterance in talk if utterance.mentions]

    def told(first: int, last: int) -> tuple[int, int]:
        return bisect_left(telling, first), bisect_left(telling, last + 1)

    alike: dict[tuple[int, int], tuple[float, HoleSpan]] = {}
    for first, last, share in span.others:
        key = told(first, last)
        before, place = alike.get(key, (0.0, replace(span, first=first, last=last)))
        alike[key] = (before + share, place)
    alike.pop(told(span.first, span.last), None)
    return sorted(alike.values(), key=lambda other: -other[0])[:_PLACES]


def _fitted(
    settled: Reconciled,
    tellings: Sequence[Telling],
    spans: Sequence[HoleSpan],
    plan: Plan,
    units: str,
    words: Sequence[Word],
) -> Round:
    """Strokes chosen to agree with the settled scores, and the card's figures taken from them."""
    by_hole = {score.hole: score for score in settled.scores}
    played: list[Shot] = []
    scores = dict(by_hole)
    for telling in tellings:
        score = by_hole[telling.span.hole]
        hole = shots(telling, score.strokes, score.par, units, words)
        played.extend(replace(shot, confidence=round(shot.confidence * score.confidence, 3)) for shot in hole)
        scores[score.hole] = keep_card(score, hole)
    return Round(tuple(scores.values()), tuple(played), settled.doubts, tuple(spans), plan, settled.strokes)


def within(talk: Talk, span: HoleSpan) -> tuple[Utterance, ...]:
    """The utterances of one hole, clubs told by a lone number among their mentions."""
    told = [utterance for utterance in talk if span.first <= utterance.first <= span.last]
    return as_carried(with_clubs(told), talk)


def par_odds(mentions: Sequence[Mention], plan: Plan, hole: int) -> dict[int, float]:
    """Par -> probability by the card and the words; empty when neither says anything."""
    card = plan.card.hole(hole)
    weights = pars(mentions)
    if card is not None and card.par is not None:
        weights[card.par] = weights.get(card.par, 0.0) + _CARD_SAYS
    heaviest = max(weights.values(), default=0.0)
    said, told = heaviest >= _PLAINLY, heaviest >= _TOLD_LEAST
    for par, weight in _by_length(mentions, plan, said).items():
        weights[par] = weights.get(par, 0.0) + weight * (_BESIDE_WORDS if said else 1.0)
    if not weights:
        return {}
    power, known = _BY_WORDS if told else _BY_LENGTH
    most = max(weights.values()) if told else 1.0
    odds = {
        par: (weights.get(par, 0.0) / most) ** power + 0.02 * _PRIOR.get(par, 0.0) for par in _PRIOR | weights
    }
    total = sum(odds.values())
    return {par: known * share / total + (1.0 - known) / len(odds) for par, share in odds.items()}


def _by_length(mentions: Sequence[Mention], plan: Plan, par_told: bool) -> dict[int, float]:
    """What a hole's told length says of its par."""
    told = [mention for mention in mentions if of_hole(mention)]
    if not (told or par_told):
        told = _before_any_stroke(mentions)
    if not told:
        return {}
    yards = float(told[0].value or 0.0) * (YARDS_PER_METRE if "m" in (told[0].unit, plan.units) else 1.0)
    return next(shares for longest, shares in _LENGTHS if yards < longest)


def _before_any_stroke(mentions: Sequence[Mention]) -> list[Mention]:
    """A yardage that can only be the tee's, where the talk comes to one before it comes to a stroke."""
    goes = 0.0
    for mention in mentions:
        blow = mention.kind == "strike" and (mention.value != "tee" or goes > 0) and not mention.mood
        if blow or mention.kind in _ENDED:
            break
        if mention.kind == "club" and not mention.mood:
            goes = reach(str(mention.value)) or 0.0
        if mention.kind == "distance" and mention.unit not in SMALL_UNITS:
            plain = from_tee(mention) and isinstance(mention.value, int | float)
            # "3 wood. I've got 145": what the club left, and no hole's length.
            plain = plain and float(mention.value or 0.0) > goes * _OF_ITS_REACH
            return [mention] if plain and float(mention.value or 0.0) >= _LEAST else []
    return []


def likeliest(odds: Mapping[int, float]) -> int | None:
    return max(odds, key=lambda par: odds[par]) if odds else None


def spoken_units(talk: Talk) -> str:
    """ "m" when lengths are told in metres more often than in yards, else "yd"."""
    units = [
        mention.unit for utterance in talk for mention in utterance.mentions if mention.kind == "distance"
    ]
    return "m" if units.count("m") > units.count("yd") else "yd"


def facts_by_hole(spans: Sequence[HoleSpan], facts: Sequence[HoleFact]) -> dict[int, list[HoleFact]]:
    """Confirmed facts by the hole that holds their moment now, whatever its number was then."""
    found: dict[int, list[HoleFact]] = {}
    for fact in facts:
        holder = next((span for span in spans if span.start_s <= fact.at_s < span.end_s), None)
        found.setdefault(holder.hole if holder is not None else fact.hole, []).append(fact)
    return found

"""Several hearings of one talk, and one reading out of several.

Every hearing has an equal say, each read within the whole round. The holes' strokes are those that are
likeliest over all of them and best make the standings that they come to; what is sure of a hole's strokes
is no more than that mean. Of the hearings with these strokes the one is taken whose tale of them is most
like the others'; what it leaves open of a stroke they fill in.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, replace
from typing import Any

from reviewkit.model import Doubt, HoleScore, HoleSpan, Round, Segment, Shot, Transcript, Word
from reviewkit.scoring import keep_card
from reviewkit.scoring.doubts import over_hearings
from reviewkit.speech.manner import FIRST

SAME_PLACE_S = 25.0
"""A hole that begins this near in two hearings is the same."""
_Made = tuple[int, int]
"""A hole's strokes, and what it adds, with those untold before it, to the score against par."""
_TOLD = ("club", "lie", "distance_yd", "result", "miss", "contact")
"""What is told of a stroke; each is left open by the value that it has without a word of it."""
_UNLIKELY = 1e-3
"""No strokes of a hole are held less likely than this."""
_OFF = 0.2
"""So much of a hearing speaks for a standing that none of them comes to; set on invented rounds in wind."""
_OPEN: dict[str, Any] = {field.name: field.default for field in fields(Shot) if field.name in _TOLD}


def cut_out(
    segments: Sequence[Segment], span: tuple[float, float]
) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
    """The words whose middle lies in `span`, and the others, as segments."""
    inside: list[Segment] = []
    outside: list[Segment] = []
    for segment in segments:
        runs: list[tuple[bool, list[Word]]] = []
        for word in segment.words:
            within = span[0] <= (word.start_s + word.end_s) / 2 < span[1]
            if not runs or runs[-1][0] != within:
                runs.append((within, []))
            runs[-1][1].append(word)
        for within, words in runs:
            (inside if within else outside).append(Segment(tuple(words)))
    return tuple(inside), tuple(outside)


def hearings(transcript: Transcript) -> Iterator[tuple[str, Transcript]]:
    """The first hearing, and the round as its unclear stretches sound in each other manner."""
    first = replace(transcript, again=())
    yield FIRST.name, first
    for manner in dict.fromkeys(name for stretch in transcript.again for name in stretch.hearings):
        segments = first.segments
        for stretch in transcript.again:
            if manner in stretch.hearings:
                outside = cut_out(segments, (stretch.start_s, stretch.end_s))[1]
                segments = (*outside, *stretch.hearings[manner])
        yield manner, replace(first, segments=tuple(sorted(segments, key=lambda segment: segment.start_s)))


def together(readings: Mapping[str, Round]) -> Round:
    """One reading of the round out of those of its hearings, the first of which says what holes there are."""
    first = next(iter(readings.values()))
    if len(readings) == 1:
        return first
    scores, shots, doubts = list[HoleScore](), list[Shot](), list[Doubt]()
    found_in = {score.hole: _with(score, readings) for score in first.scores}
    odds = {
        hole: _mean([reading.odds[hole] for reading in found.values()]) for hole, found in found_in.items()
    }
    strokes = _likeliest(odds, found_in)
    taken, running = dict[int, str](), 0
    for score in first.scores:
        found = found_in[score.hole]
        name = taken[score.hole] = _fittest(score.hole, strokes[score.hole], found)
        tales = {other: _tale(reading, score.hole) for other, reading in found.items()}
        tale = filled(tales.pop(name), list(tales.values()))
        running += _added(found[name], score.hole)
        told = replace(_score(found[name], score.hole), play_order=score.play_order, running_to_par=running)
        heard = [_score(reading, score.hole) for reading in found.values()]
        told, more = over_hearings(keep_card(told, tale), odds[score.hole], heard)
        scores.append(told)
        shots += tale
        doubts += [*(doubt for doubt in found[name].doubts if doubt.hole == score.hole), *more]
    spans = tuple(_span(readings[name], hole) for hole, name in taken.items())
    return Round(_apart(scores), tuple(shots), tuple(doubts), spans, first.plan, odds=odds, taken=taken)


def filled(tale: Sequence[Shot], others: Sequence[Sequence[Shot]]) -> list[Shot]:
    """A hole's strokes, what is left open of one filled by the first of the other tales that tells it.

    Only a tale that counts the same strokes can, of a stroke of the same kind and end.
    """
    strokes = list(tale)
    for other in others:
        if len(other) == len(strokes):
            strokes = [_filled(shot, told) for shot, told in zip(strokes, other, strict=True)]
    return strokes


def _filled(shot: Shot, other: Shot) -> Shot:
    """`shot` with what only `other` tells, the words of both as its evidence."""
    new = {
        name: getattr(other, name)
        for name, nothing in _OPEN.items()
        if getattr(shot, name) == nothing != getattr(other, name)
    }
    if not (new and _same(shot, other)):
        return shot
    words = dict.fromkeys(text for text in (shot.evidence, other.evidence) if text)
    return replace(shot, evidence=" / ".join(words), **new)


def _same(shot: Shot, other: Shot) -> bool:
    """Whether nothing that is told of either speaks against their being the same stroke."""
    ended_alike = shot.result == other.result or _OPEN["result"] in (shot.result, other.result)
    alike = (shot.kind, shot.penalty_strokes, shot.holed) == (other.kind, other.penalty_strokes, other.holed)
    return alike and ended_alike


def _likeliest(
    odds: Mapping[int, Mapping[int, float]], found_in: Mapping[int, Mapping[str, Round]]
) -> dict[int, _Made]:
    """What each hole is played in: of what its hearings make of it, the likeliest round as a whole."""
    best: dict[int, tuple[float, tuple[_Made, ...]]] = {0: (0.0, ())}
    for hole, found in found_in.items():
        after = [_score(reading, hole).running_to_par for reading in found.values()]
        reached: dict[int, tuple[float, tuple[_Made, ...]]] = {}
        for running, (worth, path) in best.items():
            for made in dict.fromkeys(_made(reading, hole) for reading in found.values()):
                now = running + made[1]
                likely = max(odds[hole].get(made[0], 0.0), _UNLIKELY)
                borne_out = (after.count(now) + _OFF) / (len(after) + _OFF)
                whole = worth + math.log(likely) + math.log(borne_out)
                if now not in reached or whole > reached[now][0]:
                    reached[now] = (whole, (*path, made))
        best = reached
    return dict(zip(found_in, max(best.values(), key=lambda way: way[0])[1], strict=True))


def _made(reading: Round, hole: int) -> _Made:
    return _score(reading, hole).strokes or 0, _added(reading, hole)


def _fittest(hole: int, made: _Made, found: Mapping[str, Round]) -> str:
    """The hearing that makes this of the hole whose tale is most like the others', the first among equals."""
    tales = {name: _tale(reading, hole) for name, reading in found.items()}

    def fitness(name: str) -> tuple[bool, bool, int]:
        score = _score(found[name], hole)
        alike = sum(_alike(tales[name], tale) for other, tale in tales.items() if other != name)
        return _made(found[name], hole) == made, score.status == "sure", alike

    return max(found, key=fitness)


def _alike(one: Sequence[Shot], other: Sequence[Shot]) -> int:
    """In how much two tales of a hole agree, stroke by stroke; not at all where they count otherwise."""
    if len(one) != len(other):
        return 0
    return sum(
        getattr(mine, name) == getattr(theirs, name)
        for mine, theirs in zip(one, other, strict=True)
        for name in ("kind", *_TOLD)
    )


def _mean(shares: Sequence[Mapping[int, float]]) -> dict[int, float]:
    strokes = sorted(set().union(*shares))
    return {number: sum(share.get(number, 0.0) for share in shares) / len(shares) for number in strokes}


def _with(hole: HoleScore, readings: Mapping[str, Round]) -> dict[str, Round]:
    """The readings that find a hole where the first has it."""
    return {
        name: reading
        for name, reading in readings.items()
        if any(
            score.hole == hole.hole and abs(score.start_s - hole.start_s) <= SAME_PLACE_S
            for score in reading.scores
        )
    }


def _score(reading: Round, hole: int) -> HoleScore:
    return next(score for score in reading.scores if score.hole == hole)


def _span(reading: Round, hole: int) -> HoleSpan:
    return next(span for span in reading.spans if span.hole == hole)


def _tale(reading: Round, hole: int) -> list[Shot]:
    return [shot for shot in reading.shots if shot.hole == hole]


def _added(reading: Round, hole: int) -> int:
    """What a hole, with those untold before it, adds to the score against par."""
    before = 0
    for score in reading.scores:
        after = score.running_to_par or 0
        if score.hole == hole:
            return after - before
        before = after
    raise AssertionError("the reading has the hole")


def _apart(scores: Sequence[HoleScore]) -> tuple[HoleScore, ...]:
    """Holes of several hearings, each ended where the next begins at the latest."""
    ends = [*(score.start_s for score in scores[1:]), math.inf]
    return tuple(
        replace(score, end_s=max(min(score.end_s, end), score.start_s))
        for score, end in zip(scores, ends, strict=True)
    )

"""Doubtful holes are listened to again in other manners, and the hearing that fits the round is taken.

Every hearing has an equal say: a hole's strokes are those that are likeliest over all its hearings, each read
within the whole round, and what is sure of them is no more than that mean. A model that mishears a word in
one manner seldom mishears the same word in the next.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from reviewkit.model import HeardAgain, HoleScore, Round, Segment, Transcript, Word
from reviewkit.speech.manner import AGAIN, FIRST, Manner

LONGEST_S = 75.0
"""Talk that is heard again at most, in each manner: a hole or two. Beyond that a person is quicker."""
MARGIN_S = 3.0
"""Heard on either side, so that no word at the edge is cut."""
REACH_S = 2.0
"""How far from a hole's start or end its words may be parted from the next hole's."""

Span = tuple[float, float]
Read = Callable[[Transcript], Round]
Hear = Callable[[Sequence[Span], Manner], list[tuple[Segment, ...]]]


@dataclass(slots=True)
class _Hole:
    """A doubtful hole: where its words are parted from the rest, and what was heard there in each manner."""

    number: int
    span: Span
    hearings: dict[str, tuple[Segment, ...]]
    taken: str = FIRST.name
    odds: dict[int, float] = field(default_factory=dict)


def settle(transcript: Transcript, reading: Round, read: Read, hear: Hear) -> Transcript:
    """The transcript with its doubtful stretches as the fittest hearing has them, noted in its `again`.

    `reading` is how `read` reads the transcript; `hear` gives the words of spans of the round in a manner.
    """
    holes: dict[int, _Hole] = {}
    for manner in AGAIN:
        doubtful = [
            holes.setdefault(score.hole, _hole(transcript, score))
            for score in doubtful_holes(reading, transcript)
        ]
        spans = [(max(hole.span[0] - MARGIN_S, 0.0), hole.span[1] + MARGIN_S) for hole in doubtful]
        for hole, segments in zip(doubtful, hear(spans, manner) if spans else (), strict=True):
            hole.hearings[manner.name] = cut_out(segments, hole.span)[0]
            transcript, reading = _fittest(hole, transcript, reading, read)
    return replace(transcript, again=tuple(_note(holes[number]) for number in sorted(holes)))


def doubtful_holes(reading: Round, transcript: Transcript) -> list[HoleScore]:
    """The holes worth hearing again, the most doubtful first, as many as LONGEST_S of talk has room for."""
    found, left = [], LONGEST_S
    for score in sorted(reading.scores, key=lambda score: score.confidence):
        inside, _ = cut_out(transcript.segments, (score.start_s, score.end_s))
        talk = sum(segment.end_s - segment.start_s for segment in inside)
        if score.status == "check" and talk <= left:
            found.append(score)
            left -= talk
    return found


def cut_out(segments: Sequence[Segment], span: Span) -> tuple[tuple[Segment, ...], tuple[Segment, ...]]:
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


def _hole(transcript: Transcript, score: HoleScore) -> _Hole:
    words = transcript.words
    span = _pause_near(words, score.start_s), _pause_near(words, score.end_s)
    return _Hole(score.hole, span, {FIRST.name: cut_out(transcript.segments, span)[0]})


def _pause_near(words: Sequence[Word], at_s: float) -> float:
    """The middle of the longest pause within REACH_S of a moment, the moment itself where there is none."""
    pauses = [
        (after.start_s - word.end_s, (word.end_s + after.start_s) / 2)
        for word, after in pairwise(words)
        if after.start_s > word.end_s and abs((word.end_s + after.start_s) / 2 - at_s) <= REACH_S
    ]
    return max(pauses)[1] if pauses else at_s


def _fittest(hole: _Hole, transcript: Transcript, reading: Round, read: Read) -> tuple[Transcript, Round]:
    """The round with the hole as that hearing has it which says best what all hearings say together."""
    found = {hole.taken: (transcript, reading)}
    _, outside = cut_out(transcript.segments, hole.span)
    for name, segments in hole.hearings.items():
        if name not in found:
            other = replace(transcript, segments=_in_order((*outside, *segments)))
            read_so = read(other)
            if _keeps(reading, read_so, hole.number):
                found[name] = other, read_so
    shares = [read_so.odds[hole.number] for _, read_so in found.values()]
    odds = {s: sum(share.get(s, 0.0) for share in shares) / len(shares) for s in set().union(*shares)}

    def fit(name: str) -> tuple[float, bool, float]:
        score = _score(found[name][1], hole.number)
        strokes = score.strokes or 0
        return (
            odds.get(strokes, 0.0),
            score.status == "sure",
            found[name][1].odds[hole.number].get(strokes, 0.0),
        )

    hole.taken = max(found, key=fit)
    hole.odds = dict(sorted(odds.items()))
    return found[hole.taken]


def _keeps(before: Round, after: Round, number: int) -> bool:
    """Whether the same holes are found, and all others that were sure are so still, with the same score."""
    if [score.hole for score in before.scores] != [score.hole for score in after.scores]:
        return False
    return all(
        old.hole == number or old.status == "check" or (new.status, new.strokes) == ("sure", old.strokes)
        for old, new in zip(before.scores, after.scores, strict=True)
    )


def _score(reading: Round, number: int) -> HoleScore:
    return next(score for score in reading.scores if score.hole == number)


def _in_order(segments: Sequence[Segment]) -> tuple[Segment, ...]:
    return tuple(sorted(segments, key=lambda segment: segment.start_s))


def _note(hole: _Hole) -> HeardAgain:
    first = " ".join(word.text for segment in hole.hearings[FIRST.name] for word in segment.words)
    return HeardAgain(*hole.span, hole.taken, "" if hole.taken == FIRST.name else first, hole.odds)

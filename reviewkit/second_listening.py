"""What was unclear in a round is listened to again in other manners.

A model that mishears a word in one manner seldom mishears the same word in the next; `hearings` says what is
made of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from itertools import pairwise

from reviewkit.footage.cuts import Reach, merged
from reviewkit.hearings import cut_out
from reviewkit.model import HeardAgain, HoleScore, Round, Segment, Transcript, Word
from reviewkit.speech.manner import AGAIN, Manner

UNSURE, MANY = 0.5, 0.1
"""A hole was hard to hear where this share of its words is less probable than UNSURE."""
MARGIN_S = 3.0
"""Heard on either side, so that no word at the edge is cut."""
REACH_S = 2.0
"""How far from a hole's start or end its words may be parted from the next hole's."""

Span = tuple[float, float]
Hear = Callable[[Sequence[Span], Manner], list[tuple[Segment, ...]]]


def listen_again(transcript: Transcript, reading: Round, hear: Hear) -> Transcript:
    """The transcript with the other hearings of its unclear stretches in `again`.

    `reading` is how the transcript reads; `hear` gives the words of spans of the round in a manner.
    """
    words = transcript.words
    unclear = [_reach(words, score) for score in unclear_holes(reading, transcript)]
    # A stretch is cut as seldom as can be: words at its seams are lost more easily.
    spans = [(reach.start_s, reach.end_s) for reach in merged(unclear)]
    if not spans:
        return transcript
    heard: list[dict[str, tuple[Segment, ...]]] = [{} for _ in spans]
    wide = [(max(start - MARGIN_S, 0.0), end + MARGIN_S) for start, end in spans]
    for manner in AGAIN:
        for span, segments, hearings in zip(spans, hear(wide, manner), heard, strict=True):
            hearings[manner.name] = cut_out(segments, span)[0]
    again = tuple(HeardAgain(*span, hearings) for span, hearings in zip(spans, heard, strict=True))
    return replace(transcript, again=again)


def unclear_holes(reading: Round, transcript: Transcript) -> list[HoleScore]:
    """The holes worth hearing again: those to check, and those of many words that the model was unsure of."""
    words = transcript.words
    return [score for score in reading.scores if score.status == "check" or _hard_to_hear(words, score)]


def _hard_to_hear(words: Iterable[Word], score: HoleScore) -> bool:
    sure = [word.probability >= UNSURE for word in words if score.start_s <= word.start_s < score.end_s]
    return bool(sure) and sure.count(False) / len(sure) >= MANY


def _reach(words: Sequence[Word], score: HoleScore) -> Reach:
    return Reach(_pause_near(words, score.start_s), _pause_near(words, score.end_s))


def _pause_near(words: Sequence[Word], at_s: float) -> float:
    """The middle of the longest pause within REACH_S of a moment, the moment itself where there is none."""
    pauses = [
        (after.start_s - word.end_s, (word.end_s + after.start_s) / 2)
        for word, after in pairwise(words)
        if after.start_s > word.end_s and abs((word.end_s + after.start_s) / 2 - at_s) <= REACH_S
    ]
    return max(pauses)[1] if pauses else at_s

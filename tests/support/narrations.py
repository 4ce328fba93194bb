"""Invented narrations: lines of talk set to a clock, so that a test reads like what was said."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.model import Segment, Transcript, Word

WORD_S = 0.35
PAUSE_S = 0.4
BETWEEN_HOLES_S = 2.0
GREETING = "Morning everybody, and welcome back to the series."


def transcript(lines: Sequence[str], at: float = 0.5) -> Transcript:
    """Each line one segment, spoken at an even pace; an empty line is the silence between two holes.

    `at` is the second at which the talk begins.
    """
    segments = []
    for line in lines:
        words = []
        for word in line.split():
            words.append(Word(word, round(at, 3), round(at + 0.9 * WORD_S, 3)))
            at += WORD_S
        if words:
            segments.append(Segment(tuple(words)))
        at += PAUSE_S if words else BETWEEN_HOLES_S
    return Transcript(tuple(segments), duration_s=at)


def starts(lines: Sequence[str]) -> dict[str, float]:
    """Seconds at which each line begins."""
    spoken = [line for line in lines if line]
    return dict(zip(spoken, (s.start_s for s in transcript(lines).segments), strict=True))

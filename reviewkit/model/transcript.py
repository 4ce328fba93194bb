"""What was said: words with their times."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from reviewkit.errors import ValueRuleError
from reviewkit.model.values import between


@dataclass(frozen=True, slots=True)
class Word:
    """One spoken word as written, punctuation attached. Times in seconds on the round's timeline.

    `text` is what was heard. `meant` is what it reads where it was misheard, "" when its neighbour's reading
    takes it in, None for a word that is what it seems.
    """

    text: str
    start_s: float
    end_s: float
    probability: float = 1.0
    meant: str | None = None

    def __post_init__(self) -> None:
        between("probability", self.probability, 0.0, 1.0)
        if not 0.0 <= self.start_s <= self.end_s:
            raise ValueRuleError(f"word '{self.text}' runs from {self.start_s} to {self.end_s} s.")


@dataclass(frozen=True, slots=True)
class Segment:
    """Words that the listener or the timed text keeps together (a cue, a decoded stretch)."""

    words: tuple[Word, ...]

    @property
    def start_s(self) -> float:
        return self.words[0].start_s

    @property
    def end_s(self) -> float:
        return self.words[-1].end_s


@dataclass(frozen=True, slots=True)
class HeardAgain:
    """A stretch that was unclear and was listened to again. Times in seconds of the round.

    `hearings` is manner -> what was heard there in it, besides the first hearing.
    """

    start_s: float
    end_s: float
    hearings: Mapping[str, tuple[Segment, ...]]


@dataclass(frozen=True, slots=True)
class Transcript:
    """A whole round's words in time order. `model` names the weights, or the timed text's format.

    `segments` are what was heard first, `again` the stretches that were heard more than once.
    """

    segments: tuple[Segment, ...]
    model: str = ""
    language: str = "en"
    duration_s: float = 0.0
    settings: Mapping[str, str] = field(default_factory=dict)
    again: tuple[HeardAgain, ...] = ()

    @property
    def words(self) -> tuple[Word, ...]:
        return tuple(word for segment in self.segments for word in segment.words)

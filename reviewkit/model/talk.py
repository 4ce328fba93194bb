"""The talk cut into utterances, with what each of them mentions."""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.model.mention import Mention


@dataclass(frozen=True, slots=True)
class Utterance:
    """What is said in one go. `first` and `last` are word indices, both included; times in seconds.

    `gap_s` is the silence before it. `text` is the normalised text, `mentions` are in order of first word.
    """

    first: int
    last: int
    start_s: float
    end_s: float
    gap_s: float
    text: str
    mentions: tuple[Mention, ...] = ()


Talk = tuple[Utterance, ...]
"""A whole round's utterances in order of time."""

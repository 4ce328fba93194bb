"""What a person is told while a long read goes on."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from typing import Protocol


class Progress(Protocol):
    """Where stages tell how far they are."""

    def say(self, text: str) -> None:
        """A line about something that happens once."""

    def stage(self, title: str, total_s: float) -> AbstractContextManager[Callable[[float], None]]:
        """A stage of so many seconds of footage; within it, call with the seconds that are done."""


class Silence:
    """Progress that no one watches."""

    def say(self, text: str) -> None:
        pass

    def stage(self, title: str, total_s: float) -> AbstractContextManager[Callable[[float], None]]:
        return nullcontext(lambda done_s: None)

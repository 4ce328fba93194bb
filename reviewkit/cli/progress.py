"""Progress for a person: a bar with the time left on a terminal, plain lines otherwise. On standard error."""

from __future__ import annotations

import contextlib
import sys
import time
from collections.abc import Callable, Iterator

import click

from reviewkit.timecode import clock

_LINE_EVERY_S = 20.0


class Lines:
    """Plain lines, for logs and pipes: one now and then, with the share done and the time left."""

    def say(self, text: str) -> None:
        click.echo(text, err=True)

    @contextlib.contextmanager
    def stage(self, title: str, total_s: float) -> Iterator[Callable[[float], None]]:
        self.say(f"{title}: {clock(total_s)} of footage")
        began = last = time.monotonic()
        first: float | None = None

        def done(done_s: float) -> None:
            nonlocal last, first
            now = time.monotonic()
            if first is None:
                # What an earlier run has done took no time in this one.
                first = done_s
            if now - last >= _LINE_EVERY_S and total_s > 0 and done_s > first:
                last = now
                left = (total_s - done_s) * (now - began) / (done_s - first)
                self.say(f"{title}: {done_s / total_s:.0%}, about {clock(left)} left")

        yield done
        self.say(f"{title}: done in {time.monotonic() - began:.1f} s")


class Bars:
    """A bar a stage, drawn by rich."""

    def say(self, text: str) -> None:
        click.echo(text, err=True)

    @contextlib.contextmanager
    def stage(self, title: str, total_s: float) -> Iterator[Callable[[float], None]]:
        from rich.console import Console
        from rich.progress import BarColumn, Progress, TaskProgressColumn, TextColumn, TimeRemainingColumn

        columns = (TextColumn("{task.description}"), BarColumn(), TaskProgressColumn(), TimeRemainingColumn())
        with Progress(*columns, console=Console(stderr=True)) as shown:
            task = shown.add_task(title, total=total_s)

            def done(done_s: float) -> None:
                shown.update(task, completed=done_s)

            yield done


def progress() -> Lines | Bars:
    """Bars when standard error is a terminal, lines when it is not."""
    return Bars() if sys.stderr.isatty() else Lines()

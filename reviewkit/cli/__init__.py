"""The command line: arguments in, one call into the rooms, words out.

A command is one module of this folder with a click command named `command`, and one line in COMMANDS. The
modules load when they are called, so that `reviewkit --help` stays instant.
"""

from __future__ import annotations

import importlib
import sys

import click

from reviewkit import __version__
from reviewkit.errors import ReviewkitError

COMMANDS = {
    "read": "Read narrated footage, sound or timed text into a round folder.",
    "batch": "Read every round in a folder, here or on a Dask cluster.",
    "demo": "Make a short invented round and read it.",
    "doctor": "Say what is installed, what is missing and how to mend it.",
    "doubts": "List what a person should check, worst first.",
    "explain": "Show which words led to what, rule by rule.",
    "desk": "Confirm and correct a round on a local page.",
    "amend": "Correct a round from the command line.",
    "report": "Write a round's page anew, or one of a series.",
    "chapters": "Print the round's chapters, or write them into the footage.",
    "clips": "Cut holes, strokes and reels from the footage.",
    "export": "Write a round out for the video, the editor, the description and the sheet.",
    "stats": "Show where the strokes went in one round.",
    "series": "Show several rounds together: trends, what recurs, what to practise.",
}


class LazyGroup(click.Group):
    """Loads a command's module when the command is called; lists them from COMMANDS."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = importlib.import_module(f"reviewkit.cli.{cmd_name}").command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=LazyGroup, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="reviewkit")
def group() -> None:
    """Reads narrated golf footage into holes, strokes, scores and chapters, on your own machine."""


def main() -> None:
    """Entry point: 0 done, 1 a told error, 2 wrong usage."""
    try:
        group()
    except ReviewkitError as error:
        click.echo(f"reviewkit: {error}", err=True)
        sys.exit(1)

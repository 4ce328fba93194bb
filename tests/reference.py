"""docs/commands.md, the reference of the command line, made from its own help.

    python -m tests.reference

writes it anew; tests/test_docs.py fails when it does not agree with the commands.
"""

from __future__ import annotations

from pathlib import Path

import click

from reviewkit.cli import COMMANDS, group

PAGE = Path(__file__).parents[1] / "docs" / "commands.md"
HEAD = """# Commands

Made from the commands' own help by `python -m tests.reference`; do not edit.
"""


def reference() -> str:
    """The whole page: every command's help as it prints it, 100 columns wide."""
    return "\n".join([HEAD, *(f"## reviewkit {name}\n\n{_help(name)}" for name in COMMANDS)])


def _help(name: str) -> str:
    command = group.get_command(click.Context(group), name)
    assert command is not None
    with click.Context(
        command, info_name=f"reviewkit {name}", terminal_width=100, max_content_width=100
    ) as context:
        lines = command.get_help(context).splitlines()
    return "```text\n" + "\n".join(line.rstrip() for line in lines) + "\n```\n"


if __name__ == "__main__":
    PAGE.write_text(reference(), encoding="utf-8")

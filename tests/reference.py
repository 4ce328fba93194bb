"""What the docs show of the program, made by the program.

    python -m tests.reference           # docs/commands.md, from the commands' own help
    python -m tests.reference --demo    # and the README's output of the demo, by running it

tests/test_docs.py fails when docs/commands.md does not agree with the commands.
"""

from __future__ import annotations

import re
import subprocess
import sys
import tempfile
from pathlib import Path

import click

from reviewkit.cli import COMMANDS, group

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "docs" / "commands.md"
README = ROOT / "README.md"
SHOWN = re.compile(r"<!-- demo -->\n(?:```console\n.*?```\n)?", re.DOTALL)
HEAD = """# Commands

Made from the commands' own help by `python -m tests.reference`; do not edit.
"""


def reference() -> str:
    """The whole page: every command's help as it prints it, 100 columns wide."""
    return "\n".join([HEAD, *(f"## reviewkit {name}\n\n{_help(name)}" for name in COMMANDS)])


def _help(name: str) -> str:
    parent = click.Context(group, info_name="reviewkit", help_option_names=["-h", "--help"])
    command = group.get_command(parent, name)
    assert command is not None
    with click.Context(
        command, info_name=name, parent=parent, terminal_width=100, max_content_width=100
    ) as context:
        lines = command.get_help(context).splitlines()
    return "```text\n" + "\n".join(line.rstrip() for line in lines) + "\n```\n"


def demonstration() -> str:
    """The README's console block: the demo run in an empty folder, and the first looks at what it made."""
    with tempfile.TemporaryDirectory() as folder:
        shown = [
            *("$ reviewkit demo", _run(folder, "-m", "reviewkit", "demo"), ""),
            "$ cat reviewkit-demo/round/chapters/description.txt",
            Path(folder, "reviewkit-demo/round/chapters/description.txt").read_text("utf-8").rstrip(),
            *("", "$ reviewkit doubts reviewkit-demo/round"),
            _run(folder, "-m", "reviewkit", "doubts", "reviewkit-demo/round"),
        ]
    return "<!-- demo -->\n```console\n" + "\n".join(shown) + "\n```\n"


def _run(folder: str, *args: str) -> str:
    done = subprocess.run([sys.executable, *args], cwd=folder, stdout=subprocess.PIPE, text=True, check=True)
    return done.stdout.rstrip()


if __name__ == "__main__":
    PAGE.write_text(reference(), encoding="utf-8")
    if "--demo" in sys.argv:
        block = demonstration()
        README.write_text(SHOWN.sub(lambda _: block, README.read_text("utf-8")), encoding="utf-8")

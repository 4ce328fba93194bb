"""The docs say what is so: commands, options, extras, links and the README's set-up lines."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import click
import pytest

from reviewkit.cli import COMMANDS, group
from tests.reference import PAGE

ROOT = Path(__file__).parents[1]
PAGES = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").glob("*.md"))]
LINK = re.compile(r"\[[^\]]+\]\(([^)\s]+)\)")
CALL = re.compile(r"(?:^|[\s`/(])reviewkit ((?:-|[a-z])[^\n`|&;)]*)", re.MULTILINE)
CODE = re.compile(r"```[\s\S]*?```|`[^`\n]+`|^    .*$", re.MULTILINE)


def page_ids(path: Path) -> str:
    return path.name


def calls(path: Path) -> list[list[str]]:
    """Every call of the program that stands in code on the page, as its words."""
    code = "\n".join(CODE.findall(path.read_text(encoding="utf-8")))
    return [found.split() for found in CALL.findall(code)]


def anchors(path: Path) -> set[str]:
    """The anchors that a page's headings give, as code hosts make them."""
    heads = re.findall(r"^#+ (.+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}


def test_the_reference_agrees_with_the_commands() -> None:
    # In a process of its own, because a command keeps the help option of the group that ran it first.
    done = subprocess.run(
        [sys.executable, "-c", "from tests.reference import reference; print(reference(), end='')"],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        check=True,
    )
    assert PAGE.read_text(encoding="utf-8") == done.stdout, "refresh it: python -m tests.reference"


@pytest.mark.parametrize("path", PAGES, ids=page_ids)
def test_calls_name_commands_and_options_that_exist(path: Path) -> None:
    for words in calls(path):
        if words[0].startswith("-"):
            continue
        assert words[0] in COMMANDS, f"reviewkit {' '.join(words)}"
        command = group.get_command(click.Context(group), words[0])
        assert command is not None
        known = {option for param in command.params for option in (*param.opts, *param.secondary_opts)}
        for word in words[1:]:
            option = word.strip("[]…,.").partition("=")[0]
            if option.startswith("--"):
                assert option in known | {"--help"}, f"reviewkit {' '.join(words)}"


@pytest.mark.parametrize("path", PAGES, ids=page_ids)
def test_links_lead_somewhere(path: Path) -> None:
    for target in LINK.findall(path.read_text(encoding="utf-8")):
        if "://" in target or target.startswith("mailto:"):
            continue
        file, _, anchor = target.partition("#")
        linked = (path.parent / file).resolve() if file else path
        assert linked.exists(), target
        if anchor:
            assert anchor in anchors(linked), target


def test_every_page_is_reached_from_the_index_and_every_command_from_the_readme() -> None:
    index = (ROOT / "docs" / "index.md").read_text(encoding="utf-8")
    linked = {target.partition("#")[0] for target in LINK.findall(index)}
    assert {page.name for page in (ROOT / "docs").glob("*.md")} - {"index.md"} <= linked
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert [name for name in COMMANDS if f"reviewkit {name}" not in readme] == []


def test_the_readme_has_two_set_up_lines_that_use_what_there_is() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = re.findall(r"^ *(python3 -m venv .*)$", readme, re.MULTILINE)
    assert len(lines) == 2
    for line in lines:
        environment = line.split()[3]
        assert all(part.split()[0].startswith(f"{environment}/bin/") for part in line.split(" && ")[1:])
        extras = re.search(r"\.\[([\w,-]+)\]", line)
        assert extras and set(extras[1].split(",")) <= set(project["optional-dependencies"])
    assert lines[0].endswith("reviewkit demo") and lines[1].endswith("pytest")
    # .ci/run takes the second line from the README and runs it; it finds it by these words.
    assert "python3 -m venv \\.venv-test" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


@pytest.mark.parametrize("path", PAGES, ids=page_ids)
def test_pages_name_no_machine(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert not re.search(r"(?<![\w.])/(?:home|work|tmp|root|Users)/", text)

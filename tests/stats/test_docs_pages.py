"""The statistics page lists what there is, and the Python page runs.

    python tests/stats/test_docs_pages.py

writes the list of figures on the statistics page anew.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from support.truth import load, save_truth, truth_files

from reviewkit.stats import STATISTICS
from reviewkit.stats.registry import chosen

DOCS = Path(__file__).parents[2] / "docs"
START, END = "## Every figure\n\n", "\n## Strokes gained\n"


def listing() -> str:
    """The table of figures from the registry, in the order in which they are shown."""
    head = "| name | figure | unit | definition | source |\n|---|---|---|---|---|\n"
    rows = (f"| `{s.name}` | {s.label} | {s.unit} | {s.definition} | {s.source} |\n" for s in chosen(()))
    return head + "".join(rows)


def between() -> tuple[str, str, str]:
    text = (DOCS / "statistics.md").read_text(encoding="utf-8")
    before, rest = text.split(START)
    table, after = rest.split(END)
    return before + START, table, END + after


def test_the_page_lists_every_statistic() -> None:
    assert between()[1] == listing(), "refresh it: python tests/stats/test_docs_pages.py"
    assert len(listing().splitlines()) == len(STATISTICS) + 2


def test_the_python_page_runs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    targets = [path for path in truth_files() if load(path)["target"] is not None]
    save_truth(targets[0], tmp_path / "saturday")
    for path in truth_files():
        save_truth(path, tmp_path / "season" / load(path)["id"])
    blocks = re.findall(
        r"^```python\n(.*?)^```$", (DOCS / "python.md").read_text(encoding="utf-8"), re.M | re.S
    )
    assert len(blocks) >= 6
    monkeypatch.chdir(tmp_path)
    names: dict[str, object] = {}
    for block in blocks:
        exec(compile(block, "docs/python.md", "exec"), names)


if __name__ == "__main__":
    before, _, after = between()
    (DOCS / "statistics.md").write_text(before + listing() + after, encoding="utf-8")

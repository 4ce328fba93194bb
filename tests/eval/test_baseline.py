"""The reading of our own invented rounds must not get worse than the figures kept in baseline/FOLDER.json.

After a change for the better, keep the new figures:

    python -m tests.eval fixtures/FOLDER --level clean,asr --json tests/eval/baseline/FOLDER.json
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.eval.__main__ import run_level
from tests.eval.rounds import find_cases
from tests.eval.score import figures, shares

FIXTURES = Path(__file__).parents[2] / "fixtures"
BASELINES = sorted((Path(__file__).parent / "baseline").glob("*.json"))


@pytest.mark.parametrize("level", ["clean", "asr"])
@pytest.mark.parametrize("baseline", BASELINES, ids=lambda path: path.stem)
def test_no_figure_drops(
    baseline: Path, level: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    cases = find_cases(FIXTURES / baseline.stem, level)
    assert len(cases) >= 4
    checks = run_level(cases, level, tmp_path)
    assert capsys.readouterr().err == "", "the reader failed on a round"
    got = shares(figures(check for each in checks.values() for check in each))
    wanted = json.loads(baseline.read_text(encoding="utf-8"))[level]
    # A figure without a single check is one where nothing could go wrong.
    dropped = {name: (kept, got[name]) for name, kept in wanted.items() if got.get(name, 1.0) < kept - 1e-9}
    assert not dropped, "figures dropped (kept, now); see the errors with: python -m tests.eval"

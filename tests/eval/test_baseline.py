"""The reading of our own invented rounds must not get worse than the figures kept in baseline.json.

After a change for the better, keep the new figures:

    python -m tests.eval fixtures/rounds --level clean,asr --json tests/eval/baseline.json
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.eval.__main__ import run_level
from tests.eval.rounds import find_cases
from tests.eval.score import figures, shares

ROUNDS = Path(__file__).parents[2] / "fixtures" / "rounds"
BASELINE = json.loads((Path(__file__).parent / "baseline.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("level", ["clean", "asr"])
def test_no_figure_drops(level: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cases = find_cases(ROUNDS, level)
    assert len(cases) >= 4
    checks = run_level(cases, level, tmp_path)
    assert capsys.readouterr().err == "", "the reader failed on a round"
    got = shares(figures(check for each in checks.values() for check in each))
    # A figure without a single check is one where nothing could go wrong.
    dropped = {
        name: (kept, got[name]) for name, kept in BASELINE[level].items() if got.get(name, 1.0) < kept - 1e-9
    }
    assert not dropped, "figures dropped (kept, now); see the errors with: python -m tests.eval"

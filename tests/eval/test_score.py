"""The scorer itself: full marks for the truth, and the same figures as the evaluation's own scorer."""

from __future__ import annotations

import csv
import json
import random
import subprocess
import sys
from pathlib import Path

import pytest
from support.truth import SHARED, fixture_rounds, load, save_truth

from tests.eval.rounds import rows
from tests.eval.score import check_round, figures, shares

GIVEN = SHARED / "eval" / "score.py"


@pytest.mark.parametrize("path", fixture_rounds(), ids=lambda path: path.parent.name)
def test_the_truth_scores_full_marks(path: Path, tmp_path: Path) -> None:
    folder = save_truth(path, tmp_path)
    table = shares(figures(check_round(load(path), rows(folder.holes_csv), rows(folder.shots_csv))))
    assert table and set(table.values()) == {1.0}


def damage(path: Path, dice: random.Random) -> None:
    """Lose a tenth of the rows and shuffle a tenth of the cells, so that every figure has something wrong."""
    table = [dict(row) for row in rows(path) if dice.random() > 0.1]
    for row in table:
        for name in set(row) - {"hole"}:
            if dice.random() < 0.1:
                row[name] = dice.choice(table)[name]
    with path.open("w", newline="", encoding="utf-8") as handle:
        writer = csv.DictWriter(handle, table[0])
        writer.writeheader()
        writer.writerows(table)


@pytest.mark.skipif(not GIVEN.is_file(), reason="the evaluation rounds are not beside the checkout")
def test_figures_equal_those_of_the_given_scorer(tmp_path: Path) -> None:
    """Source of the expected figures: score.py as given with the evaluation rounds, run as a program."""
    dice = random.Random(7)
    checks = []
    for path in sorted((GIVEN.parent / "dev").glob("*/truth.json")):
        folder = save_truth(path, tmp_path / path.parent.name)
        damage(folder.holes_csv, dice)
        damage(folder.shots_csv, dice)
        checks += check_round(load(path), rows(folder.holes_csv), rows(folder.shots_csv))
    out = tmp_path / "given.json"
    command = [sys.executable, GIVEN, GIVEN.parent / "dev", tmp_path, "--json", out]
    subprocess.run(command, check=True, capture_output=True)
    assert shares(figures(checks)) == pytest.approx(json.loads(out.read_text(encoding="utf-8")))

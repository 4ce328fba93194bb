"""`reviewkit demo` as a person runs it: real footage, real recognition, every hole and score right."""

from __future__ import annotations

import csv
import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TRUTH = json.loads((ROOT / "fixtures" / "rounds" / "demo" / "truth.json").read_text(encoding="utf-8"))


def reviewkit(*args: str | Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "reviewkit", *map(str, args)]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def test_the_demo_reads_its_holes_and_scores(tmp_path: Path) -> None:
    out = tmp_path / "demo"
    done = reviewkit("demo", "--out", out)
    assert done.returncode == 0, done.stderr
    assert "Traceback" not in done.stderr
    folder = out / "round"
    with (folder / "holes.csv").open(newline="", encoding="utf-8") as handle:
        rows = list(csv.DictReader(handle))
    assert [(int(row["hole"]), int(row["par"]), int(row["strokes"])) for row in rows] == [
        (hole["hole"], hole["par"], hole["strokes"]) for hole in TRUTH["holes"]
    ]
    starts = [float(row["start_s"]) for row in rows]
    assert starts == pytest.approx([hole["start_s"] for hole in TRUTH["holes"]], abs=3.0)
    assert str(folder) in done.stdout
    for name in ("shots.csv", "transcript.json", "round.json", "report.html"):
        assert (folder / name).stat().st_size > 0, name
    assert any((folder / "chapters").iterdir())
    # A second look at the same footage has nothing left to transcribe, and says the same.
    before = (folder / "holes.csv").read_bytes()
    assert reviewkit("demo", "--out", out).returncode == 0
    assert (folder / "holes.csv").read_bytes() == before


def test_a_folder_that_cannot_be_written_is_one_told_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way", encoding="utf-8")
    done = reviewkit("demo", "--out", tmp_path / "file" / "demo")
    assert done.returncode == 1
    assert done.stderr.startswith("reviewkit: ") and len(done.stderr.strip().splitlines()) == 1

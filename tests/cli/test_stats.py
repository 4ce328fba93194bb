"""`reviewkit stats` as a person and a program use it."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner
from support.truth import load, save_truth, truth_files

from reviewkit import open_round
from reviewkit.cli import stats
from reviewkit.errors import FileError, FolderError, ReviewkitError
from reviewkit.stats import STATISTICS, Play, figures, play_of


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return save_truth(truth_files()[0], tmp_path_factory.mktemp("rounds") / "round").path


def shown(*arguments: str) -> str:
    result = CliRunner().invoke(stats.command, arguments, catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def test_text_keeps_to_eighty_columns(folder: Path) -> None:
    for line in shown(str(folder), "--show", "all").splitlines():
        assert len(line) <= 80, line


def test_csv_and_json_say_the_same(folder: Path) -> None:
    rows = list(csv.DictReader(io.StringIO(shown(str(folder), "--as", "csv"))))
    data = json.loads(shown(str(folder), "--as", "json"))["figures"]
    assert [row["name"] for row in rows] == [row["name"] for row in data]
    for row, same in zip(rows, data, strict=True):
        value = same["value"]
        assert row["value"] == (
            "" if value is None else f"{value:.6g}" if isinstance(value, float) else str(value)
        )
    assert [row["value"] for row in data] == [figure.value for figure in figures(open_round(folder))]


def test_markdown_has_a_row_a_figure(folder: Path) -> None:
    lines = shown(str(folder), "greens", "putts", "--as", "markdown").splitlines()
    assert len(lines) == 4
    assert {line.count("|") for line in lines} == {5}


def test_every_statistic_is_listed_and_can_be_asked_for(folder: Path) -> None:
    listing = shown("any", "--list", "--as", "csv")
    for name, statistic in STATISTICS.items():
        assert name in listing
        assert statistic.label in shown(str(folder), name) or not statistic.figures(_play(folder))


def _play(folder: Path) -> Play:
    return play_of(open_round(folder))


def test_the_odds_are_drawn(tmp_path: Path) -> None:
    path = next(path for path in truth_files() if load(path)["target"] is not None)
    made = save_truth(path, tmp_path / "round").path
    shown(str(made), "putts", "--plot", str(tmp_path / "odds.svg"))
    text = "".join(ElementTree.parse(tmp_path / "odds.svg").getroot().itertext())
    assert "chance of the target" in text
    with pytest.raises(FileError, match="no picture"):
        shown(str(made), "putts", "--plot", str(tmp_path / "odds.bmp"))


def test_mistakes_are_told(folder: Path, tmp_path: Path) -> None:
    with pytest.raises(ReviewkitError, match="No statistic is called 'birdys'"):
        shown(str(folder), "birdys")
    with pytest.raises(FolderError, match="not a round folder"):
        shown(str(tmp_path))

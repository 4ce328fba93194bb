"""`reviewkit series` over the rounds with known truth."""

from __future__ import annotations

import json
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner
from PIL import Image
from support.truth import load, save_truth, truth_files

from reviewkit.cli import series
from reviewkit.errors import FolderError


def shown(*arguments: str) -> str:
    result = CliRunner().invoke(series.command, arguments, catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def test_a_series_is_shown_and_stored(tmp_path: Path) -> None:
    for path in truth_files():
        save_truth(path, tmp_path / load(path)["id"])
    text = shown(str(tmp_path))
    assert all(len(line) <= 80 for line in text.splitlines())
    assert (tmp_path / "series.parquet").is_file()
    assert shown(str(tmp_path)) == text
    shown(str(tmp_path), "--no-store", "--plots", str(tmp_path / "plots"))
    for name in ("scores", "practice"):
        # An XML reader and an image reader outside the project take them.
        assert ElementTree.parse(tmp_path / "plots" / f"{name}.svg").getroot().tag.endswith("svg")
        with Image.open(tmp_path / "plots" / f"{name}.png") as picture:
            assert picture.size[0] > 800
    rows = json.loads(shown(str(tmp_path), "--as", "json", "--no-store"))["rounds"]
    wanted = {load(path)["id"]: sum(h["strokes"] for h in load(path)["holes"]) for path in truth_files()}
    assert {row["round"]: row["score"] for row in rows} == wanted


def test_a_folder_without_rounds_is_told(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match="holds no round folder"):
        shown(str(tmp_path))

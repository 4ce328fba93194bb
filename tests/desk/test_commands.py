"""`reviewkit amend`, `doubts` and `report` as a script calls them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from support.desks import demo_round, keep_doubts

from reviewkit.cli import group
from reviewkit.errors import ReviewkitError
from reviewkit.log import RoundFolder, open_round
from reviewkit.log.amended import publish, saved_round
from reviewkit.model import Doubt, HoleScore, Plan, Round, Shot


@pytest.fixture
def folder(tmp_path: Path) -> RoundFolder:
    scores = (
        HoleScore(4, 1, 10.0, 60.0, 4, 5, 1, 1, confidence=0.9, status="sure"),
        HoleScore(5, 2, 60.0, 90.0, 3, 3, 0, 1, confidence=0.5),
    )
    shots = (
        Shot(4, 1, 12.0, 15.0, "tee", "D", "tee", 400.0, "rough", evidence="driver, right"),
        Shot(4, 2, 20.0, 25.0, "approach", "7I", "rough", 150.0, "green", evidence="seven iron on"),
        Shot(5, 1, 62.0, 64.0, "tee", "8I", "tee", 140.0, "green", evidence="eight iron, safe"),
    )
    doubt = Doubt(5, 61.0, "Said par, read 3.\x1b[31m", "par \u202e", alternatives=("4",))
    publish(RoundFolder(tmp_path), Round(scores, shots, (doubt,), plan=Plan(target=2)), {"sources": []})
    return open_round(tmp_path)


def call(*words: str) -> str:
    result = CliRunner().invoke(group, words)
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    assert result.exit_code == 0, result.output
    return result.output


def rows(folder: RoundFolder) -> list[tuple[object, ...]]:
    return [
        (shot.hole, shot.stroke, shot.kind, shot.club, shot.distance_yd)
        for shot in saved_round(open_round(folder.path)).shots
    ]


def test_every_form_does_what_the_desk_does(folder: RoundFolder) -> None:
    at = str(folder.path)
    assert call("amend", at, "set", "4.2", "club", "6I").startswith("1  set hole 4 stroke 2 club 6I (was 7I)")
    call("amend", at, "add", "4.3", "kind=putt", "distance_yd=12ft", "at=0:30", "holed=true")
    call("amend", at, "accept", "5")
    call("amend", at, "split", "6", "1:15", "par=4")
    call("amend", at, "set", "6", "start_s", "70")
    assert rows(folder) == [
        (4, 1, "tee", "D", 400.0),
        (4, 2, "approach", "6I", 150.0),
        (4, 3, "putt", "", 4.0),
        (5, 1, "tee", "8I", 140.0),
    ]
    holes = open_round(folder.path).holes
    assert holes["hole"].tolist() == [4, 5, 6] and holes["start_s"].tolist() == [10, 60, 70]
    call("amend", at, "merge", "5", "6")
    call("amend", at, "move", "5.1", "4.1")
    assert rows(folder)[0] == (4, 1, "tee", "8I", 140.0)
    call("amend", at, "undo")
    call("amend", at, "undo", "1")
    call("amend", at, "delete", "4.3")
    assert [row[3] for row in rows(folder)] == ["D", "7I", "8I"]
    listed = call("amend", at, "list").splitlines()
    assert len(listed) == 10 and listed[0].endswith("undone") and listed[6].endswith("undone")
    assert folder.report_html.exists()


@pytest.mark.parametrize(
    "words",
    [
        ("set", "4"),
        ("set", "four", "par", "4"),
        ("set", "4", "par", "9"),
        ("accept", "9"),
        ("add", "4.3", "putt"),
        ("split", "7", "soon"),
        ("merge", "4"),
        ("undo",),
        ("undo", "3"),
    ],
)
def test_what_is_not_understood_is_told_and_not_kept(folder: RoundFolder, words: tuple[str, ...]) -> None:
    with pytest.raises(ReviewkitError):
        call("amend", str(folder.path), *words)
    assert not folder.amendments_csv.exists()


def test_doubts_are_listed_without_marks_that_a_terminal_obeys(folder: RoundFolder) -> None:
    said = call("doubts", str(folder.path))
    assert '1. 1:01  hole 5, strokes: Said par, read 3.[31m\n   "par "\n   or 4' in said
    data = json.loads(call("doubts", str(folder.path), "--as", "json"))
    assert data[0]["hole"] == 5 and data[0]["alternatives"] == ["4"]
    call("amend", str(folder.path), "accept", "5")
    assert call("doubts", str(folder.path)) == "Nothing to check.\n"


def test_confirming_a_hole_is_a_fact_for_the_next_reading(tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    hole = int(folder.holes["hole"].iloc[1])
    keep_doubts(folder, [])
    call("amend", str(folder.path), "set", str(hole), "strokes", "9")
    reading = json.loads((folder.path / "reading.json").read_text(encoding="utf-8"))
    assert next(row["strokes"] for row in reading["scores"] if row["hole"] == hole) == 9

"""`reviewkit explain` as a person runs it: words, rules, strokes and the score of a hole."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from reviewkit.cli.explain import command
from reviewkit.cli.read import command as read
from reviewkit.errors import CardError, FolderError, ReviewkitError
from reviewkit.explanation import explain
from reviewkit.log import RoundFolder, open_round
from tests.support.truth import save_truth, truth_files

VTT = """WEBVTT

00:01.000 --> 00:06.000
First hole, par 4. Should have hit the old faithful. Driver down the middle.

00:07.000 --> 00:12.000
Eight iron from 150 yards to ten feet, two putts, that's a par.

01:14.000 --> 01:20.000
Second hole, a par 3. The old faithful onto the green and two putts, another par.
"""
OWN = '[classes.club]\n"old faithful" = "5W"\n'


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> RoundFolder:
    here = tmp_path_factory.mktemp("explain")
    (here / "talk.vtt").write_text(VTT, encoding="utf-8")
    (here / "own.toml").write_text(OWN, encoding="utf-8")
    arguments = [here / "talk.vtt", "--rules", here / "own.toml", "--out", here / "round"]
    done = CliRunner().invoke(read, [str(word) for word in arguments], catch_exceptions=False)
    assert done.exit_code == 0, done.output
    return open_round(here / "round")


def shown(*arguments: object) -> str:
    done = CliRunner().invoke(command, [str(word) for word in arguments], catch_exceptions=False)
    assert done.exit_code == 0, done.output
    return done.output


def test_a_hole_is_shown_from_words_to_score(folder: RoundFolder) -> None:
    text = shown(folder.path, "--hole", 1)
    said, _, rest = text.partition("Strokes read from it")
    strokes, _, score = rest.partition("\nScore\n")
    assert text.startswith("Hole 1, par 4, 0:01 to ")
    assert "1st hole , par 4 ." in said and "hole 1 < 1st hole [ordinal hole]" in said
    assert "club 5W (denied, or not done) < old faithful [club by name]" in said
    assert "distance 150 (left to the hole) < from 150" in said or "distance 150 yd" in said
    assert re.search(r"1\. tee, D, from tee, to fairway .*\n.*Driver down.*\n +by: club by name", strokes)
    assert re.search(r"3\. putt.* implied", strokes)
    assert re.search(r"strokes by the tale alone: 4 \(\d+%\)", score)
    assert re.search(r"settled with the rest of the round: 4, \d+% sure, (sure|check)", score)
    assert "Hole 2" not in text


def test_all_holes_come_without_an_option_and_fit_eighty_columns(folder: RoundFolder) -> None:
    text = shown(folder.path)
    assert re.findall(r"^Hole (\d+)", text, re.MULTILINE) == ["1", "2"]
    assert all(len(line) < 80 for line in text.splitlines())
    assert not re.search(r"^ +\w+\? ", text, re.MULTILINE), "candidates are no one's business"


def test_it_explains_the_reading_that_the_folder_keeps(folder: RoundFolder) -> None:
    found = explain(folder)
    assert [told.score.strokes for told in found] == folder.holes["strokes"].tolist()
    assert sum(len(told.shots) for told in found) == len(folder.shots)
    for told in found:
        for shot in told.shots:
            rules = [mention for mention in told.mentions(shot) if mention.kind == "club"]
            assert not shot.club or shot.club in {mention.value for mention in rules}


def test_a_hole_not_played_is_told(folder: RoundFolder) -> None:
    with pytest.raises(FolderError, match=r"has no hole 7\. Holes played: 1, 2\."):
        explain(folder, 7)


def test_a_folder_without_words_is_told(tmp_path: Path) -> None:
    saved = save_truth(truth_files()[0], tmp_path / "round")
    with pytest.raises(FolderError, match="keeps no words"):
        explain(saved)


def test_rules_that_are_gone_are_told(folder: RoundFolder) -> None:
    rules = folder.path.parent / "own.toml"
    rules.rename(rules.with_suffix(".away"))
    try:
        with pytest.raises(CardError, match=r"own\.toml: cannot be read"):
            explain(folder)
    finally:
        rules.with_suffix(".away").rename(rules)


def test_no_round_is_told(tmp_path: Path) -> None:
    done = CliRunner().invoke(command, [str(tmp_path)])
    assert isinstance(done.exception, ReviewkitError)

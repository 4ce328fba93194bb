"""The commands that write a round out, run as a person runs them."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from support.hostile import small_round

from reviewkit.cli import group
from reviewkit.errors import ReviewkitError
from reviewkit.export import FORMATS
from reviewkit.footage.ffmpeg import run


def call(*arguments: object) -> Result:
    return CliRunner().invoke(group, [str(item) for item in arguments])


def test_help_lists_every_format_with_its_line() -> None:
    found = call("export", "--help")
    assert found.exit_code == 0
    words = " ".join(found.output.split())
    assert all(f"{item.name} {item.line}" in words for item in FORMATS)


def test_formats_land_in_the_round_folder_or_where_told(tmp_path: Path) -> None:
    folder = small_round(tmp_path / "round")
    found = call("export", folder.path, "--as", "description", "--as", "chapters-vtt")
    assert found.exit_code == 0, found.output
    assert sorted(path.name for path in (folder.path / "export").iterdir()) == [
        "chapters.vtt",
        "description.txt",
    ]
    call("export", folder.path, "--as", "ffmetadata", "--out", tmp_path / "there")
    assert (tmp_path / "there" / "chapters.ffmeta").is_file()


def test_chapters_are_printed_for_pasting(tmp_path: Path) -> None:
    found = call("chapters", small_round(tmp_path / "round").path, "--title", "No. {hole}", "--scores")
    assert found.stdout == "0:00 No. 1\n0:20 No. 2\n0:41 No. 3\n"
    assert "note: chapters shorter than 10 s joined their neighbours: 2." in found.stderr


def test_chapters_go_into_footage_that_has_moved(tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    run(["-f", "lavfi", "-i", "testsrc2=s=64x36:r=10:d=58", "-preset", "ultrafast", film], film)
    folder = small_round(tmp_path / "round")
    found = call("chapters", folder.path, "--into", tmp_path / "out.mkv", "--footage", film)
    assert (found.exit_code, found.output) == (0, f"Wrote {tmp_path / 'out.mkv'}\n")


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["export", "nowhere", "--as", "description"], "is not a round folder"),
        (["export", "ROUND", "--as", "description", "--title", "{none}"], "names '{none}'"),
        (["export", "ROUND", "--as", "description", "--size", "big"], "not a size in pixels"),
        (["chapters", "ROUND", "--into", "out.mp4"], "has moved or gone"),
        (["chapters", "nowhere"], "is not a round folder"),
    ],
)
def test_mistakes_are_told(tmp_path: Path, arguments: list[str], words: str) -> None:
    folder = small_round(tmp_path / "round")
    found = call(*[folder.path if item == "ROUND" else item for item in arguments])
    assert isinstance(found.exception, ReviewkitError) and words in str(found.exception)
    assert not (folder.path / "export").exists()


def test_wrong_usage_exits_2(tmp_path: Path) -> None:
    folder = small_round(tmp_path / "round")
    assert call("export", folder.path).exit_code == 2
    assert call("export", folder.path, "--as", "papyrus").exit_code == 2

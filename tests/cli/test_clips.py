"""`reviewkit clips` as a person runs it."""

from __future__ import annotations

from pathlib import Path

from click.testing import CliRunner
from support.hostile import small_round

from reviewkit.cli import group
from reviewkit.errors import ReviewkitError
from reviewkit.footage.ffmpeg import run


def test_clips_land_in_the_round_folder(tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    run(["-f", "lavfi", "-i", "testsrc2=s=64x36:r=10:d=58", "-g", "10", "-preset", "ultrafast", film], film)
    folder = small_round(tmp_path / "round")
    arguments = ["clips", str(folder.path), "--holes", "--stroke", "2.1", "--footage", str(film)]
    found = CliRunner().invoke(group, arguments)
    assert found.exit_code == 0, found.output
    names = [path.name for path in sorted((folder.path / "clips").iterdir())]
    assert names == [
        "h01-hole-01.mp4",
        "h02-hole-02-stroke-01-tee-D.mp4",
        "h02-hole-02.mp4",
        "h03-hole-03.mp4",
    ]
    assert found.output.count("(copied)") == 4


def test_a_stroke_is_written_with_a_point(tmp_path: Path) -> None:
    folder = small_round(tmp_path / "round")
    found = CliRunner().invoke(group, ["clips", str(folder.path), "--stroke", "seven"])
    assert isinstance(found.exception, ReviewkitError)
    assert "Write hole and stroke like 7.2." in str(found.exception)

"""`reviewkit read` as a person runs it: every bad input is one told line, and nothing is left behind."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from reviewkit.cli.read import beside_folder, command
from reviewkit.errors import FolderError, ReviewkitError
from reviewkit.footage import ffmpeg
from reviewkit.log import open_round
from tests.footage.films import film

VTT = """WEBVTT

00:01.000 --> 00:06.000
First hole, par 4. Driver down the middle, 150 yards left.

00:07.000 --> 00:12.000
Eight iron to ten feet, two putts, that's a par.

00:14.000 --> 00:20.000
Second hole, a par 3. Seven iron on the green and two putts, another par.
"""
CARD = "hole,par\n1,4\n2,3\n2,3\n"


@pytest.fixture
def here(tmp_path: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path_factory.getbasetemp() / "cache"))
    (tmp_path / "footage").mkdir()
    monkeypatch.chdir(tmp_path / "footage")
    return tmp_path / "footage"


def run(*args: str) -> tuple[str, Exception | None]:
    """Output, and the told error where there is one: anything else is raised."""
    done = CliRunner().invoke(command, list(args))
    if done.exception is not None and not isinstance(done.exception, ReviewkitError | SystemExit):
        raise done.exception
    return done.output, done.exception if isinstance(done.exception, ReviewkitError) else None


def wordless(path: Path) -> None:
    noise = ["-f", "lavfi", "-i", "anoisesrc=color=pink:amplitude=0.05:duration=8"]
    ffmpeg.run(["-y", *noise, path], path)


BAD = [
    ("missing", ["gone.mp4"], "gone.mp4: does not exist"),
    ("empty", ["empty.mp4"], "empty.mp4: is empty"),
    ("text renamed", ["notes.mp4"], "notes.mp4: cannot be decoded as video or sound"),
    ("no sound track", ["silent.mp4"], "silent.mp4: has no sound"),
    ("no speech", ["wind.wav"], "wind.wav: holds no speech"),
    ("broken times", ["broken.vtt"], "broken.vtt: line 3:"),
    ("broken words", ["broken.json"], "broken.json: is not a words JSON"),
    ("a folder", ["."], "is not a file"),
    ("a file in the way", ["talk.vtt", "--out", "notes.mp4/round"], "notes.mp4 is a file"),
    ("unknown model", ["wind.wav", "--model", "birdie-large"], "'birdie-large' is no folder and no known"),
    ("no such device", ["wind.wav", "--device", "cuda"], "No CUDA GPU"),
    ("hole twice", ["talk.vtt", "--card", "card.csv"], "card.csv: hole 2 stands on the card twice"),
    ("no card", ["talk.vtt", "--card", "gone.csv"], "gone.csv: does not exist"),
    ("bad order", ["talk.vtt", "--order", "1-"], "'1-' is not an order"),
    ("bad target", ["talk.vtt", "--target", "under"], "'under' is not a score"),
    ("no rules", ["talk.vtt", "--rules", "gone.toml"], "gone.toml"),
    ("text among films", ["silent.mp4", "talk.vtt"], "talk.vtt: is timed text among other sources"),
    ("twice", ["wind.wav", "wind.wav"], "wind.wav: is given twice"),
    ("no time", ["silent.mp4", "--sort", "time"], "silent.mp4: says no recording time"),
]


@pytest.mark.parametrize(("args", "told"), [row[1:] for row in BAD], ids=[row[0] for row in BAD])
def test_bad_input_is_told_and_leaves_nothing(here: Path, args: list[str], told: str) -> None:
    if args == ["wind.wav", "--device", "cuda"]:
        import ctranslate2

        if ctranslate2.get_cuda_device_count():
            pytest.skip("this machine has a GPU")
    for name, text in {
        "empty.mp4": "",
        "notes.mp4": "a par 4\n" * 99,
        "talk.vtt": VTT,
        "card.csv": CARD,
    }.items():
        (here / name).write_text(text, encoding="utf-8")
    (here / "broken.vtt").write_text(VTT.replace("00:06.000", "00:61.000"), encoding="utf-8")
    (here / "broken.json").write_text('{"segments": [{"words": [{"word": "par"}]}]}', encoding="utf-8")
    if "silent.mp4" in args:
        film(here / "silent.mp4", tones=())
    if "wind.wav" in args:
        wordless(here / "wind.wav")
    before = sorted(here.rglob("*"))
    output, error = run(*args)
    assert error is not None, output
    assert told in str(error)
    assert "\n" not in str(error)
    assert sorted(here.rglob("*")) == before


# Root may write in any folder, so for root only a file system that takes no folders will do.
UNWRITABLE = ["/proc/self/round"] if Path("/proc/self").is_dir() else []
UNWRITABLE += ["locked/round"] if os.name == "posix" and os.geteuid() != 0 else []


@pytest.mark.parametrize("out", UNWRITABLE)
def test_a_folder_that_cannot_be_written(here: Path, out: str) -> None:
    (here / "talk.vtt").write_text(VTT, encoding="utf-8")
    (here / "locked").mkdir(mode=0o555)
    _, error = run("talk.vtt", "--out", out)
    assert error is not None and "cannot be written" in str(error)


def test_exit_codes_of_the_program(here: Path) -> None:
    program = [sys.executable, "-m", "reviewkit", "read"]
    told = subprocess.run([*program, "gone.mp4"], capture_output=True, text=True, check=False)
    assert (told.returncode, told.stdout) == (1, "")
    assert told.stderr == "reviewkit: gone.mp4: does not exist. Check the name.\n"
    usage = subprocess.run([*program, "gone.mp4", "--sort", "size"], capture_output=True, check=False)
    assert usage.returncode == 2


def test_timed_text_lands_beside_its_source(here: Path) -> None:
    (here / "talk.vtt").write_text(VTT, encoding="utf-8")
    output, error = run("talk.vtt", "--target", "-1", "--order", "1-2")
    assert error is None
    folder = open_round(here / "talk")
    assert list(folder.holes["hole"]) == [1, 2]
    assert "2 holes" in output and str(folder.path.name) in output
    assert (folder.meta["plan"]["target"], folder.meta["plan"]["order"]) == (-1, [1, 2])
    assert folder.meta["timed_text"]["path"] == "../talk.vtt"
    for path in (folder.report_html, folder.transcript_json, folder.chapters / "description.txt"):
        assert path.is_file()
    # What is said by the transcript it wrote is the same round again.
    assert run(str(folder.transcript_json), "--out", "again")[1] is None
    assert (here / "again" / "holes.csv").read_bytes() == folder.holes_csv.read_bytes()


def test_round_toml_beside_the_footage(here: Path) -> None:
    (here / "talk.vtt").write_text(VTT, encoding="utf-8")
    (here / "card.csv").write_text("hole,par,yards\n1,5,510\n2,3,150\n", encoding="utf-8")
    (here / "round.toml").write_text('card = "card.csv"\ntarget = 2\ncourse = "Quillback Flats"\n')
    assert run("talk.vtt", "--target", "-3")[1] is None
    plan = open_round(here / "talk").meta["plan"]
    assert (plan["target"], plan["card"]["course"], plan["card"]["holes"][0]["par"]) == (
        -3,
        "Quillback Flats",
        5,
    )
    (here / "round.toml").write_text("targets = 2\n")
    _, error = run("talk.vtt")
    assert error is not None and "'targets' is not known" in str(error)


def test_a_folder_that_holds_something_else_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "day").mkdir()
    assert beside_folder(tmp_path / "day.mp4") == tmp_path / "day"
    (tmp_path / "day" / "photo.jpg").touch()
    with pytest.raises(FolderError, match="not empty"):
        beside_folder(tmp_path / "day.mp4")
    (tmp_path / "day" / "round.json").write_text(json.dumps({}))
    assert beside_folder(tmp_path / "day.mp4") == tmp_path / "day"
    assert beside_folder(tmp_path / "day") == tmp_path / "day-round"

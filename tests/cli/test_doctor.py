"""`reviewkit doctor` finds what is there, and what is missing with its remedy."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from reviewkit.cli import doctor
from reviewkit.speech import weights


def test_what_is_there(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path))
    done = CliRunner().invoke(doctor.command)
    lines = done.output.splitlines()
    for what in ("reviewkit", "ffmpeg", "faster-whisper", "ctranslate2", "GPU", "cache"):
        assert any(what in line.split()[:2] for line in lines), what
    assert all(line.split()[0] in ("ok", "-", "MISSING", "mend") for line in lines)
    assert done.exit_code == int("MISSING" in done.output)


def test_what_is_missing_comes_with_the_command_that_mends_it(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    gone = doctor.Finding("ffmpeg", "gone", "pip install imageio-ffmpeg")
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path))
    monkeypatch.setattr(weights, "WHEELS", {})
    monkeypatch.setattr(doctor, "ffmpeg", lambda: gone)
    done = CliRunner().invoke(doctor.command)
    assert done.exit_code == 1
    lines = done.output.splitlines()
    at = next(n for n, line in enumerate(lines) if line.startswith("MISSING speech weights"))
    assert lines[at + 1].strip() == "mend it with: pip install 'reviewkit[offline-model]'"
    assert "mend it with: pip install imageio-ffmpeg" in done.output


@pytest.mark.parametrize(
    ("name", "needed", "mark"),
    [("click", True, "ok"), ("no-such-thing", True, "MISSING"), ("no-such-thing", False, "-")],
)
def test_packages(name: str, needed: bool, mark: str) -> None:
    assert doctor.package(name, "pip install it", needed).mark == mark

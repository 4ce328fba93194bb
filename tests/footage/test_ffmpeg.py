"""ffmpeg is found without being on PATH, and its failures are told in one line."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

from reviewkit.errors import SourceError
from reviewkit.footage import ffmpeg

TONE = ("-f", "lavfi", "-i", "sine=frequency=440:duration=1:sample_rate=16000")


def test_found_without_a_path(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    ffmpeg.find_ffmpeg.cache_clear()
    try:
        assert Path(ffmpeg.find_ffmpeg()).is_file()
        ffmpeg.run([*TONE, tmp_path / "tone.wav"], tmp_path / "tone.wav")
        assert (tmp_path / "tone.wav").stat().st_size > 32_000
    finally:
        ffmpeg.find_ffmpeg.cache_clear()


def test_stream_gives_the_samples() -> None:
    with ffmpeg.stream([*TONE, "-f", "f32le", "-"], "tone") as output:
        samples = np.frombuffer(output.read(), np.float32)
    assert samples.size == 16_000
    assert abs(np.argmax(np.abs(np.fft.rfft(samples))) - 440) <= 1


def test_failures_name_the_file(tmp_path: Path) -> None:
    bad = tmp_path / "notes.mp4"
    bad.write_text("not a film")
    with pytest.raises(SourceError, match=r"notes\.mp4: ffmpeg failed") as told:
        ffmpeg.run(["-i", bad, tmp_path / "out.wav"], bad)
    assert "\n" not in str(told.value)
    with (
        pytest.raises(SourceError, match=r"notes\.mp4"),
        ffmpeg.stream(["-i", bad, "-f", "f32le", "-"], bad) as output,
    ):
        output.read()


def test_leaving_a_stream_early_is_no_failure() -> None:
    endless = ("-f", "lavfi", "-i", "anoisesrc=sample_rate=16000", "-f", "f32le", "-")
    with ffmpeg.stream(endless, "noise") as output:
        assert len(output.read(4096)) == 4096

"""What files hold, read back from files that ffmpeg wrote with it."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest

from reviewkit.errors import SourceError
from reviewkit.footage import ffmpeg
from reviewkit.footage.probe import probe
from reviewkit.footage.sound import RATE, samples
from tests.footage.films import film


def test_a_phone_clip_turned_with_two_sound_tracks(tmp_path: Path) -> None:
    flat, turned = film(tmp_path / "flat.mp4", tones=(300, 900)), tmp_path / "turned.mp4"
    tags = ["-metadata", "creation_time=2024-05-01T09:30:00Z", "-disposition:a:0", "0"]
    tags += ["-disposition:a:1", "default"]
    source = ["-display_rotation", "90", "-i", str(flat)]
    ffmpeg.run(["-y", *source, "-map", "0", "-c", "copy", *tags, turned], turned)
    media = probe(turned)
    assert media.picture is not None
    assert (media.picture.codec, media.picture.width, media.picture.height) == ("h264", 320, 180)
    assert (media.picture.rotation, media.picture.fps) == (90, 25.0)
    assert media.recorded_at == datetime(2024, 5, 1, 9, 30, tzinfo=UTC)
    assert media.duration_s == pytest.approx(1.0, abs=0.05)
    assert (media.tracks, media.track) == (2, 1)
    heard = np.concatenate(list(samples(turned, media.track or 0)))
    assert np.argmax(np.abs(np.fft.rfft(heard))) * RATE / len(heard) == pytest.approx(900, abs=5)


@pytest.mark.parametrize(
    ("name", "options"),
    [
        ("a.mkv", ["-c:v", "libx265", "-x265-params", "log-level=none", "-c:a", "libopus"]),
        ("a.mov", ["-c:a", "pcm_s16le", "-timecode", "10:00:00:00"]),
        ("a.webm", ["-c:v", "libvpx", "-c:a", "libvorbis"]),
        ("a.ts", []),
        ("a.mp3", []),
    ],
)
def test_whatever_ffmpeg_decodes(tmp_path: Path, name: str, options: list[str]) -> None:
    path = film(tmp_path / name, (1.5,), options=options)
    media = probe(path)
    assert media.duration_s == pytest.approx(1.5, abs=0.15)
    assert (media.picture is None) == name.endswith("mp3")
    heard = np.concatenate(list(samples(path, 0)))
    assert len(heard) / RATE == pytest.approx(1.5, abs=0.15)
    assert media.timecode == ("10:00:00:00" if name == "a.mov" else "")


def test_sound_that_begins_late_or_is_sought_keeps_its_time(tmp_path: Path) -> None:
    flat, late = film(tmp_path / "flat.mp4", (2.0,)), tmp_path / "late.mkv"
    delayed = ["-i", str(flat), "-itsoffset", "0.7", "-i", str(flat), "-map", "0:v", "-map", "1:a"]
    ffmpeg.run(["-y", *delayed, "-c", "copy", late], late)
    heard = np.concatenate(list(samples(late, 0, chunk_s=0.25)))
    begins = int(np.argmax(np.abs(heard) > 0.02)) / RATE
    assert begins == pytest.approx(0.7, abs=0.05)
    part = np.concatenate(list(samples(flat, 0, start_s=0.5, length_s=1.0)))
    assert len(part) / RATE == pytest.approx(1.0, abs=0.03)


def test_low_sound_can_be_taken_out_and_the_rest_run_faster(tmp_path: Path) -> None:
    """A Butterworth filter of second order takes 12.3 dB an octave beyond its corner, by 1 / (1 + 2^4) (from
    memory; any handbook of filters)."""
    path = film(tmp_path / "tones.mp4", (2.0,), tones=(60, 440))

    def level(hz: float, **changed: float) -> float:
        heard = np.concatenate([*samples(path, 0, **changed), *samples(path, 1, **changed)])
        spectrum = np.abs(np.fft.rfft(heard)) / len(heard)
        near = round(hz * len(heard) / RATE)
        return float(20 * np.log10(spectrum[near - 8 : near + 9].max()))

    assert level(60) - level(60, low_cut_hz=120) == pytest.approx(12.3, abs=0.5)
    assert level(440) - level(440, low_cut_hz=120) == pytest.approx(0, abs=0.5)
    assert level(484, pace=1.1) - level(440) == pytest.approx(0, abs=1.0)
    faster = np.concatenate(list(samples(path, 0, pace=1.1)))
    assert len(faster) / RATE == pytest.approx(2.0 / 1.1, abs=0.05)


def test_variable_frame_rate_and_no_sound(tmp_path: Path) -> None:
    uneven = tmp_path / "uneven.mp4"
    graph = "select='not(mod(n,7))+gt(random(0),0.5)'"
    source = ["-f", "lavfi", "-i", "testsrc=duration=4:rate=30"]
    ffmpeg.run(["-y", *source, "-vf", graph, "-fps_mode", "vfr", uneven], uneven)
    media = probe(uneven)
    assert media.picture is not None
    assert (media.track, media.tracks) == (None, 0)
    assert media.picture.variable and media.picture.fps < 29


@pytest.mark.parametrize(
    ("name", "content", "told"),
    [
        ("gone.mp4", None, "does not exist"),
        ("empty.mp4", b"", "is empty"),
        ("notes.mp4", b"hole 1, a par 4\n" * 50, "cannot be decoded"),
    ],
)
def test_what_is_no_footage_is_told(tmp_path: Path, name: str, content: bytes | None, told: str) -> None:
    path = tmp_path / name
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(SourceError, match=told) as error:
        probe(path)
    assert "\n" not in str(error.value)
    with pytest.raises(SourceError, match="is not a file"):
        probe(tmp_path)

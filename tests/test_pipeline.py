"""The main job on real footage: joined clips, a killed run, a second read, folders that move. Real speech."""

from __future__ import annotations

import difflib
import json
import os
import shutil
import signal
import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

from reviewkit.errors import ModelError
from reviewkit.footage import ffmpeg
from reviewkit.footage.probe import probe
from reviewkit.log import open_round
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan
from reviewkit.pipeline import Options, read_round
from reviewkit.speech import decode, weights

ROUND = Path(__file__).parents[1] / "fixtures" / "rounds" / "demo"
MODEL = "tiny.en"


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    place = tmp_path / "cache"
    monkeypatch.setenv("REVIEWKIT_CACHE", str(place))
    try:
        weights.find(MODEL, place / "models", print)
    except ModelError as error:
        pytest.skip(str(error))
    return place


def piece(path: Path, start_s: float, length_s: float, recorded: str) -> Path:
    """A stretch of the demo's film as a clip of its own."""
    cut = ["-ss", f"{start_s}", "-t", f"{length_s}", "-i", str(ROUND / "round.mp4")]
    tags = ["-metadata", f"creation_time={recorded}"]
    ffmpeg.run(["-y", *cut, *tags, "-c:v", "libx264", "-preset", "ultrafast", path], path)
    return path


def test_clips_by_recording_time_and_a_folder_that_moves(tmp_path: Path) -> None:
    """The film cut in three between shots, named out of order: the round is the same, and seams are cuts."""
    day = tmp_path / "day"
    day.mkdir()
    holes = json.loads((ROUND / "truth.json").read_text(encoding="utf-8"))["holes"]
    # Just before the words that open the second and the last hole, where nothing is said.
    first, second = (hole["start_s"] - 0.15 for hole in (holes[1], holes[-1]))
    length = probe(ROUND / "round.mp4").duration_s
    clips = [
        piece(day / "c.mp4", 0.0, first, "2026-05-01T09:00:00Z"),
        piece(day / "a.mp4", first, second - first, "2026-05-01T09:20:00Z"),
        piece(day / "b.mp4", second, length - second, "2026-05-01T09:45:00Z"),
    ]
    options = Options(model=MODEL, by_time=True)
    folder = read_round(sorted(clips), day / "round", Plan(), options)
    sources = folder.meta["sources"]
    assert [source["path"] for source in sources] == ["../c.mp4", "../a.mp4", "../b.mp4"]
    offsets = [source["offset_s"] for source in sources]
    assert offsets == pytest.approx([0.0, first, second], abs=0.3)
    assert set(offsets[1:]) <= {round(cut, 3) for cut in folder.meta["settings"]["cuts"]}
    whole = read_round([ROUND / "round.mp4"], tmp_path / "whole", Plan(), Options(model=MODEL, cuts=False))
    heard, expected = (load_transcript(f.transcript_json).words for f in (folder, whole))
    texts = [[word.text.lower().strip(".,") for word in words] for words in (heard, expected)]
    alike = difflib.SequenceMatcher(None, *texts, autojunk=False)
    assert alike.ratio() > 0.85
    pairs = [(heard[m.a + n], expected[m.b + n]) for m in alike.get_matching_blocks() for n in range(m.size)]
    late = [abs(one.start_s - other.start_s) for one, other in pairs]
    assert statistics.median(late) < 0.15 and max(late) < 1.5
    shutil.move(day, tmp_path / "moved")
    moved = open_round(tmp_path / "moved" / "round")
    assert all((moved.path / source["path"]).is_file() for source in moved.meta["sources"])


def test_a_second_read_hears_nothing_and_says_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = read_round([ROUND / "round.mp4"], tmp_path / "round", Plan(), Options(model=MODEL))
    kept = {path.name: path.read_bytes() for path in first.path.iterdir() if path.is_file()}
    monkeypatch.setattr(decode, "Decoder", None)
    second = read_round([ROUND / "round.mp4"], tmp_path / "round", Plan(), Options(model=MODEL))
    for name, content in kept.items():
        assert (second.path / name).read_bytes() == content, name


@pytest.mark.skipif(os.name != "posix", reason="kills a process group")
def test_killed_while_listening_leaves_no_folder_and_goes_on(tmp_path: Path, cache: Path) -> None:
    """kill -9 once the first windows are on disk; four copies of the film make a long enough round."""
    long = tmp_path / "long.mkv"
    ffmpeg.run(["-y", "-stream_loop", "3", "-i", ROUND / "round.mp4", "-c", "copy", long], long)
    out = tmp_path / "round"
    command = [sys.executable, "-m", "reviewkit", "read", str(long), "--out", str(out), "--model", MODEL]
    running = subprocess.Popen(
        command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
    )
    deadline = time.monotonic() + 600
    while not list(cache.glob("speech/*/*/0*.json")) and time.monotonic() < deadline:
        assert running.poll() is None, "read ended before it could be killed"
        time.sleep(0.05)
    os.killpg(running.pid, signal.SIGKILL)
    running.wait()
    kept = {path.name: path.stat().st_mtime_ns for path in cache.glob("speech/*/*/0*.json")}
    assert kept and not out.exists()
    seen: dict[str, int] = {}
    real = decode.Decoder.__call__

    def counted(self: decode.Decoder, windows):  # type: ignore[no-untyped-def]
        seen.update({window.name: 1 for window in windows})
        return real(self, windows)

    patched = pytest.MonkeyPatch()
    patched.setattr(decode.Decoder, "__call__", counted)
    try:
        folder = read_round([long], out, Plan(), Options(model=MODEL, cuts=False, again=False))
    finally:
        patched.undo()
    assert seen and not seen.keys() & {name.removesuffix(".json") for name in kept}
    assert open_round(out).meta["duration_s"] == pytest.approx(
        4 * probe(ROUND / "round.mp4").duration_s, abs=1
    )
    assert folder.transcript_json.is_file()

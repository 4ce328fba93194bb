"""The running score never runs ahead: every frame of every overlay is matched with what it may show."""

from __future__ import annotations

import subprocess
from pathlib import Path

import av
import numpy as np
import pysubs2
import pytest
from PIL import Image
from support.hostile import small_round
from support.truth import save_truth, truth_files

from reviewkit.export import Choices, Job, find, write
from reviewkit.export.base import records
from reviewkit.export.drawing import pixels
from reviewkit.export.overlay import panel, states_of
from reviewkit.footage.ffmpeg import find_ffmpeg, run
from reviewkit.log import RoundFolder
from reviewkit.model import HoleScore, Round, Shot

SIZE = (320, 180)
TIMES = (1.03, 4.51, 8.3)


@pytest.fixture
def job(tmp_path: Path) -> Job:
    return Job(small_round(tmp_path / "round", TIMES, 12.34), Choices(size=SIZE, rate="25"))


@pytest.mark.parametrize("path", truth_files(), ids=lambda p: p.parent.name)
def test_a_score_joins_only_after_its_hole_is_told_to_the_end(tmp_path: Path, path: Path) -> None:
    job = Job(save_truth(path, tmp_path / "round"))
    states, _ = states_of(job)
    assert states[0].hole == "" and [item.start_s for item in states] == sorted(
        item.start_s for item in states
    )
    shots = records(job.folder.shots)
    for row in records(job.folder.holes):
        shown = [item for item in states if item.hole == str(row["hole"])]
        own = [shot for shot in shots if shot["hole"] == row["hole"] and shot["told"]]
        holed = [shot["end_s"] for shot in own if shot["holed"]]
        first = next(item for item in shown if item.made)
        assert row["start_s"] <= shown[0].start_s <= first.start_s <= row["end_s"]
        assert first.start_s >= min([*holed, row["end_s"]])
        assert first.made == str(row["strokes"]) and first.through == row["play_order"]
        assert all(item.through == row["play_order"] - 1 for item in shown if not item.made)


def test_a_putt_that_nobody_told_of_keeps_the_score_back(tmp_path: Path) -> None:
    """An implied stroke stands where the last words about its hole ended, long before the ball drops."""
    folder = RoundFolder(tmp_path)
    shots = (
        Shot(1, 1, 2.0, 3.0, "tee", told=True),
        Shot(1, 2, 3.0, 4.0, "approach", told=True),
        Shot(1, 3, 4.0, 4.0, "putt", holed=True, told=False),
    )
    folder.save(Round((HoleScore(1, 1, 1.0, 9.0, 3, 3, 0, 1, status="sure"),), shots), {"sources": []})
    assert [(item.start_s, item.made) for item in states_of(Job(folder))[0][1:]] == [(1.0, ""), (9.0, "3")]


def test_what_is_not_known_is_not_shown(tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path)
    scores = (
        HoleScore(1, 1, 1.0, 2.0, 4, 5, 1, 1, status="check"),
        HoleScore(2, 2, 2.0, 3.0, None, None),
        HoleScore(3, 3, 3.0, 4.0, 4, 4, 0, None, status="sure"),
    )
    folder.save(Round(scores, ()), {"sources": []})
    found = [(item.hole, item.par, item.made, item.running) for item in states_of(Job(folder))[0]]
    assert found == [
        *[
            ("", "", "", ""),
            ("1", "4", "", ""),
            ("1", "4", "5?", "+1?"),
            ("2", "–", "", "+1?"),
            ("3", "4", "", "–"),
            ("3", "4", "4", "–"),
        ],
    ]


def nearest(picture: np.ndarray, looks: list[np.ndarray]) -> int:
    distances = [float(np.abs(picture.astype(float) - look).mean()) for look in looks]
    return int(np.argmin(distances))


def looks_of(job: Job, size: tuple[int, int]) -> tuple[list[float], list[np.ndarray]]:
    states, _ = states_of(job)
    drawn = [np.asarray(pixels(panel(state, *size), *size)).astype(float) for state in states]
    return [state.start_s for state in states], drawn


def check(found: list[tuple[float, int]], starts: list[float], late_s: float) -> None:
    """Each (time, state) shows no state before its start, and its own state soon after."""
    assert {state for _, state in found} == set(range(len(starts)))
    for at, state in found:
        assert starts[state] <= at + 1e-6, f"state {state} shows at {at}, before {starts[state]}"
        assert state + 1 == len(starts) or starts[state + 1] > at - late_s


@pytest.mark.parametrize(("name", "decoder"), [("overlay-webm", "libvpx-vp9"), ("overlay-mov", "prores")])
def test_transparent_video_shows_each_state_in_its_time(
    tmp_path: Path, job: Job, name: str, decoder: str
) -> None:
    """Decoded with alpha by ffmpeg (libvpx for WebM's), times by PyAV."""
    path = tmp_path / find(name).file
    write(find(name), job, path)
    with av.open(str(path)) as container:
        times = [float(p.pts * p.time_base) for p in container.demux(video=0) if p.size and p.pts is not None]
        assert container.duration / 1e6 == pytest.approx(12.36, abs=0.05)
    command = [find_ffmpeg(), "-v", "error", "-c:v", decoder, "-i", str(path), "-fps_mode", "passthrough"]
    command += ["-f", "rawvideo", "-pix_fmt", "rgba", "-"]
    raw = subprocess.run(command, capture_output=True, check=True).stdout
    frames = np.frombuffer(raw, np.uint8).reshape(-1, SIZE[1], SIZE[0], 4)
    assert len(frames) == len(times)
    assert frames[0, :, :, 3].max() == 0
    starts, looks = looks_of(job, SIZE)
    for look in looks:
        look[:, :, :3] *= look[:, :, 3:] > 0
    visible = [frame * (frame[:, :, 3:] > 8) for frame in frames]
    check([(at, nearest(frame, looks)) for at, frame in zip(times, visible, strict=True)], starts, 0.041)


def test_the_burned_in_score_shows_in_its_time_and_sound_stays(tmp_path: Path) -> None:
    film = tmp_path / "film.mp4"
    black = [
        "-f",
        "lavfi",
        "-i",
        "color=black:s=320x180:r=30000/1001:d=12.34",
        "-f",
        "lavfi",
        "-i",
        "sine=d=12.34",
    ]
    run(["-y", *black, "-preset", "ultrafast", "-c:a", "aac", film], film)
    source: dict[str, object] = {"path": str(film), "offset_s": 0.0, "duration_s": 12.34}
    job = Job(small_round(tmp_path / "round", TIMES, 12.34, sources=[source]))
    write(find("burned"), job, tmp_path / "burned.mp4")
    starts, looks = looks_of(job, SIZE)
    on_black = [look[:, :, :3] * look[:, :, 3:] / 255 for look in looks]
    with av.open(str(tmp_path / "burned.mp4")) as container:
        found = [(f.time, nearest(f.to_ndarray(format="rgb24"), on_black)) for f in container.decode(video=0)]
    check([(float(at or 0), state) for at, state in found], starts, 0.035)
    sounds = []
    for path in (film, tmp_path / "burned.mp4"):
        with av.open(str(path)) as container:
            sounds.append([bytes(packet) for packet in container.demux(audio=0) if packet.size])
    assert sounds[0][: len(sounds[1])] == sounds[1] and len(sounds[1]) >= len(sounds[0]) - 3


def test_pictures_and_their_list(tmp_path: Path, job: Job) -> None:
    write(find("overlay-png"), job, tmp_path / "overlay")
    (tmp_path / "overlay" / "0099.png").write_bytes(b"of an earlier run")
    write(find("overlay-png"), job, tmp_path / "overlay")
    states, length = states_of(job)
    pictures = sorted((tmp_path / "overlay").glob("*.png"))
    assert len(pictures) == len(states)
    assert all(Image.open(path).size == SIZE and Image.open(path).mode == "RGBA" for path in pictures)
    lines = (tmp_path / "overlay" / "overlay.ffconcat").read_text().splitlines()
    lengths = [float(line.split()[1]) for line in lines if line.startswith("duration")]
    assert sum(lengths) == pytest.approx(length, abs=0.04)


def test_styled_text_is_read_by_pysubs2(tmp_path: Path, job: Job) -> None:
    write(find("overlay-ass"), job, tmp_path / "overlay.ass")
    events = pysubs2.load(str(tmp_path / "overlay.ass"))
    states = [state for state in states_of(job)[0] if state.hole]
    assert len(events) == len(states)
    for event, state in zip(events, states, strict=True):
        assert state.start_s <= event.start / 1000 + 1e-9 < state.start_s + 0.011
    assert events[1].text == "HOLE 1 · PAR 4 · MADE 5 · +1 THRU 1"


def test_the_panel_is_legible_and_inside_the_safe_area(job: Job) -> None:
    """Action-safe is 93 % of the picture (EBU R 95); figures a twentieth of the short side or more."""
    for wide, high in ((1920, 1080), (1080, 1920), (320, 180)):
        for state in states_of(job)[0][1:]:
            drawn = np.asarray(pixels(panel(state, wide, high), wide, high))[:, :, 3]
            rows, columns = np.nonzero(drawn.max(axis=1))[0], np.nonzero(drawn.max(axis=0))[0]
            assert columns[0] >= wide * 0.035 and columns[-1] <= wide * 0.965
            assert rows[-1] <= high * 0.965 and rows[0] > high * 0.6
            assert rows[-1] - rows[0] >= min(wide, high) * 0.12

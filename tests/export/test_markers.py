"""Editor markers read back by OpenTimelineIO and its CMX 3600 adapter; time codes against its own."""

from __future__ import annotations

import csv
import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import opentimelineio as otio
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.hostile import small_round, starts, titles
from support.truth import save_truth, truth_files

from reviewkit.errors import ReviewkitError
from reviewkit.export import Choices, Job, find, write
from reviewkit.export.frames import rate_of
from reviewkit.export.markers import markers_of, pieces_of
from reviewkit.log import RoundFolder

RATES = ("23.976", "24", "25", "29.97", "29.97df", "30", "50", "59.94df", "60")


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("markers")


@pytest.fixture(scope="module")
def plain_round(scratch: Path) -> RoundFolder:
    return small_round(scratch / "plain")


@pytest.mark.parametrize("name", RATES)
@given(frame=st.integers(0, 20 * 3600 * 24))
def test_time_codes_agree_with_opentimelineio(plain_round: RoundFolder, name: str, frame: int) -> None:
    rate = rate_of(name, plain_round)
    time = otio.opentime.RationalTime(frame, float(rate.fps))
    assert rate.timecode(frame) == otio.opentime.to_timecode(time, float(rate.fps), rate.drop)
    assert rate.parse(rate.timecode(frame)) == frame


@pytest.mark.parametrize(
    ("name", "frame", "stamp"),
    # SMPTE ST 12-1: numbers 0 and 1 (0 to 3 at 59.94) fall out of each minute not divisible by ten.
    [
        *[
            ("29.97df", 1799, "00:00:59;29"),
            ("29.97df", 1800, "00:01:00;02"),
            ("29.97df", 17982, "00:10:00;00"),
        ],
        *[
            ("29.97df", 107892, "01:00:00;00"),
            ("59.94df", 3600, "00:01:00;04"),
            ("29.97", 1800, "00:01:00:00"),
        ],
    ],
)
def test_drop_frame_numbers(plain_round: RoundFolder, name: str, frame: int, stamp: str) -> None:
    assert rate_of(name, plain_round).timecode(frame) == stamp


def test_the_rate_is_the_footages_unless_asked_for(tmp_path: Path) -> None:
    source: dict[str, object] = {"path": "a.mp4", "offset_s": 0.0, "duration_s": 58.0}
    for fps, timecode, text in ((29.97, "01:00:00;00", "29.97df"), (30.02, "", "30"), (17.0, "", "25")):
        folder = small_round(tmp_path / text, sources=[{**source, "fps": fps, "timecode": timecode}])
        assert rate_of("", folder) == rate_of(text, folder)
    with pytest.raises(ReviewkitError, match="'31' is not a usual frame rate"):
        rate_of("31", folder)


def two_clips(folder: Path, title: str = "", rate: str = "") -> Job:
    sources: list[dict[str, object]] = [
        {"path": "a.mp4", "offset_s": 0.0, "in_s": 0.0, "duration_s": 30.0, "timecode": "10:00:00:00"},
        {"path": "b é.mp4", "offset_s": 30.0, "in_s": 2.0, "duration_s": 28.0, "timecode": ""},
    ]
    return Job(small_round(folder, sources=sources), Choices(title=title, rate=rate))


@pytest.mark.parametrize("rate", ["25", "29.97", "23.976"])
def test_otio_timeline_is_read_back(tmp_path: Path, rate: str) -> None:
    job = two_clips(tmp_path / "round", rate=rate)
    write(find("otio"), job, tmp_path / "round.otio")
    line: Any = otio.adapters.read_from_file(str(tmp_path / "round.otio"))
    clips = list(line.find_clips())
    assert [clip.name for clip in clips] == [
        *("Opening", "Hole 1 · par 4", "Hole 2 · par 4", "Hole 2 · par 4", "Hole 3 · par 4", "Closing"),
    ]
    fps = float(rate_of(rate, job.folder).fps)
    assert line.duration().to_seconds() == pytest.approx(58.0, abs=0.501 / fps)
    for clip, start in zip(clips, (0.0, 3.0, 20.0, 30.0, 41.5, 56.5), strict=True):
        at = clip.trimmed_range_in_parent().start_time.to_seconds()
        assert at == pytest.approx(start, abs=0.501 / fps)
    # The second file begins to show at its second second; the first counts from its camera's ten o'clock.
    assert clips[3].source_range.start_time.to_seconds() == pytest.approx(2.0, abs=0.501 / fps)
    assert otio.opentime.to_timecode(clips[0].source_range.start_time, fps, False) == "10:00:00:00"
    assert clips[3].media_reference.target_url.endswith("/b%20%C3%A9.mp4")
    markers = [marker for clip in clips for marker in clip.markers]
    assert [marker.name for marker in markers] == [item.name for item in markers_of(job)]
    assert len(markers) == 3 + 15
    for clip in clips:
        window = clip.source_range
        assert all(window.contains(marker.marked_range.start_time) for marker in clip.markers)


@pytest.mark.parametrize("rate", ["23.976", "24", "25", "29.97", "29.97df", "30", "50", "60"])
def test_edl_is_frame_exact_in_opentimelineios_reader(tmp_path: Path, rate: str) -> None:
    job = two_clips(tmp_path / "round", rate=rate)
    write(find("edl"), job, tmp_path / "round.edl")
    found, pieces = pieces_of(job)
    line: Any = otio.adapters.read_from_file(
        str(tmp_path / "round.edl"), adapter_name="cmx_3600", rate=float(found.fps)
    )
    clips = list(line.find_clips())
    assert len(clips) == len(pieces)
    for clip, piece in zip(clips, pieces, strict=True):
        assert round(clip.source_range.start_time.value) == piece.source_first
        assert round(clip.source_range.duration.value) == piece.last - piece.first
        assert round(clip.range_in_parent().start_time.value) == piece.first
    wanted = [item.name.replace("·", "-").upper() for item in markers_of(job)]
    # The adapter skips markers with a drop-frame semicolon, so their times are read by opentime itself.
    text = (tmp_path / "round.edl").read_text(encoding="ascii")
    marks = re.findall(r"^\* LOC: (\S+) \w+ +(.*)$", text, re.M)
    assert [name for _, name in marks] == wanted
    if not found.drop:
        assert [marker.name for clip in clips for marker in clip.markers] == wanted
    frames = [otio.opentime.from_timecode(at, float(found.fps)).value for at, _ in marks]
    hour = found.parse("01:00:00:00")
    assert frames == [found.frame(item.start_s) + hour for item in markers_of(job)]


@settings(max_examples=25)
@given(times=starts(), title=titles, rate=st.sampled_from(RATES))
def test_edl_stays_plain_and_contiguous(scratch: Path, times: list[float], title: str, rate: str) -> None:
    job = Job(small_round(scratch / "edl", times, evidence=title), Choices(title=title, rate=rate))
    write(find("edl"), job, scratch / "round.edl")
    text = (scratch / "round.edl").read_text(encoding="ascii")
    events = re.findall(r"^\d{3}  CLIP001  V     C        (\S+) (\S+) (\S+) (\S+)$", text, re.M)
    pieces = pieces_of(job)[1]
    assert len(events) == len(pieces)
    assert all(a[3] == b[2] and a[1] == b[0] for a, b in pairwise(events))
    lines = [line for line in text.split("\n") if line]
    assert all(re.match(r"TITLE: |FCM: |\d{3}  |\* FROM CLIP NAME:  |\* LOC: ", line) for line in lines)


@pytest.mark.parametrize("path", truth_files()[:2], ids=lambda p: p.parent.name)
def test_marker_list_has_every_hole_and_stroke(tmp_path: Path, path: Path) -> None:
    job = Job(save_truth(path, tmp_path / "round"), Choices(rate="50"))
    write(find("markers"), job, tmp_path / "markers.csv")
    with (tmp_path / "markers.csv").open(encoding="utf-8", newline="") as source:
        rows = list(csv.DictReader(source))
    assert len(rows) == len(job.folder.holes) + len(job.folder.shots)
    assert [float(row["start_s"]) for row in rows] == sorted(float(row["start_s"]) for row in rows)
    assert all(abs(int(row["frame"]) / 50 - float(row["start_s"])) < 0.0101 for row in rows)

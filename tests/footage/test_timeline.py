"""Forty clips, two cameras, overlaps: one timeline and the way back."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from reviewkit.errors import ReviewkitError, SourceError
from reviewkit.footage import timeline
from reviewkit.footage.probe import Media, Picture
from reviewkit.footage.timeline import Timeline, join

TEE_OFF = datetime(2026, 5, 1, 9, 0, tzinfo=UTC)
Row = tuple[str, float | None, float, str]
"""Name, seconds after the tee-off at which it began, length in seconds, camera."""


@pytest.fixture
def joined(monkeypatch: pytest.MonkeyPatch):  # type: ignore[no-untyped-def]
    def make(rows: list[Row], by_time: bool = True) -> Timeline:
        files = {name: media(name, began, length, camera) for name, began, length, camera in rows}
        monkeypatch.setattr(timeline, "probe", lambda path: files[path.name])
        return join([Path(name) for name in files], by_time)

    return make


def media(name: str, began: float | None, length: float, camera: str) -> Media:
    at = None if began is None else TEE_OFF + timedelta(seconds=began)
    return Media(Path(name), length, Picture("h264", 1920, 1080, 30.0, False, 0), 0, 1, at, camera)


def shown(line: Timeline) -> list[tuple[str, float, float, float]]:
    return [(c.media.path.name, c.offset_s, c.in_s, c.out_s) for c in line.clips]


def test_order_given_is_kept(joined) -> None:  # type: ignore[no-untyped-def]
    line = joined([("b", 50, 10, "x"), ("a", None, 5, "x")], by_time=False)
    assert shown(line) == [("b", 0, 0, 10), ("a", 10, 0, 5)]
    assert (line.duration_s, line.seams) == (15, (10,))


@pytest.mark.parametrize(
    ("rows", "expected", "left_out"),
    [
        # A gap between clips is walked over: the timeline has none.
        ([("b", 500, 10, "x"), ("a", 0, 20, "x")], [("a", 0, 0, 20), ("b", 20, 0, 10)], []),
        # A second camera that joins before the first stops shows only what is new.
        ([("a", 0, 20, "x"), ("b", 15, 20, "y")], [("a", 0, 0, 20), ("b", 20, 5, 20)], []),
        # One that films while the first does adds nothing.
        ([("a", 0, 60, "x"), ("b", 15, 20, "y"), ("c", 90, 5, "x")],
         [("a", 0, 0, 60), ("c", 60, 0, 5)], ["b"]),
        # Clocks that disagree by less than a second cut nothing off.
        ([("a", 0, 20, "x"), ("b", 19.4, 20, "y")], [("a", 0, 0, 20), ("b", 20, 0, 20)], []),
        # Parts of one recording, all stamped with its beginning, follow each other by name.
        ([("p2", 0, 30, "x"), ("p1", 0, 30, "x")], [("p1", 0, 0, 30), ("p2", 30, 0, 30)], []),
        # And another camera that films during the second part is known to overlap.
        ([("p1", 0, 30, "x"), ("p2", 0, 30, "x"), ("q", 35, 10, "y")],
         [("p1", 0, 0, 30), ("p2", 30, 0, 30)], ["q"]),
    ],
)  # fmt: skip
def test_by_recording_time(joined, rows: list[Row], expected: list[object], left_out: list[str]) -> None:  # type: ignore[no-untyped-def]
    line = joined(rows)
    assert shown(line) == expected
    assert [media.path.name for media in line.left_out] == left_out


def test_a_clip_without_a_time_is_told(joined) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(SourceError, match="b: says no recording time"):
        joined([("a", 0, 1, "x"), ("b", None, 1, "x")])
    with pytest.raises(ReviewkitError, match="No footage"):
        join([])


def test_the_way_back_over_forty_clips(joined) -> None:  # type: ignore[no-untyped-def]
    line = joined([(f"c{n:02d}", n * 360.0, 300.0 + n, "xy"[n % 2]) for n in range(40)])
    assert len(line.clips) == 40
    for clip in line.clips:
        for inside in (0.0, 1.5, clip.length_s / 2):
            place = line.at(clip.offset_s + inside)
            assert place.clip is clip
            assert place.second == pytest.approx(clip.in_s + inside)
    assert line.at(1e9).second == line.clips[-1].out_s
    assert line.at(-5).second == 0.0
    spans = line.spans(line.clips[3].offset_s - 10, line.clips[4].offset_s + 20)
    assert [(clip.media.path.name, end - start) for clip, start, end in spans] == [
        ("c02", pytest.approx(10)),
        ("c03", pytest.approx(line.clips[3].length_s)),
        ("c04", pytest.approx(20)),
    ]

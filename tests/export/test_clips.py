"""Clips and reels, read back by PyAV: what they show, how long they are, whether they were encoded."""

from __future__ import annotations

import hashlib
from pathlib import Path

import av
import numpy as np
import pytest
from support.hostile import small_round

from reviewkit.errors import ReviewkitError
from reviewkit.export.clips import Wanted, picks_of, write_clips, write_reel
from reviewkit.export.footage import timeline_of
from reviewkit.footage.cut import Look, key_frames
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.timeline import Timeline
from reviewkit.log import RoundFolder
from reviewkit.stats import strokes_gained

TIMES = (3.4, 20.0, 41.5)


@pytest.fixture
def folder(tmp_path: Path, footage: Path) -> RoundFolder:
    source: dict[str, object] = {"path": str(footage), "offset_s": 0.0, "duration_s": 60.0}
    return small_round(tmp_path / "round", TIMES, 60.0, sources=[source])


@pytest.fixture
def timeline(folder: RoundFolder) -> Timeline:
    return timeline_of(folder)


def pictures(path: Path) -> list[str]:
    with av.open(str(path)) as container:
        return [hashlib.sha256(bytes(p)).hexdigest() for p in container.demux(video=0) if p.size]


def seconds(path: Path) -> float:
    with av.open(str(path)) as container:
        return (container.duration or 0) / 1e6


def size(path: Path) -> tuple[int, int]:
    with av.open(str(path)) as container:
        frame = next(container.decode(video=0))
        turned = frame.rotation % 180 == 90
        return (frame.height, frame.width) if turned else (frame.width, frame.height)


def test_a_hole_is_copied_from_the_key_frame_before_it(
    tmp_path: Path, footage: Path, folder: RoundFolder, timeline: Timeline
) -> None:
    picks = picks_of(folder, Wanted(holes=(1,)))
    [(path, copied)] = write_clips(timeline, picks, tmp_path, 0.0, Look())
    assert (path.name, copied) == ("h01-hole-01.mp4", True)
    whole, part = pictures(footage), pictures(path)
    # The footage has a key frame a second, so the clip shows 3 s to 20 s, packet for packet.
    assert part == whole[3 * 25 : 3 * 25 + len(part)]
    assert len(part) == pytest.approx(16.6 * 25, abs=14)
    with av.open(str(path)) as container:
        assert len(container.streams.audio) == 2
        assert next(container.decode(video=0)).rotation == 90


def test_an_exact_clip_is_encoded_from_the_frame(
    tmp_path: Path, footage: Path, folder: RoundFolder, timeline: Timeline
) -> None:
    picks = picks_of(folder, Wanted(strokes=((2, 3),)))
    [(path, copied)] = write_clips(timeline, picks, tmp_path, 0.5, Look(exact=True))
    assert (path.name, copied) == ("h02-hole-02-stroke-03-chip-56.mp4", False)
    assert seconds(path) == pytest.approx(picks[0].end_s - picks[0].start_s + 1.0, abs=0.08)
    with av.open(str(path)) as container:
        first = next(container.decode(video=0)).to_ndarray(format="gray")
    with av.open(str(footage)) as container:
        frames = [frame.to_ndarray(format="gray") for frame in container.decode(video=0)]
    # Encoded pictures are turned for good; ffmpeg's turn of 90 degrees is numpy's rot90.
    wanted = round((picks[0].start_s - 0.5) * 25)
    distance = [abs(first.astype(int) - np.rot90(frame).astype(int)).mean() for frame in frames]
    assert abs(min(range(len(distance)), key=distance.__getitem__) - wanted) <= 1


def test_upright_crops_and_leaves_what_is_upright_already(
    tmp_path: Path, footage: Path, folder: RoundFolder, timeline: Timeline
) -> None:
    picks = picks_of(folder, Wanted(strokes=((1, 1),)))
    [(path, copied)] = write_clips(timeline, picks, tmp_path, 0.0, Look(upright=True))
    assert copied and size(path) == (180, 320)
    wide = tmp_path / "wide.mp4"
    run(["-y", "-f", "lavfi", "-i", "testsrc2=s=320x180:r=25:d=60", "-preset", "ultrafast", wide], wide)
    [(path, copied)] = write_clips(timeline_of(folder, [wide]), picks, tmp_path, 0.0, Look(upright=True))
    assert not copied and size(path) == (100, 180)


def test_best_and_worst_are_those_of_strokes_gained(folder: RoundFolder) -> None:
    gains = sorted(strokes_gained(folder).strokes, key=lambda item: item.mean)
    names = [pick.name for pick in picks_of(folder, Wanted(best=1, worst=2))]
    best, worst = gains[-1], gains[0]
    assert names[0].startswith(f"best-01-h{best.hole:02d}-hole-{best.hole:02d}-stroke-{best.stroke:02d}")
    assert names[1].startswith(f"worst-01-h{worst.hole:02d}-hole-{worst.hole:02d}-stroke-{worst.stroke:02d}")
    assert len(names) == 3 and names == sorted(names)


@pytest.mark.parametrize("exact", [False, True])
def test_a_reel_joins_its_clips(tmp_path: Path, folder: RoundFolder, timeline: Timeline, exact: bool) -> None:
    picks = picks_of(folder, Wanted(strokes=((1, 1), (2, 5), (3, 5))))
    path, copied = write_reel(timeline, picks, tmp_path, 0.0, Look(exact=exact))
    assert (path.name, copied) == ("reel.mp4", not exact)
    wanted = sum(pick.end_s - pick.start_s for pick in picks)
    # Copied clips begin up to a second early here, at their key frames.
    assert wanted - 0.3 <= seconds(path) <= wanted + (0.3 if exact else 3.2)
    with av.open(str(path)) as container:
        # The footage's own rate stays.
        assert sum(1 for _ in container.decode(video=0)) == pytest.approx(seconds(path) * 25, rel=0.05)
    assert [item.name for item in tmp_path.iterdir() if item.name.startswith(".")] == []


def test_a_clip_over_two_files_holds_both(tmp_path: Path, footage: Path) -> None:
    halves = [tmp_path / "one.mp4", tmp_path / "two.mp4"]
    for half, start in zip(halves, ("0", "30"), strict=True):
        run(["-y", "-ss", start, "-t", "30", "-i", footage, "-map", "0:v", "-c", "copy", half], half)
    sources: list[dict[str, object]] = [
        {"path": str(half), "offset_s": 30.0 * n, "duration_s": 30.0} for n, half in enumerate(halves)
    ]
    folder = small_round(tmp_path / "round", TIMES, 60.0, sources=sources)
    picks = picks_of(folder, Wanted(holes=(2,)))
    [(path, copied)] = write_clips(timeline_of(folder), picks, tmp_path, 0.0, Look())
    assert copied and seconds(path) == pytest.approx(21.5, abs=0.2)
    whole = pictures(footage)
    # Joining puts the coding parameters before each key frame again; every other packet is as it was.
    found = pictures(path)
    assert [n for n in range(490) if found[n] != whole[500 + n]] == list(range(0, 490, 25))


def test_sound_alone_is_cut_too(tmp_path: Path, folder: RoundFolder) -> None:
    sound = tmp_path / "talk.opus"
    run(["-y", "-f", "lavfi", "-i", "sine=d=60", "-c:a", "libopus", sound], sound)
    picks = picks_of(folder, Wanted(strokes=((1, 1), (2, 2))))
    [(path, copied), _] = write_clips(timeline_of(folder, [sound]), picks, tmp_path, 0.5, Look(exact=True))
    assert copied and path.suffix == ".opus"
    # Ogg is cut at its pages, which hold a second of sound.
    wanted = picks[0].end_s - picks[0].start_s + 1.0
    assert wanted - 0.1 <= seconds(path) <= wanted + 1.1


def test_key_frames_are_those_of_the_file(footage: Path) -> None:
    assert key_frames(footage, 4.5, 8.0) == pytest.approx([5.0, 6.0, 7.0, 8.0])


@pytest.mark.parametrize(
    ("wanted", "words"),
    [
        (Wanted(), "No clips were asked for"),
        (Wanted(holes=(9,)), "hole 9 has no time in this round. Holes: 1, 2, 3."),
        (
            Wanted(strokes=((2, 8),)),
            "stroke 8 of hole 2 has no time in this round. Strokes told: 1, 2, 3, 4, 5.",
        ),
    ],
)
def test_what_is_not_there_is_told(folder: RoundFolder, wanted: Wanted, words: str) -> None:
    with pytest.raises(ReviewkitError) as error:
        picks_of(folder, wanted)
    assert words in str(error.value)


def test_footage_too_short_is_told(tmp_path: Path, folder: RoundFolder, footage: Path) -> None:
    short = tmp_path / "short.mp4"
    run(["-y", "-t", "10", "-i", footage, "-map", "0:v", "-c", "copy", short], short)
    with pytest.raises(ReviewkitError, match="past the end of the footage"):
        list(
            write_clips(
                timeline_of(folder, [short]), picks_of(folder, Wanted(holes=(3,))), tmp_path, 1.0, Look()
            )
        )

"""Footage of many kinds through chapters and clips, read back by PyAV: packets, times, turn, tags, sync."""

from __future__ import annotations

import hashlib
from fractions import Fraction
from pathlib import Path
from typing import Any

import av
import numpy as np
import numpy.typing as npt
import pytest
from export.sources import KINDS, NAMES, SECONDS, TURNS, Sources
from support.hostile import small_round

from reviewkit.errors import SourceError
from reviewkit.export import Job
from reviewkit.export.chapters import chapters_of
from reviewkit.export.clips import Pick, write_clips, write_reel
from reviewkit.export.into_footage import write_into
from reviewkit.footage.cut import Look
from reviewkit.footage.timeline import join
from reviewkit.footage.tracks import Track, held

TIMES = (1.0, 4.0, 8.0)
RATE = 8000
# Which kinds of sound or picture a container has no place for.
UNFIT = {
    ("prores.mov", ".mp4"): "prores",
    ("motion.avi", ".mp4"): "pcm_u8",
    ("flac.mkv", ".mov"): "flac",
    ("web.webm", ".mov"): "this footage",
    ("web.webm", ".mp4"): "vp8",
}
LEFT_OUT = {
    ("attached.mkv", ".mp4"): ["attachment 3 is left out: .mp4 cannot hold it here."],
    ("attached.mkv", ".mov"): ["attachment 3 is left out: .mov cannot hold it here."],
    ("cover.mp4", ".mov"): ["the cover picture (png) is left out: .mov cannot hold it here."],
    ("pcm.mov", ".mp4"): ["few players take PCM sound from an MP4; .mov and .mkv hold it as usual."],
    ("turned-90.mov", ".mp4"): ["few players take PCM sound from an MP4; .mov and .mkv hold it as usual."],
}


@pytest.fixture(scope="module")
def sources(tmp_path_factory: pytest.TempPathFactory) -> Sources:
    return Sources(tmp_path_factory.mktemp("sources"))


def filmed(home: Path, source: Path) -> Job:
    clip: dict[str, object] = {"path": str(source), "offset_s": 0.0, "duration_s": float(SECONDS)}
    return Job(small_round(home / "round", TIMES, float(SECONDS), sources=[clip]))


def streams(path: Path) -> list[dict[str, Any]]:
    """What a person may miss of each picture, sound and subtitle track, with a hash of all its bytes."""
    with av.open(str(path)) as container:
        found = {
            stream.index: {
                "kind": stream.type,
                "codec": stream.codec_context.codec.canonical_name,
                "language": stream.language if stream.language != "und" else None,
                "default": bool(stream.disposition & av.stream.Disposition.default),
                "cover": bool(stream.disposition & av.stream.Disposition.attached_pic),
                "hash": hashlib.sha256(),
                "times": [],
            }
            for stream in container.streams
            if stream.type in ("video", "audio", "subtitle")
        }
        for packet in container.demux([container.streams[index] for index in found]):
            found[packet.stream.index]["hash"].update(bytes(packet))
            if packet.size and packet.pts is not None:
                found[packet.stream.index]["times"].append(float(packet.pts * packet.time_base))
    return [{**each, "hash": each["hash"].hexdigest()} for each in found.values()]


def facts(path: Path) -> dict[str, Any]:
    with av.open(str(path)) as container:
        frame = next(container.decode(video=0))
        return {
            "rotation": frame.rotation,
            "make": {k.lower(): v for k, v in container.metadata.items()}.get("com.apple.quicktime.make"),
            "seconds": container.duration / 1e6,
            "chapters": [
                (float(item["start"] * item["time_base"]), item["metadata"]["title"])
                for item in container.chapters()
            ],
        }


@pytest.mark.parametrize("suffix", [".mp4", ".mov", ".mkv"])
@pytest.mark.parametrize("name", NAMES)
def test_chapters_leave_every_track_as_it_was(
    tmp_path: Path, sources: Sources, name: str, suffix: str
) -> None:
    source, out = sources.make(name), tmp_path / f"out{suffix}"
    job = filmed(tmp_path, source)
    if (name, suffix) in UNFIT:
        with pytest.raises(SourceError, match=rf"cannot hold {UNFIT[name, suffix]} .* Name it \.mkv"):
            write_into(job, out)
        assert sorted(path.name for path in tmp_path.iterdir()) == ["round"]
        return
    assert write_into(job, out) == LEFT_OUT.get((name, suffix), [])
    before, after = facts(source), facts(out)
    assert after["chapters"] == [(pytest.approx(c.start_s, abs=2e-3), c.title) for c in chapters_of(job)]
    assert (after["rotation"], after["make"]) == (before["rotation"], before["make"])
    assert (before["make"] == "Meadow") == (name in TURNS)
    assert after["seconds"] == pytest.approx(before["seconds"], abs=0.06)
    had, have = streams(source), streams(out)
    if suffix == ".mov":
        had = [each for each in had if not each["cover"]]
    # A cover stands first or last, as the container has it; words of one kind are written as another's.
    for each in (had, have):
        each.sort(key=lambda stream: stream["cover"])
    assert len(have) == len(had)
    for old, new in zip(had, have, strict=True):
        assert (new["kind"], new["cover"]) == (old["kind"], old["cover"])
        if old["kind"] == "subtitle":
            continue
        assert (new["codec"], new["language"]) == (old["codec"], old["language"])
        if name != "camcorder.mts" or old["kind"] == "audio":
            assert new["hash"] == old["hash"]
        # Transport streams mark the units of H.264 otherwise than files do.
        if len(new["times"]) == len(old["times"]) and old["times"]:
            shift = new["times"][0] - old["times"][0]
            assert np.abs(np.subtract(new["times"], old["times"]) - shift).max() < 0.002
    sound = [
        (old["default"], new["default"]) for old, new in zip(had, have, strict=True) if old["kind"] == "audio"
    ]
    if name == "tracks.mp4":
        assert sound == [(False, False), (True, True), (False, False)]


def test_a_transport_stream_shows_the_same_pictures(tmp_path: Path, sources: Sources) -> None:
    source, out = sources.make("camcorder.mts"), tmp_path / "out.mp4"
    write_into(filmed(tmp_path, source), out)
    old, new = pictures(source), pictures(out)
    assert len(old[0]) == len(new[0]) and np.array_equal(old[1], new[1])


@pytest.mark.parametrize("suffix", [".mp4", ".mov"])
def test_hevc_is_named_as_players_look_for_it(tmp_path: Path, sources: Sources, suffix: str) -> None:
    out = tmp_path / f"out{suffix}"
    write_into(filmed(tmp_path, sources.make("hevc.mkv")), out)
    with av.open(str(out)) as container:
        assert container.streams.video[0].codec_tag == "hvc1"


def test_a_cover_is_attached_in_matroska(tmp_path: Path, sources: Sources) -> None:
    """Matroska's specification, section "Cover Art": an attachment named cover, with its media type."""
    out = tmp_path / "out.mkv"
    write_into(filmed(tmp_path, sources.make("cover.mp4")), out)
    with av.open(str(out)) as container:
        [cover] = [s for s in container.streams.video if s.disposition & av.stream.Disposition.attached_pic]
        tags = {key.lower(): value for key, value in cover.metadata.items()}
        assert (tags["filename"], tags["mimetype"]) == ("cover.png", "image/png")


def test_subtitles_that_are_pictures_do_not_fit_mp4() -> None:
    given = [
        Track(0, "video", "h264"),
        Track(1, "subtitle", "hdmv_pgs_subtitle"),
        Track(2, "subtitle", "ass"),
    ]
    assert [track.index for track in held(given, Path("x.mp4"))] == [0, 2]
    assert held(given, Path("x.mkv")) == given


def pictures(path: Path) -> tuple[list[float], npt.NDArray[np.int16]]:
    """Times of the frames, and the frames small and grey."""
    with av.open(str(path)) as container:
        frames = list(container.decode(video=0))
    grey = [frame.to_ndarray(format="gray").astype(np.int16)[::3, ::3] for frame in frames]
    return [frame.time for frame in frames], np.stack(grey)


def sound(path: Path) -> npt.NDArray[np.float64]:
    """The first track's sound at 8 kHz from time 0, silence where the file has none."""
    heard = np.zeros(RATE * SECONDS * 3)
    with av.open(str(path)) as container:
        resampler = av.AudioResampler("fltp", "mono", 48000)
        for frame in container.decode(audio=0):
            at = round(frame.time * RATE)
            for piece in resampler.resample(frame):
                values = piece.to_ndarray()[0]
                values = values[: len(values) // 6 * 6].reshape(-1, 6).mean(axis=1)
                heard[at : at + len(values)] = values
                at += len(values)
    return heard


def moment(heard: npt.NDArray[np.float64], source: npt.NDArray[np.float64], at_s: float) -> float:
    """When in the source that sounds which is heard for a third of a second from `at_s` on."""
    piece = heard[round(at_s * RATE) :][: RATE // 3]
    size = len(source) + len(piece)
    found = np.fft.irfft(np.fft.rfft(source, size) * np.conj(np.fft.rfft(piece, size)), size)
    return float(np.argmax(found[: len(source)])) / RATE


def suffix_of(name: str, exact: bool) -> str:
    if name.endswith((".mkv", ".webm")):
        return ".mkv"
    kept = {"pcm.mov": ".mov", "prores.mov": ".mov", "motion.avi": ".mkv"}
    return ".mp4" if exact else kept.get(name, ".mp4")


@pytest.mark.parametrize("exact", [False, True], ids=["copied", "encoded"])
@pytest.mark.parametrize("name", KINDS)
def test_clips_and_reels_show_and_sound_the_same_moment(
    tmp_path: Path, sources: Sources, name: str, exact: bool
) -> None:
    source = sources.make(name)
    (times, shown), heard = pictures(source), sound(source)
    # Web footage made here has one key frame only, and a copy cannot begin where there is none.
    copied = not exact and name != "web.webm"
    timeline, look = join([source]), Look(exact=exact)
    spans = [(2.4, 3.6), (5.4, 6.6), (8.4, 9.6)]
    picks = [Pick(f"{n}", *span) for n, span in enumerate(spans)]
    [(clip, as_it_is)] = write_clips(timeline, picks[:1], tmp_path, 0.0, look)
    reel, _ = write_reel(timeline, picks, tmp_path, 0.0, look)
    assert (as_it_is, clip.suffix, reel.suffix) == (copied, *[suffix_of(name, not copied)] * 2)
    for path, checks in ((clip, (0.6,)), (reel, (0.6, 1.0, 0.5))):
        seen, frames = pictures(path)
        sounds = sound(path)
        with av.open(str(path)) as container:
            length = container.duration / 1e6
        for number, place in enumerate(checks):
            at = length * number / len(checks) + place * (1 if number == 0 else 0.6)
            frame = min(range(len(seen)), key=lambda n: abs(seen[n] - at))
            nearest = int(np.abs(shown - frames[frame]).mean(axis=(1, 2)).argmin())
            apart = times[nearest] - moment(sounds, heard, seen[frame])
            # Where frames come at uneven times, one may stand in for its neighbour.
            assert apart == pytest.approx(0.0, abs=0.1 if name == "uneven.mp4" else 0.045)
    if not copied:
        assert times[int(np.abs(shown - pictures(clip)[1][0]).mean(axis=(1, 2)).argmin())] == pytest.approx(
            2.4 + times[0], abs=0.06
        )
        assert length == pytest.approx(3.6, abs=0.3)


def test_a_reel_keeps_the_rate_of_its_footage(tmp_path: Path, sources: Sources) -> None:
    picks = [Pick("a", 1.0, 2.0), Pick("b", 5.0, 6.0)]
    for name, rate in (("reordered.mp4", Fraction(25)), ("uneven.mp4", Fraction(30000, 1001))):
        path, _ = write_reel(join([sources.make(name)]), picks, tmp_path, 0.0, Look(exact=True))
        with av.open(str(path)) as container:
            assert container.streams.video[0].average_rate == pytest.approx(rate, rel=0.02)

"""Chapters in the footage, read back by PyAV and mkvtoolnix; every packet stays as it was."""

from __future__ import annotations

import hashlib
import json
import shutil
import subprocess
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import av
import jsonschema
import mutagen.mp4
import pytest
from hypothesis import Phase, example, given, settings
from hypothesis import strategies as st
from support.hostile import PIECES, small_round, starts, titles

from reviewkit.errors import FileError, FolderError, ReviewkitError, SourceError
from reviewkit.export import Choices, Job, ffmetadata, find, matroska, write
from reviewkit.export.base import one_line
from reviewkit.export.chapters import Chapter, chapters_of
from reviewkit.export.into_footage import write_into
from reviewkit.footage.append import header_of
from reviewkit.footage.ffmpeg import run
from reviewkit.log import RoundFolder
from reviewkit.timecode import parse

HARD = "⛳ {hole} =;#\\ \n --> <script> שלום ]]> "


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("formats")


def filmed(home: Path, *clips: Path, length_s: float = 60.0) -> RoundFolder:
    each = length_s / len(clips)
    sources: list[dict[str, object]] = [
        {"path": str(clip), "offset_s": each * number, "duration_s": each}
        for number, clip in enumerate(clips)
    ]
    return small_round(home / "round", length_s=length_s, sources=sources)


def packets(path: Path) -> list[tuple[str, str]]:
    """Type and hash of every packet's bytes, a line a picture or sound track."""
    with av.open(str(path)) as container:
        streams = [s for s in container.streams if s.type in ("video", "audio")]
        digests = {s.index: hashlib.sha256() for s in streams}
        for packet in container.demux(streams):
            digests[packet.stream.index].update(bytes(packet))
        return [(s.type, digests[s.index].hexdigest()) for s in streams]


def facts(path: Path) -> dict[str, Any]:
    with av.open(str(path)) as container:
        frame = next(container.decode(video=0))
        return {
            "rotation": frame.rotation,
            "tags": {key.lower(): value for key, value in container.metadata.items()},
            "timecode": {k.lower(): v for k, v in container.streams.video[0].metadata.items()}["timecode"],
            "languages": [track.language for track in container.streams.audio],
            "seconds": container.duration / 1e6,
            "chapters": [
                (
                    float(item["start"] * item["time_base"]),
                    float(item["end"] * item["time_base"]),
                    item["metadata"].get("title"),
                )
                for item in container.chapters()
            ],
        }


@pytest.mark.parametrize("suffix", [".mp4", ".mov", ".mkv"])
def test_packets_rotation_and_tags_stay(tmp_path: Path, footage: Path, suffix: str) -> None:
    job = Job(filmed(tmp_path, footage), Choices(title=HARD))
    out = tmp_path / f"out{suffix}"
    assert write_into(job, out) == []
    before, after = facts(footage), facts(out)
    assert packets(out) == packets(footage)
    assert (after["rotation"], after["timecode"]) == (before["rotation"], before["timecode"])
    assert before["rotation"] == 90 and before["timecode"] == "10:00:00:00"
    assert after["seconds"] == pytest.approx(before["seconds"], abs=0.05)
    assert after["languages"][1] == "fra"
    kept = ("title", "com.apple.quicktime.make", "creation_time")
    assert {name: after["tags"].get(name) for name in kept[:2]} == {n: before["tags"][n] for n in kept[:2]}
    assert after["chapters"] == [
        (pytest.approx(c.start_s, abs=1e-6), pytest.approx(c.end_s, abs=1e-6), c.title)
        for c in chapters_of(job)
    ]


@pytest.mark.parametrize("front", [False, True], ids=["header last", "header first"])
def test_a_file_without_chapters_stays_byte_for_byte(tmp_path: Path, footage: Path, front: bool) -> None:
    """Appended chapters, read by PyAV (the text track) and mutagen (the short list)."""
    plain, out = tmp_path / "plain.mp4", tmp_path / "out.mp4"
    place = ["-movflags", "+use_metadata_tags" + ("+faststart" if front else "")]
    run(
        [
            "-y",
            "-i",
            footage,
            "-map",
            "0:v",
            "-map",
            "0:a",
            "-map_chapters",
            "-1",
            "-c",
            "copy",
            *place,
            plain,
        ],
        plain,
    )
    job = Job(filmed(tmp_path, plain), Choices(title=HARD))
    assert write_into(job, out) == []
    old, new = plain.read_bytes(), out.read_bytes()
    changed = [place for place in range(len(old)) if old[place] != new[place]]
    assert len(changed) <= 4 and old[changed[0] : changed[0] + 4] == b"moov"
    before, after = facts(plain), facts(out)
    assert packets(out) == packets(plain)
    assert {**after, "chapters": []} == {**before, "chapters": []} and before["chapters"] == []
    wanted = [
        (pytest.approx(c.start_s, abs=1e-3), pytest.approx(c.end_s, abs=1e-3), c.title)
        for c in chapters_of(job)
    ]
    assert after["chapters"] == wanted
    listed = [(c.start, c.title) for c in mutagen.mp4.MP4(out).chapters]
    assert listed == [(pytest.approx(c.start_s, abs=1e-3), c.title) for c in chapters_of(job)]
    # A second time there are chapters already, and they give way to the new ones.
    again = tmp_path / "again.mp4"
    write_into(Job(filmed(tmp_path / "more", out), Choices(title="No. {hole}")), again)
    assert [item[2] for item in facts(again)["chapters"]] == ["Opening", "No. 1", "No. 2", "No. 3", "Closing"]
    assert packets(again) == packets(plain)


@pytest.mark.parametrize("data", [b"", b"no boxes at all", b"\0\0\0\x08moov", b"\0\0\0\0mdat" + bytes(40)])
def test_files_that_are_not_mp4_are_left_to_ffmpeg(tmp_path: Path, data: bytes) -> None:
    (tmp_path / "x.mp4").write_bytes(data)
    assert header_of(tmp_path / "x.mp4") is None


def test_clips_are_joined_on_the_rounds_timeline(tmp_path: Path, footage: Path) -> None:
    halves = [tmp_path / "it's 1.mp4", tmp_path / "two.mp4"]
    for half, start in zip(halves, ("0", "30"), strict=True):
        run(
            [
                "-y",
                "-ss",
                start,
                "-t",
                "30",
                "-i",
                footage,
                "-map",
                "0:v",
                "-map",
                "0:a:0",
                "-c",
                "copy",
                half,
            ],
            half,
        )
    out = tmp_path / "out.mp4"
    write_into(Job(filmed(tmp_path, *halves)), out)
    found = facts(out)
    assert [item[2] for item in found["chapters"]][:2] == ["Opening", "Hole 1 · par 4"]
    assert found["chapters"][-1][1] == pytest.approx(60.0, abs=0.1) == found["seconds"]
    video = [[p for p in packets(half) if p[0] == "video"] for half in halves]
    assert video[0] != video[1] and packets(out)[0][0] == "video"
    with av.open(str(out)) as container:
        assert sum(p.size > 0 for p in container.demux(video=0)) == 1500


def test_chapters_past_the_media_are_cut(tmp_path: Path, footage: Path) -> None:
    folder = small_round(
        tmp_path / "round",
        times=(3.0, 20.0, 41.5, 80.0),
        length_s=90.0,
        sources=[{"path": str(footage), "offset_s": 0.0, "duration_s": 60.0}],
    )
    write_into(Job(folder), tmp_path / "out.mp4")
    found = facts(tmp_path / "out.mp4")
    assert found["seconds"] == pytest.approx(60.0, abs=0.1)
    assert [item[2] for item in found["chapters"]] == ["Opening", *(f"Hole {n} · par 4" for n in (1, 2, 3))]


def test_long_titles_are_cut_for_mp4_and_said_so(tmp_path: Path, footage: Path) -> None:
    job = Job(filmed(tmp_path, footage), Choices(title="é" * 150 + "{hole}"))
    assert write_into(job, tmp_path / "out.mp4") == ["titles cut to the 255 bytes that MP4 holds: 3."]
    assert write_into(job, tmp_path / "out.mkv") == []
    assert facts(tmp_path / "out.mp4")["chapters"][1][2] == "é" * 126 + "…"
    assert facts(tmp_path / "out.mkv")["chapters"][1][2] == "é" * 150 + "1"


def test_data_tracks_are_kept_or_told(tmp_path: Path, footage: Path) -> None:
    # A subtitle track renamed in place stands for a camera's telemetry, which no encoder here makes.
    words, plain, camera = tmp_path / "words.srt", tmp_path / "plain.mp4", tmp_path / "camera.mp4"
    words.write_text("1\n00:00:00,000 --> 00:00:05,000\ntelemetry\n")
    maps = ["-map", "0:v", "-map", "0:a", "-map", "1", "-map_chapters", "-1"]
    run(["-y", "-i", footage, "-i", words, *maps, "-c", "copy", "-c:s", "mov_text", plain], plain)
    camera.write_bytes(plain.read_bytes().replace(b"tx3g", b"gpmd").replace(b"sbtl", b"meta"))
    job = Job(filmed(tmp_path, camera))
    assert write_into(job, tmp_path / "out.mp4") == []
    with av.open(str(tmp_path / "out.mp4")) as container:
        assert sum(b"telemetry" in bytes(p) for p in container.demux() if p.stream.type == "data") == 1
    told = write_into(job, tmp_path / "out.mkv")
    assert len(told) == 1 and "(gpmd) is left out: .mkv cannot hold it" in told[0]


def test_what_cannot_be_done_is_told_and_nothing_is_written(tmp_path: Path, footage: Path) -> None:
    folder = filmed(tmp_path, footage)
    small = tmp_path / "small.mp4"
    run(["-y", "-t", "5", "-i", footage, "-s", "90x160", "-map", "0:v", small], small)
    mixed = filmed(tmp_path / "mixed", footage, small)
    gone = filmed(tmp_path / "gone", tmp_path / "gone.mp4")
    bare = small_round(tmp_path / "bare")
    bare.save(*_without_sources(bare))
    cases = [
        (folder, tmp_path / "out.avi", FileError, "no container that holds chapters"),
        (folder, footage, FileError, "is the footage itself"),
        (mixed, tmp_path / "out.mp4", ReviewkitError, "cannot be joined as is"),
        (gone, tmp_path / "out.mp4", SourceError, "has moved or gone"),
        (bare, tmp_path / "out.mp4", FolderError, "names no footage"),
    ]
    before = sorted(tmp_path.iterdir())
    for round_folder, out, error, words in cases:
        with pytest.raises(error, match=words):
            write_into(Job(round_folder), out)
    assert sorted(tmp_path.iterdir()) == before


def _without_sources(folder: RoundFolder) -> tuple[Any, dict[str, Any]]:
    from reviewkit.model import HoleScore, Round

    return Round((HoleScore(1, 1, 0.0, 30.0),), ()), {"sources": []}


many = st.lists(titles.map(one_line).filter(bool), min_size=1, max_size=60).map(
    lambda found: [Chapter(title, n * 1.234, (n + 1) * 1.234, n) for n, title in enumerate(found)]
)
"""Chapters with titles as `chapters_of` gives them, many in a file: one run of a program reads them all."""


@settings(max_examples=6, phases=(Phase.explicit, Phase.generate))
@given(chapters=many)
@example(chapters=[Chapter(text, n, n + 1, n) for n, text in enumerate(map(one_line, PIECES)) if text])
def test_ffmpeg_reads_ffmetadata(scratch: Path, chapters: list[Chapter]) -> None:
    """Read by ffmpeg itself, through Matroska (which keeps what is written) and PyAV."""
    path, out = scratch / "chapters.ffmeta", scratch / "ff.mkv"
    path.write_bytes(ffmetadata.text_of(chapters).encode("utf-8"))
    sound = ["-f", "lavfi", "-i", "anullsrc=d=0.1"]
    run(["-y", *sound, "-i", path, "-map", "0", "-map_chapters", "1", "-c:a", "pcm_s16le", out], out)
    found = [(start, title[:-1] if title.endswith("\\ ") else title) for start, title in titled(out)]
    assert found == [(pytest.approx(c.start_s, abs=0.001), c.title) for c in chapters]


@pytest.mark.skipif(not shutil.which("mkvmerge"), reason="mkvtoolnix is not installed")
@settings(max_examples=6, phases=(Phase.explicit, Phase.generate))
@given(chapters=many)
@example(chapters=[Chapter(text, n, n + 1, n) for n, text in enumerate(map(one_line, PIECES)) if text])
def test_mkvtoolnix_reads_the_xml(scratch: Path, chapters: list[Chapter]) -> None:
    path, sound, out = scratch / "chapters.xml", scratch / "sound.mka", scratch / "xml.mkv"
    path.write_bytes(matroska.text_of(chapters).encode("utf-8"))
    if not sound.exists():
        run(["-y", "-f", "lavfi", "-i", "anullsrc=d=0.1", "-c:a", "pcm_s16le", sound], sound)
    command = ["mkvmerge", "-o", out, "--chapters", path, sound]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout
    expected = [(pytest.approx(c.start_s, abs=0.001), c.title) for c in chapters]
    assert titled(out) == expected
    back = subprocess.run(["mkvextract", out, "chapters", "-"], capture_output=True, check=True).stdout
    atoms = ET.fromstring(back.decode("utf-8-sig")).iter("ChapterAtom")
    found = [(parse(a.findtext("ChapterTimeStart") or ""), a.findtext(".//ChapterString")) for a in atoms]
    assert found == expected


def titled(path: Path) -> list[tuple[float, str]]:
    with av.open(str(path)) as container:
        return [
            (float(item["start"] * item["time_base"]), item["metadata"]["title"])
            for item in container.chapters()
        ]


def test_each_chapter_file_is_written_for_a_round(tmp_path: Path) -> None:
    job = Job(small_round(tmp_path / "round"))
    for name, text_of in (("ffmetadata", ffmetadata.text_of), ("matroska", matroska.text_of)):
        path = tmp_path / find(name).file
        assert write(find(name), job, path) == ()
        assert path.read_text(encoding="utf-8") == text_of(chapters_of(job))


# Fields of "JSON Chapters Format", version 1.2, of the open podcast namespace, as published: `version` and
# `chapters` are required, of a chapter `startTime`; seconds as numbers; ascending order.
JSON_CHAPTERS: dict[str, Any] = {
    "type": "object",
    "required": ["version", "chapters"],
    "additionalProperties": False,
    "properties": {
        **{
            name: {"type": "string"} for name in ("author", "title", "podcastName", "description", "fileName")
        },
        "version": {"type": "string", "pattern": r"^1\.2\.\d+$"},
        "waypoints": {"type": "boolean"},
        "chapters": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["startTime"],
                "additionalProperties": False,
                "properties": {
                    "startTime": {"type": "number", "minimum": 0},
                    "endTime": {"type": "number", "minimum": 0},
                    "title": {"type": "string", "minLength": 1},
                    "img": {"type": "string"},
                    "url": {"type": "string"},
                    "toc": {"type": "boolean"},
                    "location": {"type": "object"},
                },
            },
        },
    },
}


@given(times=starts(), title=titles)
def test_json_chapters_have_the_published_fields(scratch: Path, times: list[float], title: str) -> None:
    job = Job(small_round(scratch / "json", times), Choices(title=title))
    write(find("chapters-json"), job, scratch / "chapters.json")
    data = json.loads((scratch / "chapters.json").read_text(encoding="utf-8"))
    jsonschema.validate(data, JSON_CHAPTERS)
    found = [(item["startTime"], item["endTime"], item["title"]) for item in data["chapters"]]
    assert found == [(c.start_s, round(c.end_s, 3), c.title) for c in chapters_of(job)]
    assert [item[0] for item in found] == sorted({item[0] for item in found})

"""Chapters of a round, and the two forms that every round folder holds."""

from __future__ import annotations

import html
from itertools import pairwise
from pathlib import Path

import pytest
import webvtt
from hypothesis import given
from hypothesis import strategies as st
from support.hostile import small_round, starts, titles
from support.truth import save_truth, truth_files

from reviewkit import timecode
from reviewkit.errors import FolderError, ReviewkitError
from reviewkit.export import Choices, Job, find, write, write_default_chapters
from reviewkit.export.base import shorten
from reviewkit.export.chapters import Chapter, chapters_of, join_short
from reviewkit.export.description import notes
from reviewkit.export.titles import fill, score_word
from reviewkit.log import RoundFolder
from reviewkit.model import HoleScore, Round


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("chapters")


@given(times=starts(), title=titles)
def test_chapters_cover_the_round_without_gaps(scratch: Path, times: list[float], title: str) -> None:
    job = Job(small_round(scratch / "round", times), Choices(title=title))
    chapters = chapters_of(job)
    assert chapters[0].start_s == 0.0
    assert chapters[-1].end_s == job.folder.meta["sources"][0]["duration_s"]
    assert all(a.end_s == b.start_s for a, b in pairwise(chapters))
    assert all(item.end_s - item.start_s >= 0.001 or len(chapters) == 1 for item in chapters)
    assert all(item.title == " ".join(item.title.split()) != "" for item in chapters)


@given(times=starts(), title=titles)
def test_timestamp_list_keeps_the_rules_of_hosts(scratch: Path, times: list[float], title: str) -> None:
    """First line 0:00, ascending, ten seconds or more each, fewer than three told: the rules that large
    video hosts document for chapters in a description (see also issue text; no host is named here)."""
    job = Job(small_round(scratch / "list", times), Choices(title=title))
    path = scratch / "description.txt"
    told = write(find("description"), job, path)
    lines = path.read_text(encoding="utf-8").split("\n")[:-1]
    seconds = [timecode.parse(line.split(" ", 1)[0]) for line in lines]
    length = int(job.folder.meta["sources"][0]["duration_s"])
    assert lines[0].startswith("0:00 ") and all(line.split(" ", 1)[1] for line in lines)
    assert all(b - a >= 10 for a, b in pairwise([*seconds, length])) or len(lines) == 1
    assert any("hosts show chapters from 3" in note for note in told) == (len(lines) < 3)


@given(times=starts(), title=titles)
def test_webvtt_chapters_are_read_back(scratch: Path, times: list[float], title: str) -> None:
    """Read by webvtt-py. W3C WebVTT, chapter tracks: cue text is plain text and character references, cues
    do not overlap, start before end."""
    job = Job(small_round(scratch / "vtt", times), Choices(title=title))
    path = scratch / "chapters.vtt"
    write(find("chapters-vtt"), job, path)
    chapters = chapters_of(job)
    raw = path.read_text(encoding="utf-8")
    assert raw.startswith("WEBVTT\n") and raw.count("-->") == len(chapters)
    assert "<" not in raw
    cues = webvtt.read(path).captions
    assert [html.unescape(cue.raw_text) for cue in cues] == [item.title for item in chapters]
    for cue, chapter in zip(cues, chapters, strict=True):
        assert cue.start_in_seconds == int(chapter.start_s + 0.0005)
        assert timecode.parse(cue.start) == pytest.approx(chapter.start_s, abs=0.00051)
        assert timecode.parse(cue.end) == pytest.approx(chapter.end_s, abs=0.00051)


def test_default_chapters_give_no_score_away(tmp_path: Path) -> None:
    folder = small_round(tmp_path / "round")
    write_default_chapters(folder)
    assert (folder.chapters / "description.txt").read_text(encoding="utf-8") == (
        "0:00 Hole 1 · par 4\n0:20 Hole 2 · par 4\n0:41 Hole 3 · par 4\n"
    )
    assert [cue.raw_text for cue in webvtt.read(folder.chapters / "chapters.vtt").captions] == [
        *("Opening", "Hole 1 · par 4", "Hole 2 · par 4", "Hole 3 · par 4", "Closing"),
    ]


def test_a_round_without_holes_keeps_no_old_chapters(tmp_path: Path) -> None:
    folder = small_round(tmp_path / "round")
    write_default_chapters(folder)
    folder.save(Round((), ()), {"sources": []})
    write_default_chapters(folder)
    assert list(folder.chapters.iterdir()) == []
    with pytest.raises(FolderError, match="no hole with a time"):
        chapters_of(Job(folder))


@pytest.mark.parametrize("path", truth_files(), ids=lambda p: p.parent.name)
def test_each_hole_has_its_chapter(tmp_path: Path, path: Path) -> None:
    folder = save_truth(path, tmp_path / "round")
    chapters = [item for item in chapters_of(Job(folder)) if item.hole is not None]
    assert [item.hole for item in chapters] == folder.holes["hole"].tolist()
    assert [item.start_s for item in chapters] == folder.holes["start_s"].tolist()


def test_an_unsure_score_is_marked_and_an_unknown_one_left_out(tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path)
    scores = (
        HoleScore(4, 1, 0.0, 60.0, par=5, strokes=4, to_par=-1, running_to_par=-1, status="check"),
        HoleScore(5, 2, 60.0, 120.0, par=3),
        HoleScore(6, 3, 120.0, 180.0, par=4, strokes=4, to_par=0, status="sure"),
    )
    folder.save(Round(scores, ()), {"sources": []})
    found = [item.title for item in chapters_of(Job(folder, Choices(scores=True)))]
    assert found == ["Hole 4 · par 5 · 4? (birdie?)", "Hole 5 · par 3", "Hole 6 · par 4 · 4 (par)"]


@pytest.mark.parametrize(
    ("template", "values", "title"),
    [
        ("Hole {hole}[ · par {par}]", {"hole": "7", "par": "4"}, "Hole 7 · par 4"),
        ("Hole {hole}[ · par {par}]", {"hole": "7"}, "Hole 7"),
        ("{hole}: {strokes}", {"hole": "7"}, "7: –"),
        ("[no field] {{hole}", {"hole": "7"}, "[no field] {7"),
    ],
)
def test_titles_follow_the_template(template: str, values: dict[str, str], title: str) -> None:
    assert fill(template, values) == title


def test_a_template_with_an_unknown_field_is_told() -> None:
    with pytest.raises(ReviewkitError, match=r"names '\{strocks\}'.*Its fields are: hole"):
        fill("{strocks}", {})


@pytest.mark.parametrize(
    ("strokes", "par", "word"),
    # The trade's words, as any glossary of the game has them; written from memory.
    [
        *[(1, 3, "hole in one"), (2, 5, "albatross"), (3, 5, "eagle"), (3, 4, "birdie"), (4, 4, "par")],
        *[(5, 4, "bogey"), (6, 4, "double bogey"), (6, 3, "triple bogey"), (9, 4, "+5")],
    ],
)
def test_scores_have_their_words(strokes: int, par: int, word: str) -> None:
    assert score_word(strokes, par) == word


def test_short_chapters_join_and_say_so() -> None:
    before = [
        Chapter("Opening", 0, 4),
        Chapter("A", 4, 30, 1),
        Chapter("B", 30, 35, 2),
        Chapter("C", 35, 60, 3),
        Chapter("Closing", 60, 63),
    ]
    after = join_short(before, 10)
    assert [(item.title, item.start_s, item.end_s) for item in after] == [
        ("A", 0, 30),
        ("B / C", 30, 63),
    ]
    assert notes(before, after, "x" * 5001) == [
        "chapters shorter than 10 s joined their neighbours: 3.",
        "hosts show chapters from 3 on; this list has 2.",
        "the list has 5001 characters; a description may hold 5000.",
    ]


@given(st.text(st.characters(exclude_categories=("Cs",)), max_size=90), st.integers(4, 255))
def test_shortened_text_fits_its_bytes(text: str, most: int) -> None:
    short = shorten(text, most)
    assert len(short.encode()) <= most
    assert short == text or (short.endswith("…") and text.startswith(short[:-1]))

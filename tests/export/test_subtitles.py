"""Subtitles read back by pysubs2 and webvtt-py."""

from __future__ import annotations

import html
from collections.abc import Mapping
from itertools import pairwise
from pathlib import Path

import pysubs2
import pytest
import webvtt
from hypothesis import given, settings
from hypothesis import strategies as st
from support.hostile import small_round, titles
from support.truth import SHARED

from reviewkit.errors import FolderError
from reviewkit.export import Job, find, write
from reviewkit.export.base import one_line
from reviewkit.export.captions import LINE, LINES, MOST_S, READING, captions_of
from reviewkit.export.subtitles import JOINER
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import Segment, Transcript, Word


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("subtitles")


def spoken(folder: Path, texts: list[str], meant: Mapping[int, str] | None = None) -> Job:
    """A round whose narration says `texts`, a word each 0.4 s with a pause after every fifth; some of them
    `meant` otherwise."""
    found = meant or {}
    words = tuple(
        Word(text, n * 0.4 + n // 5, n * 0.4 + n // 5 + 0.4, meant=found.get(n))
        for n, text in enumerate(texts)
    )
    job = Job(small_round(folder))
    save_transcript(job.folder.transcript_json, Transcript((Segment(words),) if words else ()))
    return job


@settings(max_examples=40)
@given(
    texts=st.lists(titles.map(one_line).filter(bool), min_size=1, max_size=25),
    form=st.sampled_from(["srt", "vtt", "ass"]),
)
def test_hostile_words_come_back_as_they_were_said(scratch: Path, texts: list[str], form: str) -> None:
    job = spoken(scratch / "round", texts)
    path = scratch / f"words.{form}"
    write(find(form), job, path)
    if form == "vtt":
        raw = [html.unescape(caption.raw_text) for caption in webvtt.read(path).captions]
        assert path.read_text(encoding="utf-8").count("-->") == len(raw)
    else:
        raw = [event.plaintext for event in pysubs2.load(str(path), format_=form)]
    shown = "".join(raw).replace(JOINER, "")
    said = "".join(texts).replace("{", "(").replace("}", ")")
    assert "".join(shown.split()) == "".join(said.replace(JOINER, "").split())


@pytest.mark.skipif(not SHARED.is_dir(), reason="the shared evaluation rounds are not beside this checkout")
@pytest.mark.parametrize("name", ["a1", "b4"])
def test_captions_are_readable(tmp_path: Path, name: str) -> None:
    words = load_transcript(SHARED / "eval" / "dev" / name / "asr.json")
    job = Job(small_round(tmp_path / "round"))
    save_transcript(job.folder.transcript_json, words)
    captions, notes = captions_of(job)
    shown = "".join(line for item in captions for line in item.lines)
    assert shown.replace(" ", "") == "".join(w.text for w in words.words)
    for item in captions:
        assert len(item.lines) <= LINES and all(len(line) <= LINE for line in item.lines)
        assert 0 < item.end_s - item.start_s <= MOST_S + 0.001
    assert all(a.end_s <= b.start_s for a, b in pairwise(captions))
    slow = sum(item.speed <= READING * 1.25 for item in captions)
    assert slow / len(captions) > 0.9
    assert bool(notes) == (slow < len(captions))


def test_a_caption_waits_for_its_words_and_ends_with_its_sentence(tmp_path: Path) -> None:
    said = "This putt is for the birdie, downhill. Never in doubt, and it drops."
    job = spoken(tmp_path, said.split())
    captions, _ = captions_of(job)
    assert [item.lines for item in captions] == [
        ("This putt is for the",),
        ("birdie, downhill. Never in doubt,",),
        ("and it drops.",),
    ]
    assert [item.start_s for item in captions] == [0.0, 3.0, 6.0]


@pytest.mark.parametrize("form", ["srt", "vtt", "ass"])
def test_subtitles_show_the_words_as_meant(tmp_path: Path, form: str) -> None:
    said = "Short par for, 3 would. Put her from there: two pots."
    meant = {2: "4,", 4: "wood.", 5: "Putter", 6: "", 10: "putts."}
    job = spoken(tmp_path, said.split(), meant)
    path = tmp_path / f"words.{form}"
    write(find(form), job, path)
    if form == "vtt":
        shown = " ".join(caption.text for caption in webvtt.read(path).captions)
    else:
        shown = " ".join(event.plaintext for event in pysubs2.load(str(path), format_=form))
    assert " ".join(shown.split()) == "Short par 4, 3 wood. Putter from there: two putts."


def test_words_that_a_listener_cut_in_pieces_are_whole(tmp_path: Path) -> None:
    said = "A T -shot of 6 ,740 yards. Par -4, I 've 2 .5 feet - nice"
    captions, _ = captions_of(spoken(tmp_path, said.split()))
    assert " ".join(line for item in captions for line in item.lines) == (
        "A T-shot of 6,740 yards. Par-4, I've 2.5 feet - nice"
    )


@given(
    texts=st.lists(titles.map(one_line).filter(bool), min_size=1, max_size=25),
    mended=st.dictionaries(st.integers(0, 24), st.sampled_from(["", "par 4", "putts."])),
)
def test_captions_stay_in_order_and_lose_no_word(
    scratch: Path, texts: list[str], mended: dict[int, str]
) -> None:
    job = spoken(scratch / "mended", texts, mended)
    captions, _ = captions_of(job)
    shown = "".join(line for item in captions for line in item.lines)
    expected = "".join(mended.get(n, text) for n, text in enumerate(texts))
    assert "".join(shown.split()) == "".join(expected.split())
    assert all(0 <= item.start_s < item.end_s for item in captions)
    assert all(a.end_s <= b.start_s for a, b in pairwise(captions))


def test_captions_part_where_the_talk_does(tmp_path: Path) -> None:
    said = (
        "We're at the Hollow. They're still doing everything, and it's just me and my neighbour, Ann. "
        "A wood off the tee, just to find some grass, and it's found it, left side of the fairway."
    )
    words = tuple(Word(text, n * 0.3, n * 0.3 + 0.25) for n, text in enumerate(said.split()))
    job = Job(small_round(tmp_path))
    save_transcript(job.folder.transcript_json, Transcript((Segment(words),)))
    found = [" ".join(item.lines) for item in captions_of(job)[0]]
    assert found == [
        "We're at the Hollow.",
        "They're still doing everything, and it's just me and my neighbour, Ann.",
        "A wood off the tee, just to find some grass, and it's found it,",
        "left side of the fairway.",
    ]


def test_a_round_without_words_is_told(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match=r"transcript\.json: is missing"):
        write(find("srt"), Job(small_round(tmp_path)), tmp_path / "x.srt")

"""transcript.json round trip, and files that are not one."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.errors import FolderError
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import HeardAgain, Segment, Transcript, Word

EVAL = Path(__file__).parents[2] / ".." / "shared" / "eval" / "dev"
TEXT = st.text(st.characters(exclude_categories=("Cs", "Zs", "Cc", "Zl", "Zp")), min_size=1, max_size=12)


@st.composite
def transcripts(draw: st.DrawFn) -> Transcript:
    clock = 0
    segments = []
    for _ in range(draw(st.integers(0, 4))):
        words = []
        for text in draw(st.lists(TEXT, min_size=1, max_size=4)):
            start = clock + draw(st.integers(0, 5000))
            clock = start + draw(st.integers(0, 900))
            meant = draw(st.none() | st.just("") | TEXT)
            words.append(Word(text, start / 1000, clock / 1000, draw(st.integers(0, 1000)) / 1000, meant))
        segments.append(Segment(tuple(words)))
    return Transcript(tuple(segments), "base", "en", (clock + 1000) / 1000, {"beam": "5"})


@given(transcripts())
def test_what_is_saved_is_read_back(tmp_path_factory: pytest.TempPathFactory, transcript: Transcript) -> None:
    path = tmp_path_factory.mktemp("t") / "transcript.json"
    save_transcript(path, transcript)
    assert load_transcript(path) == transcript


@given(transcripts(), transcripts())
def test_other_hearings_are_read_back(
    tmp_path_factory: pytest.TempPathFactory, transcript: Transcript, other: Transcript
) -> None:
    path = tmp_path_factory.mktemp("t") / "transcript.json"
    again = (HeardAgain(0.0, 9.5, {"one manner": other.segments, "another": ()}),)
    save_transcript(path, replace(transcript, again=again))
    assert load_transcript(path).again == again


def test_what_was_heard_stands_beside_what_was_meant(tmp_path: Path) -> None:
    path = tmp_path / "transcript.json"
    words = (Word("Two", 0.0, 0.3), Word("pots.", 0.3, 0.6, meant="putts."))
    save_transcript(path, Transcript((Segment(words),)))
    (segment,) = json.loads(path.read_text(encoding="utf-8"))["segments"]
    assert segment["text"] == "Two pots."
    assert [(word["word"], word.get("meant")) for word in segment["words"]] == [
        ("Two", None),
        ("pots.", "putts."),
    ]
    assert "meant" not in segment["words"][0]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "{}",
        '{"segments": 3}',
        '{"segments": [{"words": [{"word": "a", "start_s": 2, "end_s": 1}]}]}',
    ],
)
def test_other_files_are_told_apart(tmp_path: Path, text: str) -> None:
    path = tmp_path / "transcript.json"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(FolderError, match="is not a transcript"):
        load_transcript(path)


def test_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(FolderError, match="is missing"):
        load_transcript(tmp_path / "transcript.json")


@pytest.mark.skipif(not EVAL.is_dir(), reason="the shared evaluation rounds are not beside this checkout")
def test_words_of_another_listener_are_read() -> None:
    path = EVAL / "a1" / "asr.json"
    raw = json.loads(path.read_text(encoding="utf-8"))
    words = load_transcript(path).words
    assert len(words) == sum(len(segment["words"]) for segment in raw["segments"])
    assert (words[0].text, words[0].start_s) == ("What", 1.52)

"""What was unclear is heard again: which holes, what is kept, and real speech."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from statistics import median

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from reviewkit import second_listening
from reviewkit.cli.explain import command as explain
from reviewkit.errors import ModelError
from reviewkit.hearings import cut_out
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan, Round, Segment, Transcript, Word
from reviewkit.pipeline import Options, read_round
from reviewkit.reasoning import reason
from reviewkit.second_listening import MARGIN_S, listen_again, unclear_holes
from reviewkit.settled import keep, recall
from reviewkit.speech import decode, weights
from reviewkit.speech.manner import AGAIN, Manner
from tests.support.narrations import transcript

MODEL = "tiny.en"
DEMO = Path(__file__).parents[1] / "fixtures" / "rounds" / "demo"
BEFORE = (
    "Hole one, a par four.",
    "Driver down the middle.",
    "9 iron onto the green.",
    "Two putts for par.",
    "",
)
CLEAR = (
    "Hole two, a par four.",
    "Driver in the fairway, wedge to ten feet.",
    "Holed it. A birdie three.",
    "",
)
GARBLED = ("Hole two, a par four.", "Driver in the fairway.", "Wedge over and some of it in for bogey.", "")
AFTER = ("Hole three, par four.", "Driver into the rough.", "8 iron onto the green.", "Two putts for par.")
Span = tuple[float, float]


def heard(lines: Sequence[str]) -> Transcript:
    return transcript([*BEFORE, *lines, *AFTER])


def murmured(lines: Sequence[str]) -> Transcript:
    """The round, the model unsure of every word of its second hole."""
    whole = heard(lines)
    segments = list(whole.segments)
    for number in range(len(BEFORE) - 1, len(segments) - len(AFTER)):
        words = segments[number].words
        segments[number] = Segment(tuple(replace(word, probability=0.3) for word in words))
    return replace(whole, segments=tuple(segments))


def read(words: Transcript) -> Round:
    return reason(words, Plan())


def hearing(
    lines: Sequence[str], asked: list[tuple[str, Sequence[Span]]] | None = None
) -> Callable[[Sequence[Span], Manner], list[tuple[Segment, ...]]]:
    """Hears the spans asked for, of a round with these lines as its second hole."""

    def hear(spans: Sequence[Span], manner: Manner) -> list[tuple[Segment, ...]]:
        if asked is not None:
            asked.append((manner.name, spans))
        whole = heard(lines).segments
        return [cut_out(whole, span)[0] for span in spans]

    return hear


def text(segments: Sequence[Segment]) -> str:
    return " ".join(word.text for segment in segments for word in segment.words)


def test_an_unclear_hole_is_heard_in_each_manner_and_nothing_beside_it_kept() -> None:
    first, asked = murmured(GARBLED), list[tuple[str, Sequence[Span]]]()
    again = listen_again(first, read(first), hearing(CLEAR, asked))
    (stretch,) = again.again
    assert again.segments == first.segments
    assert [name for name, _ in asked] == [manner.name for manner in AGAIN] == list(stretch.hearings)
    assert all(text(segments) == text(transcript(CLEAR).segments) for segments in stretch.hearings.values())
    assert asked[0][1] == [(stretch.start_s - MARGIN_S, stretch.end_s + MARGIN_S)]


def test_a_round_without_doubt_is_not_heard_again() -> None:
    clear, asked = heard(CLEAR), list[tuple[str, Sequence[Span]]]()
    assert listen_again(clear, read(clear), hearing(CLEAR, asked)) == clear
    assert not asked


def test_a_hole_of_which_many_words_were_unsure_is_unclear() -> None:
    clear, unsure = heard(CLEAR), murmured(CLEAR)
    assert not unclear_holes(read(clear), clear)
    assert [score.hole for score in unclear_holes(read(unsure), unsure)] == [2]


@given(st.lists(st.floats(0.0, 2.0), max_size=30), st.floats(0.0, 40.0), st.floats(0.0, 40.0))
def test_cutting_out_loses_no_word_and_keeps_their_order(gaps: list[float], one: float, other: float) -> None:
    at, words = 0.0, []
    for gap in gaps:
        words.append(Word(str(len(words)), at + gap, at + gap + 0.3))
        at = words[-1].end_s
    segments = tuple(Segment(tuple(words[n : n + 4])) for n in range(0, len(words), 4))
    span = min(one, other), max(one, other)
    parts = [[word for segment in part for word in segment.words] for part in cut_out(segments, span)]
    assert sorted([*parts[0], *parts[1]], key=lambda word: int(word.text)) == words
    assert all(span[0] <= (word.start_s + word.end_s) / 2 < span[1] for word in parts[0])
    assert all(part == sorted(part, key=lambda word: word.start_s) for part in parts)


def test_real_speech_is_heard_again_once_and_told_so(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two holes of the demo are heard again, unclear or not: what was heard is kept, and kept for good."""
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path / "cache"))
    try:
        weights.find(MODEL, tmp_path / "cache" / "models", print)
    except ModelError as error:
        pytest.skip(str(error))
    monkeypatch.setattr(second_listening, "unclear_holes", lambda reading, words: list(reading.scores[:2]))
    source, out = DEMO / "narration.opus", tmp_path / "round"
    folder = read_round([source], out, Plan(), Options(model=MODEL))
    kept = {path.name: path.read_bytes() for path in out.iterdir() if path.is_file()}
    words = load_transcript(folder.transcript_json)
    (stretch,) = words.again
    assert stretch.start_s == pytest.approx(folder.holes["start_s"][0], abs=second_listening.REACH_S + 0.5)
    first = cut_out(words.segments, (stretch.start_s, stretch.end_s))[0]
    for segments in stretch.hearings.values():
        assert median(_delays(first, segments)) < 0.2, "sound that ran faster is told at its own time"
    monkeypatch.setattr(decode, "Decoder", None)
    read_round([source], out, Plan(), Options(model=MODEL))
    assert {name: (out / name).read_bytes() for name in kept} == kept
    told = CliRunner().invoke(explain, [str(out), "--hole", "1"], catch_exceptions=False).output
    assert "Listened to again\n  hearing taken: " in told and "strokes over all hearings: 4 (" in told
    # Words read back from the file are read as they were when heard.
    again = read_round([folder.transcript_json], tmp_path / "text", Plan(), Options())
    assert list(again.holes["strokes"]) == list(folder.holes["strokes"])
    assert list(again.holes["confidence"]) == list(folder.holes["confidence"])


def _delays(one: Sequence[Segment], other: Sequence[Segment]) -> list[float]:
    """Seconds between long words and the nearest same word of another hearing; there must be twenty."""
    words = [word for segment in other for word in segment.words]
    found = [
        min(
            (abs(word.start_s - same.start_s) for same in words if same.text == word.text),
            default=None,
        )
        for segment in one
        for word in segment.words
        if len(word.text) > 3
    ]
    delays = [delay for delay in found if delay is not None]
    assert len(delays) >= 20
    return delays


def test_listening_again_can_be_left_out(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(second_listening, "unclear_holes", lambda reading, words: list(reading.scores[:1]))
    try:
        folder = read_round(
            [DEMO / "narration.opus"], tmp_path / "round", Plan(), Options(model=MODEL, again=False)
        )
    except ModelError as error:
        pytest.skip(str(error))
    assert not load_transcript(folder.transcript_json).again
    assert folder.meta["settings"]["again"] is False


def test_what_was_heard_again_is_recalled(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path))
    first = murmured(GARBLED)
    assert recall(first, Plan()) is None
    again = listen_again(first, read(first), hearing(CLEAR))
    assert keep(again, Plan()) == recall(first, Plan())
    recalled = recall(first, Plan())
    assert recalled is not None and read(recalled).scores == read(again).scores
    # Another plan or other words are another matter.
    assert recall(first, Plan(units="m")) is None and recall(heard(CLEAR), Plan()) is None
    assert keep(first, Plan()) is first

"""What stays doubtful is heard again: which hearing is taken, what is noted, and real speech."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from reviewkit import second_listening
from reviewkit.cli.explain import command as explain
from reviewkit.errors import ModelError
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan, Round, Segment, Transcript, Word
from reviewkit.pipeline import Options, read_round
from reviewkit.reasoning import reason
from reviewkit.second_listening import cut_out, doubtful_holes, settle
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
GARBLED = (
    "Hole two, a par four.",
    "Driver in the fairway.",
    "Wedge over and some of it in for bogey.",
    "",
)
AFTER = ("Hole three, par four.", "Driver into the rough.", "8 iron onto the green.", "Two putts for par.")
Span = tuple[float, float]


def heard(lines: Sequence[str]) -> Transcript:
    return transcript([*BEFORE, *lines, *AFTER])


def read(words: Transcript) -> Round:
    return reason(words, Plan())


def hearing(
    texts: dict[str, Sequence[str]], asked: list[str] | None = None
) -> Callable[[Sequence[Span], Manner], list[tuple[Segment, ...]]]:
    """Hears in each manner the spans asked for, of a round with these lines as its second hole."""

    def hear(spans: Sequence[Span], manner: Manner) -> list[tuple[Segment, ...]]:
        if asked is not None:
            asked.append(manner.name)
        whole = heard(texts[manner.name]).segments
        return [cut_out(whole, span)[0] for span in spans]

    return hear


def score_of(reading: Round, hole: int) -> tuple[int | None, float, str]:
    score = next(score for score in reading.scores if score.hole == hole)
    return score.strokes, score.confidence, score.status


def test_the_hearing_that_tells_the_score_is_taken_and_the_first_is_kept() -> None:
    first = heard(GARBLED)
    assert score_of(read(first), 2)[2] == "check"
    settled = settle(first, read(first), read, hearing({manner.name: CLEAR for manner in AGAIN}))
    strokes, confidence, _ = score_of(read(settled), 2)
    (note,) = settled.again
    assert strokes == 3 and "birdie three" in " ".join(word.text for word in settled.words)
    assert note.manner in {manner.name for manner in AGAIN} and "some of it in" in note.first
    # The hearing that was doubtful still has its say.
    alone = score_of(read(heard(CLEAR)), 2)[1]
    assert confidence == pytest.approx(note.odds[3], abs=1e-3) and confidence < alone
    # Nothing outside the stretch has changed.
    start, end = note.start_s, note.end_s
    assert cut_out(settled.segments, (start, end))[1] == cut_out(first.segments, (start, end))[1]


def test_hearings_no_better_than_the_first_leave_its_words() -> None:
    first = heard(GARBLED)
    settled = settle(first, read(first), read, hearing({manner.name: GARBLED for manner in AGAIN}))
    (note,) = settled.again
    assert (settled.segments, note.manner, note.first) == (first.segments, "first", "")
    assert score_of(read(settled), 2)[2] == "check"


def test_a_hearing_that_loses_a_hole_is_not_taken() -> None:
    first = heard(GARBLED)
    settled = settle(first, read(first), read, lambda spans, manner: [() for _ in spans])
    _, outside = cut_out(first.segments, (settled.again[0].start_s, settled.again[0].end_s))
    assert [span.hole for span in read(replace(first, segments=outside)).spans] != [1, 2, 3]
    assert settled.again[0].manner == "first" and settled.segments == first.segments


def test_a_round_without_doubt_is_not_heard_again() -> None:
    clear, asked = heard(CLEAR), list[str]()
    assert settle(clear, read(clear), read, hearing({}, asked)) == clear
    assert not asked


def test_what_is_heard_again_is_bounded_worst_first(monkeypatch: pytest.MonkeyPatch) -> None:
    words = heard(CLEAR)
    sure = read(words).scores
    doubtful = [
        replace(sure[0], confidence=0.6, status="check"),
        replace(sure[1], confidence=0.3, status="check"),
    ]
    reading = replace(read(words), scores=(*doubtful, sure[2]))
    assert [score.hole for score in doubtful_holes(reading, words)] == [2, 1]
    inside, _ = cut_out(words.segments, (sure[1].start_s, sure[1].end_s))
    talk = sum(segment.end_s - segment.start_s for segment in inside)
    monkeypatch.setattr(second_listening, "LONGEST_S", talk + 0.1)
    assert [score.hole for score in doubtful_holes(reading, words)] == [2]


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
    """Two holes of the demo are heard again, doubtful or not: what is taken is kept, and kept for good."""
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path / "cache"))
    try:
        weights.find(MODEL, tmp_path / "cache" / "models", print)
    except ModelError as error:
        pytest.skip(str(error))
    monkeypatch.setattr(second_listening, "doubtful_holes", lambda reading, words: list(reading.scores[:2]))
    source, out = DEMO / "narration.opus", tmp_path / "round"
    folder = read_round([source], out, Plan(), Options(model=MODEL))
    kept = {path.name: path.read_bytes() for path in out.iterdir() if path.is_file()}
    words = load_transcript(folder.transcript_json)
    assert [note.manner in {"first", "wider", "unhinted"} for note in words.again] == [True, True]
    for note, hole in zip(words.again, folder.holes.itertuples(), strict=False):
        assert note.start_s == pytest.approx(hole.start_s, abs=second_listening.REACH_S + 0.5)
        assert hole.confidence <= max(note.odds.values()) + 1e-3
    monkeypatch.setattr(decode, "Decoder", None)
    read_round([source], out, Plan(), Options(model=MODEL))
    assert {name: (out / name).read_bytes() for name in kept} == kept
    told = CliRunner().invoke(explain, [str(out), "--hole", "1"], catch_exceptions=False).output
    assert "Listened to again\n  hearing taken: " in told and "strokes over all hearings: 4 (" in told
    # Words read back from the file are read as they were when heard.
    text = read_round([folder.transcript_json], tmp_path / "text", Plan(), Options())
    assert list(text.holes["strokes"]) == list(folder.holes["strokes"])
    assert list(text.holes["confidence"]) == list(folder.holes["confidence"])


def test_listening_again_can_be_left_out(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(second_listening, "doubtful_holes", lambda reading, words: list(reading.scores[:1]))
    try:
        folder = read_round(
            [DEMO / "narration.opus"], tmp_path / "round", Plan(), Options(model=MODEL, again=False)
        )
    except ModelError as error:
        pytest.skip(str(error))
    assert not load_transcript(folder.transcript_json).again
    assert folder.meta["settings"]["again"] is False


def test_what_was_settled_is_recalled_and_new_rules_have_their_say(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path))
    first = heard(GARBLED)
    assert recall(first, Plan(), None) is None
    settled = settle(first, read(first), read, hearing({manner.name: CLEAR for manner in AGAIN}))
    kept = keep(first, settled, Plan(), None)
    assert recall(first, Plan(), None) == kept and kept.words == settled.words
    assert kept.again[0].odds == pytest.approx(settled.again[0].odds, abs=1e-3)
    # Another plan or other words are another matter.
    assert recall(first, Plan(units="m"), None) is None and recall(heard(CLEAR), Plan(), None) is None
    rules = tmp_path / "own.toml"
    rules.write_text("", encoding="utf-8")
    after = recall(first, Plan(), rules)
    assert after is not None and after.words == kept.words and after.again[0].odds == {}
    assert score_of(read(after), 2)[1] >= score_of(read(kept), 2)[1]
    assert keep(first, first, Plan(), None) is first

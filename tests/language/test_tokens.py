"""Sentences: where they end, how words come apart, and what every token remembers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.language.tokens import Sentence, sentences
from reviewkit.model import Segment, Transcript, Word


def cues(*lines: str, pause_s: float = 0.1) -> Transcript:
    segments, at = [], 0.0
    for line in lines:
        words = []
        for word in line.split():
            words.append(Word(word, at, at + 0.3))
            at += 0.3
        at += pause_s
        segments.append(Segment(tuple(words)))
    return Transcript(tuple(segments))


def texts(transcript: Transcript) -> list[str]:
    return [sentence.text for sentence in sentences(transcript)]


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        (["Driver. Fairway! Next?"], ["driver .", "fairway !", "next ?"]),
        (["It's on, it's chasing", "and it's in."], ["it's on , it's chasing and it's in ."]),
        (["That leaves a six", "I take my drop."], ["that leaves a 6 i take my drop ."]),
        (["That leaves a six", "So be it."], ["that leaves a 6 .", "so be it ."]),
        (["well... it's — no – in it goes"], ["well , it's , no , in it goes"]),
        (["aaand “in”, ‘boom’, it’s good"], ["and in , boom , it's good"]),
        (["up-and-down from the left-hand-side"], ["up and down from the left hand side"]),
        (["O.B. left, G.I.R. 'cause"], ["ob left , gir cause"]),
        (["been fightin' the driver, goin’ left"], ["been fighting the driver , going left"]),
        (["the driver's fine, Kev's isn't"], ["the driver is fine , kev's isn't"]),
        (["centre of the fairway, 4 meters, 10 yds"], ["centre of the fairway , 4 metres , 10 yards"]),
        (["?!", "hello"], ["hello"]),
    ],
)
def test_sentences(lines: list[str], wanted: list[str]) -> None:
    assert texts(cues(*lines)) == wanted


def test_a_silence_ends_a_sentence_that_no_mark_ends() -> None:
    words = (Word("Six.", 0, 0.3), Word("seven", 0.4, 0.6), Word("iron", 0.6, 0.9), Word("lovely", 2.0, 2.4))
    assert texts(Transcript((Segment(words),))) == ["6 .", "7 iron .", "lovely"]


def test_talk_without_any_marks_ends_at_cues_and_shorter_silences() -> None:
    transcript = cues(*["seven iron onto the green", "two putts for par"] * 20, pause_s=0.2)
    assert texts(transcript)[:2] == ["7 iron onto the green .", "2 putts for par ."]
    assert len(texts(transcript)) == 40


def test_a_sentence_knows_its_segment_offsets_and_words() -> None:
    found = sentences(cues("Right then.", "Number three, par four,", "four hundred and ten yards."))
    last = found[-1]
    assert [sentence.segment for sentence in found] == [0, 1]
    assert last.text == "number 3 , par 4 , 410 yards ."
    assert [last.text[at : at + 3].split()[0] for at in last.starts[:2]] == ["num", "3"]
    yards = next(token for token in last.tokens if token.text == "410")
    assert (yards.first, yards.last, yards.value) == (6, 9, 410)
    assert yards.end_s > yards.start_s


def test_nothing_said_is_no_sentence() -> None:
    assert sentences(Transcript(())) == ()
    assert sentences(cues("...")) == ()


WORDS = st.text(alphabet="abehtwo 0123456789.,?!'’-–½:/#%&+()[]é雪\u00a0", min_size=1, max_size=12)


@given(st.lists(WORDS, min_size=1, max_size=30))
def test_any_text_keeps_its_order_and_its_words_within_reach(raw: list[str]) -> None:
    words = tuple(Word(word, at * 0.5, at * 0.5 + 0.4) for at, word in enumerate(raw))
    found = sentences(Transcript((Segment(words),)))
    tokens = [token for sentence in found for token in sentence.tokens]
    assert all(0 <= token.first <= token.last < len(words) for token in tokens)
    assert [token.first for token in tokens] == sorted(token.first for token in tokens)
    for sentence in found:
        assert_offsets(sentence)


def assert_offsets(sentence: Sentence) -> None:
    assert sentence.text == " ".join(token.text for token in sentence.tokens)
    for token, start in zip(sentence.tokens, sentence.starts, strict=True):
        assert sentence.text[start : start + len(token.text)] == token.text
        assert token.text and " " not in token.text


def test_full_stops_that_a_listener_drops_halfway_are_put_back_at_breaths_after_commas() -> None:
    """Forty words without one are no sentence; near commas, the end of a segment alone ends none."""
    marked = cues("Hole one, a par four.", "Driver down the middle.")
    bare = ["two putts for the", "par, so we are level,", "next one then,"] * 8
    at, segments = marked.words[-1].end_s + 1.0, list(marked.segments)
    for line in bare:
        words = []
        for word in line.split():
            words.append(Word(word, at, at + 0.2))
            at += 0.45 if word.endswith(",") else 0.2
        segments.append(Segment(tuple(words)))
    said = texts(Transcript(tuple(segments)))
    assert said[:2] == ["hole 1 , a par 4 .", "driver down the middle ."]
    assert said[2:5] == ["2 putts for the par .", "so we are level .", "next one then ."]

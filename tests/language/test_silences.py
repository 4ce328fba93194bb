"""Silences that a listener counted into words."""

from __future__ import annotations

from reviewkit.language.silences import without_silences
from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word


def test_a_silence_before_a_word_is_given_back() -> None:
    five, bit = without_silences([Word("five", 212.6, 213.1, 0.9), Word("bit", 213.1, 214.8, 0.5)])
    assert (five.start_s, five.end_s) == (212.6, 213.1)
    assert bit.end_s == 214.8 and 1.2 < bit.start_s - five.end_s < 1.6


def test_a_silence_behind_a_mark_is_given_back() -> None:
    _, be, up = without_silences(
        [Word("will", 89.4, 89.7, 0.9), Word("be.", 89.7, 90.9, 0.9), Word("Up", 91.0, 91.2, 0.9)]
    )
    assert be.start_s == 89.7 and be.end_s < 90.1 and up.start_s == 91.0


def test_a_word_after_a_mark_begins_late() -> None:
    _, okay = without_silences([Word("you,", 10.0, 10.3, 0.9), Word("okay,", 10.4, 13.0, 0.9)])
    assert okay.end_s == 13.0 and okay.start_s > 12.4


def test_slow_words_and_figures_stay() -> None:
    words = [Word("so", 0.0, 0.5, 0.9), Word("152", 0.5, 1.7, 0.9), Word("unbelievable", 1.7, 2.9, 0.9)]
    assert without_silences(words) == tuple(words)


def test_talk_without_marks_parts_where_it_was_silent() -> None:
    said = [("is", 0.3), ("it", 0.2), ("five", 0.5), ("bit", 1.5), ("of", 0.1), ("tea", 0.2)]
    said += [("and", 0.2)] * 40
    words, at = [], 0.0
    for text, length in said:
        words.append(Word(text, at, at + length, 0.9))
        at += length
    parted = [sentence.text for sentence in sentences(Transcript((Segment(tuple(words)),)))]
    assert parted[0] == "is it 5 ." and parted[1].startswith("bit of tea")

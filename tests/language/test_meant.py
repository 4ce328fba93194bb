"""Words as meant, for people to read: what a repair changed, in place, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from language.test_repair import ENTRIES

from reviewkit.language.lexicon import load
from reviewkit.language.meant import as_meant
from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word

UNSURE = 0.4


def spoken(*cues: str) -> Transcript:
    """A transcript of one segment a cue, words 0.3 s apart."""
    segments, clock = [], 0.0
    for cue in cues:
        words = []
        for text in cue.split():
            words.append(Word(text, clock, clock + 0.28, UNSURE))
            clock = round(clock + 0.3, 3)
        segments.append(Segment(tuple(words)))
    return Transcript(tuple(segments))


def shown(transcript: Transcript) -> list[str]:
    texts = [word.text if word.meant is None else word.meant for word in transcript.words]
    return [text for text in texts if text]


@pytest.mark.parametrize(
    ("heard", "meant"),
    [
        ("It's a short par for, up the hill.", "It's a short par 4, up the hill."),
        ("Two pots for par.", "Two putts for par."),
        ("Three would off the tee.", "3 wood off the tee."),
        (
            "So the seven ionized, a smooth 7 aren to the middle",
            "So the seven ionized, a smooth 7 iron to the middle",
        ),
        ("Put her from back there.", "Putter from back there."),
        ("Seven irons not enough.", "7 iron is not enough."),
        ("A little voice says Leia, I told the voice.", "A little voice says lay up, I told the voice."),
        ('He said, "Hold the two footer."', 'He said, "Holed the two footer."'),
        ("A dreadful T shot.", "A dreadful tee shot."),
        ("6,740 yards, R72, target is 70.", "6,740 yards, par 72, target is 70."),
        ("Birdie, two hundred, first of the day.", "Birdie, 2 under, first of the day."),
        ("It's gone O B left…", "It's gone OB left…"),
        ("It's gone out of bounce…", "It's gone out of bounds…"),
        ("TWO POTS FOR PAR", "TWO PUTTS FOR PAR"),
        ("Bogie, off the bearway (a parfour).", "Bogey, off the fairway (a par 4)."),
        ("It's 350. For 4th. Driver.", "It's 350. Par 4. Driver."),
    ],
)
def test_misheard_words_read_as_meant(heard: str, meant: str) -> None:
    assert " ".join(shown(as_meant(spoken(heard)))) == meant


@pytest.mark.parametrize(
    "text",
    [
        "One fifty-two out, three hundred and ten metres, a buck forty.",
        "Meters and yds, the driver's good: a foot and a half.",
        "I've got thirty five, seven-iron, pin's back - nice (very nice).",
        "♪ ... 4 -6 ,740 ½ 46°",
    ],
)
def test_what_was_only_read_otherwise_stays_as_it_was_said(text: str) -> None:
    transcript = spoken(text)
    assert as_meant(transcript) == transcript


def test_the_first_word_of_a_repair_shows_it_and_the_others_nothing() -> None:
    words = as_meant(spoken("on the fringe. Put her from back there")).words
    assert [(word.text, word.meant) for word in words[3:6]] == [
        ("Put", "Putter"),
        ("her", ""),
        ("from", None),
    ]


HEARD = [heard for entry in ENTRIES for heard, _ in entry["examples"]]
pieces = st.sampled_from(" ".join(HEARD).split()) | st.sampled_from(HEARD)


@given(st.lists(st.lists(pieces, min_size=1, max_size=6).map(" ".join), min_size=1, max_size=4))
def test_times_stay_and_nothing_is_lost_where_nothing_was_mended(cues: list[str]) -> None:
    transcript = spoken(*cues)
    found = as_meant(transcript)
    assert [replace(word, meant=None) for word in found.words] == list(transcript.words)
    assert [len(segment.words) for segment in found.segments] == [len(s.words) for s in transcript.segments]
    mended = {
        index
        for sentence in sentences(transcript, load())
        for token in sentence.tokens
        if token.repaired
        for index in range(token.first, token.last + 1)
    }
    mended |= {
        i for i, word in enumerate(transcript.words) if word.text.lower().strip(".,?!") in load().misheard
    }
    changed = {index for index, word in enumerate(found.words) if word.meant is not None}
    # The number of a club may stand before the word that was mended.
    assert changed <= mended | {index - 1 for index in mended}
    # What shows nothing follows a word, mended too, that shows something.
    for index, word in enumerate(found.words):
        assert word.meant != "" or found.words[index - 1].meant is not None
    assert found.words[0].meant != ""
    # Made once more, from the words as heard, it comes to the same.
    assert as_meant(found) == found


def test_a_users_rules_are_followed(tmp_path: Path) -> None:
    own = tmp_path / "rules.toml"
    own.write_text('[[repair]]\nheard = "big dog"\nmeant = "driver"\n', encoding="utf-8")
    assert shown(as_meant(spoken("Big dog, right at it."), own)) == ["Driver,", "right", "at", "it."]

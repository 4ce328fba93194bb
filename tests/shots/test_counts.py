"""Strokes counted aloud on the way, and what they are worth to a reading."""

from __future__ import annotations

import pytest

from reviewkit.language.talk import read_talk
from reviewkit.model import Plan, Utterance
from reviewkit.shots.chart import readings
from reviewkit.shots.counts import Count, agreement, counts
from reviewkit.shots.cues import cues
from tests.support.narrations import transcript

TALE = [
    "Driver into the trees on the left.",
    "I am chipping it out. Nine iron, just a nudge, back on the fairway, lying two.",
    "Wedge onto the green.",
    "Two putts.",
]


def talk() -> tuple[Utterance, ...]:
    return read_talk(transcript(TALE), Plan())


def test_a_count_stands_where_it_was_said() -> None:
    found = cues(talk())
    (count,) = [each for each in counts(talk(), found) if each.strokes == 2]
    assert found[count.place - 1].mention.end_s < found[count.place].mention.start_s
    assert found[count.place].value == "wedge" or found[count.place].kind == "club"
    assert not count.coming


@pytest.mark.parametrize(
    ("said", "taken", "fits"),
    [
        (Count(1, 3, False, 1.0), 3, True),
        (Count(1, 3, False, 1.0), 2, False),
        (Count(1, 3, True, 1.0), 2, True),
    ],
)
def test_lying_so_many_and_playing_the_next(said: Count, taken: int, fits: bool) -> None:
    assert said.fits(taken) is fits


def test_a_count_within_a_stroke_may_be_of_before_or_after_it() -> None:
    said = [Count(2, 3, False, 0.5)]
    assert agreement(said, (1, 3), (4, 4)) == agreement(said, (1, 2), (4, 3)) == 0.5
    assert agreement(said, (1, 4), (4, 5)) == 0.0
    assert agreement(said, (2, 3), (4, 4)) == 0.0
    # "Drive was fine, fairway, 3 wood for the second, and I topped it": not all of it was the first.
    assert agreement([Count(3, 2, True, 0.5)], (0, 0), (6, 1)) == 0.0
    assert agreement([Count(3, 2, True, 0.5)], (2, 1), (6, 2)) == 0.5


def test_a_count_speaks_for_the_readings_that_agree() -> None:
    found, said = cues(talk()), counts(talk(), cues(talk()))
    silent, told = readings(found, 4, ()), readings(found, 4, said)
    gain = {strokes: told[strokes][0] - silent[strokes][0] for strokes in told if strokes in silent}
    assert gain[5] > gain[6]


@pytest.mark.parametrize(
    ("said", "par", "taken"),
    [("This is for the three.", None, 2), ("12 feet for birdie.", 5, 3), ("12 feet for birdie.", None, None)],
)
def test_what_a_putt_is_for_counts_the_strokes_before_it(
    said: str, par: int | None, taken: int | None
) -> None:
    told = read_talk(transcript(["Wedge onto the green, 12 feet.", said, "It's in!"]), Plan())
    assert [each.strokes for each in counts(told, cues(told), par)] == ([] if taken is None else [taken])

"""From words to a round: what holds for any talk at all, and how told facts bear on it."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from reviewkit.language.rules import load
from reviewkit.language.talk import read_talk
from reviewkit.model import Card, CardHole, Plan, Round, Segment, Transcript, Word
from reviewkit.reasoning import likeliest, par_odds, reason
from tests.support.narrations import GREETING, transcript

VOCABULARY = """hole one par four five the third driver green putt putts holed birdie bogey next tee water
    lost ob drop reload provisional bunker chip , . ! seven iron wedge 150 yards feet left short she partner I
    should have hit tapped in up and down for double two under through nine lying eagle back on penalty"""
LINE = st.lists(st.sampled_from(VOCABULARY.split()), min_size=1, max_size=14).map(" ".join)
TALK = st.lists(LINE, max_size=25)
TOLD = sorted({example for rule in load().rules for example in rule.examples + rule.counterexamples})
"""What the rules are tried on: something of everything that is read."""


def check(read: Round) -> None:
    """What any round must be, whatever was said."""
    holes = [score.hole for score in read.scores]
    assert len(set(holes)) == len(holes) and holes == [span.hole for span in read.spans]
    for score in read.scores:
        shots = [shot for shot in read.shots if shot.hole == score.hole]
        assert [shot.stroke for shot in shots[:1]] in ([1], [])
        # A stroke's number counts the penalty strokes before it (Rules 17.1, 18.2, 19.2).
        for before, after in itertools.pairwise(shots):
            assert after.stroke == before.stroke + 1 + before.penalty_strokes
        assert all(not shot.holed for shot in shots[:-1])
        assert all((shot.result == "holed") == shot.holed for shot in shots)
        assert all(shot.evidence for shot in shots if shot.told)


@given(TALK)
def test_golf_words_in_any_order_make_a_sound_round(lines: list[str]) -> None:
    check(reason(transcript(lines), Plan()))


@given(st.lists(st.sampled_from(TOLD), max_size=40))
def test_all_that_is_read_in_any_order_makes_a_sound_round(lines: list[str]) -> None:
    check(reason(transcript([GREETING, "", *lines]), Plan()))


@example(["²S", "3xs", "3best", "5's"], 0.0)
@given(st.lists(st.text(min_size=1, max_size=12), max_size=40), st.floats(0.0, 5.0))
def test_any_text_at_all_is_read_without_a_crash(texts: list[str], gap: float) -> None:
    words = tuple(Word(text, at * (0.3 + gap), at * (0.3 + gap) + 0.3) for at, text in enumerate(texts))
    check(reason(Transcript((Segment(words),) if words else ()), Plan()))


@pytest.mark.parametrize(
    ("lines", "par"),
    [
        (["You can drive this one. 297 yards, downhill.", "Smashed it. In the rough, short."], 4),
        (["A 5 iron off the tee. 170 yards, dead straight, fairway.", "Left me 160, same club."], 4),
        (["Now this tee shot. 171 over the pond.", "6 iron, on the green."], 3),
    ],
    ids=["before the tee shot", "how far a club went", "behind a word of the tee"],
)
def test_a_length_told_with_words_of_the_tee_tells_the_par(lines: list[str], par: int) -> None:
    read = reason(transcript([GREETING, "", *lines, "Two putts."]), Plan())
    assert [score.par for score in read.scores] == [par]


def test_no_words_are_no_round() -> None:
    assert reason(Transcript(()), Plan()).scores == ()


ROUND = [
    *(GREETING, ""),
    *("Hole one, a par four.", "Driver down the middle.", "9 iron onto the green.", "Two putts for par.", ""),
    *("Hole two.", "7 iron onto the green.", "Missed the first putt, tapped in.", ""),
    *("Hole three, par four.", "Driver into the right rough.", "8 iron onto the green."),
    *("Three putts for bogey.", "So that's one over after three."),
]


def test_the_running_score_is_the_sum_of_the_holes() -> None:
    read = reason(transcript(ROUND), Plan())
    assert [(score.par, score.strokes) for score in read.scores] == [(4, 4), (3, 3), (4, 5)]
    running = list(itertools.accumulate(score.to_par or 0 for score in read.scores))
    assert [score.running_to_par for score in read.scores] == running == [0, 0, 1]


def test_the_card_settles_a_par_that_the_words_leave_open() -> None:
    card = Card((CardHole(1, 4), CardHole(2, 3), CardHole(3, 5)))
    assert [score.par for score in reason(transcript(ROUND), Plan(card=card)).scores][:2] == [4, 3]


def test_reading_twice_is_reading_once() -> None:
    assert reason(transcript(ROUND), Plan()) == reason(transcript(ROUND), Plan())


@pytest.mark.parametrize(
    ("opening", "par"),
    [
        ("568, downwind.", 5),
        ("It's the long one, 476 yards.", 5),
        ("138 over the corner of the quarry.", 3),
        ("It's the other short one, 98 yards.", 3),
        # Forward tees are short: a par that is told outweighs a length.
        ("It's a par 5, but it's only 430.", 5),
    ],
)
def test_a_hole_whose_par_is_not_told_is_judged_by_its_length(opening: str, par: int) -> None:
    talk = read_talk(transcript(["Hole four.", opening, "Away we go.", "It's in the fairway."]), Plan())
    mentions = [mention for utterance in talk for mention in utterance.mentions]
    assert likeliest(par_odds(mentions, Plan(), 4)) == par


@pytest.mark.parametrize(
    ("opening", "least", "most"),
    [("Right, a par five, 475.", 0.94, 1.0), ("Four-par, 310.", 0.98, 1.0), ("355 yards, this.", 0.5, 0.97)],
)
def test_a_par_in_words_is_surer_than_one_by_length(opening: str, least: float, most: float) -> None:
    talk = read_talk(transcript(["Hole four.", opening, "Away we go.", "It's in the fairway."]), Plan())
    odds = par_odds([mention for utterance in talk for mention in utterance.mentions], Plan(), 4)
    assert least <= max(odds.values()) <= most
    assert sum(odds.values()) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("second", "against"),
    [
        ("A par three. I had eight iron here last week, so it's a seven today. On the green. Two putts.", []),
        ("A par three. Eight iron on the green. Two putts, par. It's a seven.", ["it's a 7"]),
        ("This is the short one. Eight iron on the green. Two putts for a par.", []),
    ],
)
def test_the_number_of_a_club_or_a_hole_is_no_score_that_goes_against_the_card(
    second: str, against: list[str]
) -> None:
    told = [
        GREETING,
        "First, a par four. Driver, fairway. Wedge on. Two putts, par.",
        f"Two. {second}",
        "Third, a par five. Driver in the fairway, three wood, wedge on. Two putts, par.",
    ]
    read = reason(transcript([line for each in told for line in (each, "")]), Plan())
    assert [score.strokes for score in read.scores] == [4, 3, 5]
    assert [doubt.words for doubt in read.doubts if "but read as" in doubt.text] == against

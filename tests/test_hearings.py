"""One reading out of several hearings of a round."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import pytest

from reviewkit.hearings import filled, hearings, together
from reviewkit.model import HeardAgain, HoleScore, HoleSpan, Plan, Round, Shot, Transcript
from reviewkit.reasoning import reason
from reviewkit.scoring.doubts import over_hearings
from tests.test_second_listening import AFTER, BEFORE, CLEAR, GARBLED, heard, read, text

MUTTERED = (
    "Hole two, a par four.",
    "Driver in the fairway, wedge to the green.",
    "Holed it. Birdie three.",
    "",
)


def twice(first: Sequence[str], *others: Sequence[str]) -> Transcript:
    """A round whose second hole was heard as `first`, and in further manners as `others`."""
    words = heard(first)
    begins = len(BEFORE) - 1
    starts = words.segments[begins].start_s - 0.5, words.segments[-len(AFTER)].start_s - 0.5
    told = [heard(lines).segments[begins : -len(AFTER)] for lines in others]
    spoken = {f"manner {n}": segments for n, segments in enumerate(told, start=1)}
    return replace(words, again=(HeardAgain(*starts, spoken),))


def second(reading: Round) -> tuple[HoleScore, list[Shot]]:
    return reading.scores[1], [shot for shot in reading.shots if shot.hole == 2]


def test_each_hearing_is_a_round_of_its_own() -> None:
    whole = twice(GARBLED, CLEAR)
    first, other = hearings(whole)
    assert first == ("first", heard(GARBLED))
    assert text(other[1].segments).split()[: len(BEFORE)] == " ".join(BEFORE).split()[: len(BEFORE)]
    assert "Holed it. A birdie three." in text(other[1].segments)
    assert "some of it in" not in text(other[1].segments)


def test_heard_once_a_round_is_read_as_it_is() -> None:
    words = heard(CLEAR)
    reading = read(words)
    assert together({"first": reading}) is reading and not reading.taken


def test_the_hearing_that_the_others_bear_out_is_taken() -> None:
    reading = reason(twice(GARBLED, CLEAR, MUTTERED), Plan())
    score, strokes = second(reading)
    assert (score.strokes, len(strokes)) == (3, 3) and reading.taken[2] == "manner 1"
    assert [score.strokes for score in reading.scores] == [4, 3, 4]
    assert [score.running_to_par for score in reading.scores] == [0, -1, -1]
    assert reading.spans[1].hole == 2 and reading.spans[1].start_s == score.start_s


def test_the_hearing_that_told_less_has_its_say_in_how_sure_a_score_is() -> None:
    alone, _ = second(read(heard(CLEAR)))
    one, _ = second(reason(twice(CLEAR, CLEAR, GARBLED), Plan()))
    two, _ = second(reason(twice(CLEAR, GARBLED, GARBLED), Plan()))
    assert alone.confidence > one.confidence > two.confidence
    assert (alone.status, two.status) == ("sure", "check")


def test_what_one_hearing_leaves_open_another_tells() -> None:
    _, strokes = second(reason(twice(MUTTERED, CLEAR), Plan()))
    assert strokes[-1].distance_yd == pytest.approx(10 / 3, abs=1e-3)


def test_a_hearing_that_loses_the_hole_tells_nothing_of_it() -> None:
    alone = read(heard(CLEAR))
    reading = reason(twice(CLEAR, ("",)), Plan())
    assert [score.hole for score in reading.scores] == [1, 2, 3]
    assert second(reading)[1] == second(alone)[1]


def told(strokes: Sequence[int], odds: dict[int, dict[int, float]]) -> Round:
    """A reading of par fours, a minute each."""
    running = [sum(strokes[:n]) - 4 * n for n in range(1, len(strokes) + 1)]
    scores = tuple(
        HoleScore(n, n, 60.0 * n, 60.0 * n + 50, par=4, strokes=count, running_to_par=after)
        for n, (count, after) in enumerate(zip(strokes, running, strict=True), start=1)
    )
    spans = tuple(HoleSpan(s.hole, s.hole, s.start_s, s.end_s, 0, 0, True) for s in scores)
    return Round(scores, (), (), spans, Plan(), odds=odds)


def test_the_strokes_make_the_standing_that_the_hearings_come_to() -> None:
    """Each hearing has a bogey in two holes; hole by hole the likeliest would have none."""
    early = told([5, 4], {1: {5: 0.55, 4: 0.45}, 2: {4: 0.9, 5: 0.1}})
    late = told([4, 5], {1: {4: 0.9, 5: 0.1}, 2: {5: 0.55, 4: 0.45}})
    reading = together({"first": early, "low cut": late})
    assert sorted(score.strokes or 0 for score in reading.scores) == [4, 5]
    assert reading.scores[-1].running_to_par == 1


DRIVE = Shot(hole=1, stroke=1, start_s=0.0, end_s=1.0, kind="tee", club="D", evidence="driver")


@pytest.mark.parametrize(
    ("other", "became"),
    [
        (
            replace(DRIVE, result="rough", miss="left", evidence="drive her left, rough"),
            replace(DRIVE, result="rough", miss="left", evidence="driver / drive her left, rough"),
        ),
        # What is told already stays, and so does what another kind of stroke tells.
        (replace(DRIVE, club="3W"), DRIVE),
        (replace(DRIVE, kind="layup", miss="left"), DRIVE),
        (replace(DRIVE, result="penalty", penalty_strokes=1), DRIVE),
    ],
)
def test_what_fills_a_stroke(other: Shot, became: Shot) -> None:
    assert filled([DRIVE], [[other]]) == [became]
    assert filled([DRIVE], [[other, replace(other, stroke=2)]]) == [DRIVE], "another count of strokes"


def score(status: str = "sure", strokes: int = 4) -> HoleScore:
    return HoleScore(1, 1, 0.0, 9.0, par=4, strokes=strokes, confidence=0.97, status=status)


@pytest.mark.parametrize(
    ("odds", "alike", "status"),
    [
        ({4: 0.9, 5: 0.1}, ["sure", "sure", "check"], "sure"),
        ({4: 0.7, 5: 0.3}, ["sure", "sure", "check"], "check"),
        ({4: 0.9, 5: 0.1}, ["sure", "check", "check"], "check"),
        ({4: 0.9, 5: 0.1}, ["sure"], "sure"),
    ],
)
def test_a_score_is_as_sure_as_its_hearings_make_it(
    odds: dict[int, float], alike: list[str], status: str
) -> None:
    found, doubts = over_hearings(score(), odds, [score(heard) for heard in alike])
    assert (found.confidence, found.status) == (odds[4], status)
    assert [doubt.alternatives for doubt in doubts] == ([("5",)] if status == "check" else [])

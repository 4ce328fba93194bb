"""What became of a ball that found the only trouble there is."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

LAND = "There's a fence all down the right."
GONE = "Driver, over the fence, out of bounds."


@pytest.mark.parametrize(
    ("told", "miss"),
    [
        ([LAND, GONE], "right"),
        ([LAND, "And there's a lake down the left.", GONE], ""),
        ([GONE], ""),
        (["Houses the entire left side.", "Out of bounds the entire left side.", GONE], "left"),
        ([LAND, "Driver, pulled it left, out of bounds."], "left"),
    ],
)
def test_a_lost_ball_went_where_the_only_trouble_is(told: list[str], miss: str) -> None:
    lines = [
        GREETING,
        "",
        "Hole one, a par four.",
        *told,
        "Reloaded, fairway. Wedge on. Two putts for a six.",
    ]
    tee = reason(transcript(lines), Plan()).shots[0]
    assert (tee.result, tee.miss) == ("ob", miss)


@pytest.mark.parametrize(
    ("told", "fate", "miss"),
    [
        (["There are blue guns on the left.", "3 wood, and there's the blue guns. Clonk."], "rough", "left"),
        (["All gorse down the right hand side of this one.", "Driver, into the gorse."], "rough", "right"),
        (["And there's a wood on the right.", "Driver. It's gone in the wood. It's lost."], "lost", "right"),
        (["Water the entire right side.", "Driver. Wet. That's a stroke."], "penalty", "right"),
        (["Water on the left this time.", "Driver. That's in the next county, in the rough."], "rough", ""),
    ],
)
def test_a_ball_went_where_that_stands_which_it_found(told: list[str], fate: str, miss: str) -> None:
    rest = (
        ["Chip onto the green.", "Two putts."] if fate == "rough" else ["Three off the tee, driver, fairway."]
    )
    tee = reason(transcript([GREETING, "", "Hole one, a par four.", *told, *rest]), Plan()).shots[0]
    assert (tee.result, tee.miss) == (fate, miss)


def test_a_ball_given_up_without_a_word_is_out_of_bounds_where_that_is_the_only_trouble() -> None:
    gone = "Driver, and that's away left. Playing three from the tee, 3 wood, fairway."
    rest = [gone, "Wedge on. Two putts for a six."]
    fates = []
    for land in ("Out of bounds all down the left.", "It bends to the left."):
        lines = [GREETING, "", "Hole one, a par four.", land, *rest]
        fates.append(reason(transcript(lines), Plan()).shots[0].result)
    assert fates == ["ob", "lost"]


@pytest.mark.parametrize(
    ("told", "fate"),
    [
        (
            ["Driver, into the scrub.", "Hitting another one? Nah.", "Lost ball.", "Three off the peg."],
            "lost",
        ),
        (["Driver, into the wood.", "We found two balls, and none of it was mine.", "Lost."], "lost"),
        (["It's cleared the wall by a mile, with the driver.", "So that's three I'm playing."], "ob"),
    ],
)
def test_a_ball_gone_and_the_next_from_the_tee(told: list[str], fate: str) -> None:
    rest = ["3 wood, fairway.", "140 left, 8 iron, on the green.", "Two putts, six."]
    first, second = reason(transcript([GREETING, "", "Hole one, a par four.", *told, *rest]), Plan()).shots[
        :2
    ]
    assert (first.result, second.kind, second.club) == (fate, "tee", "3W")


def test_a_putt_told_with_what_it_left_is_one_of_its_own() -> None:
    lines = [
        *("Hole one, a par four. Driver, into the scrub. Lost ball.", "Three off the tee. 3 wood, fairway."),
        *("148 left, 6 iron, on the green.", "Twelve metres.", "Rolled it up to a metre.", "In it goes."),
    ]
    assert [shot.kind for shot in reason(transcript([GREETING, "", *lines]), Plan()).shots[3:]] == [
        "putt"
    ] * 2


def test_a_club_struck_again_from_the_tee_was_the_first_ones_too() -> None:
    told = ["It's over the road, out of bounds.", "Three off the tee, driver again, fairway."]
    lines = [GREETING, "", "Hole one, a par four.", *told, "Wedge on. Two putts for a six."]
    assert [shot.club for shot in reason(transcript(lines), Plan()).shots[:2]] == ["D", "D"]


@pytest.mark.parametrize(
    ("told", "penalties"),
    [
        (["Driver into the hazard on the left.", "It's dry in there, so I'm going to play it."], 0),
        (["Driver, in the penalty area on the right, but it's playable."], 0),
        (["Driver into the ditch.", "I can play it out of there, actually."], 0),
        (["Driver into the ditch.", "It's not playable, so I dropped by the stakes."], 1),
        (["Driver into the lake, so that's wet.", "Dropped on the bank, where it's dry."], 1),
    ],
)
def test_a_ball_played_as_it_lies_in_a_penalty_area_costs_nothing(told: list[str], penalties: int) -> None:
    """Rule 17.1b of the Rules of Golf, its number from memory."""
    behind = ["Knocked it out to the fairway. Wedge on, two putts."]
    shots = reason(transcript([GREETING, "", "Hole one, a par four.", *told, *behind]), Plan()).shots
    assert sum(shot.penalty_strokes for shot in shots) == penalties


@pytest.mark.parametrize(
    ("told", "club", "ended"),
    [
        (
            ["Driver, into the pond.", "So a drop, I'm hitting three from 165, in the rough, 7 iron on."],
            "7I",
            "green",
        ),
        (["Driver, right.", "155 left, in the rough, 7 iron, over the back, in the trees."], "7I", "trees"),
        (["Driver, right.", "155 left, in the rough. 7 iron, over the back, in the trees."], "7I", "trees"),
    ],
)
def test_a_lie_told_before_the_club_is_where_it_was_played_from(
    told: list[str], club: str, ended: str
) -> None:
    lines = [GREETING, "", "Hole one, a par four.", *told, "Two putts, all in."]
    second = reason(transcript(lines), Plan()).shots[1]
    assert (second.club, second.result) == (club, ended)

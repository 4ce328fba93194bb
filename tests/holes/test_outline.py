"""What the opening words say of the round's length, in many ways of saying it."""

from __future__ import annotations

import pytest

from reviewkit.holes import decode
from reviewkit.holes.outline import outline
from reviewkit.holes.signs import fits
from reviewkit.language.talk import read_talk
from reviewkit.model import Mention, Plan
from tests.support.narrations import transcript


@pytest.mark.parametrize(
    ("said", "count", "opener"),
    [
        ("Twelve holes this evening, and I want to be two under.", 12, None),
        ("Just the back nine today.", 9, 10),
        ("So it's the front nine, par thirty-five.", 9, 1),
        ("We're on fourteen, so we go fourteen through eighteen and then one through four.", 9, 14),
        ("They've dug up one through six, so we have seven through eighteen. That's twelve holes.", 12, 7),
        ("The place has only ten holes.", 10, None),
        ("Ten to eighteen, nice and easy.", 9, 10),
        ("A full eighteen in this wind, wish me luck.", 18, None),
        ("It's a par seventy-two and the goal is eighty.", 18, None),
        ("Here are four holes before breakfast.", 4, None),
        ("They've got us going out on the seventh, and we finish at the sixth, it's nine holes.", 9, 7),
        ("Back nine, club qualifier, and I'm level through the front.", 9, 10),
        ("They've shoved us off the tenth.", None, 10),
        ("We got sent to the sixteenth tee.", None, 16),
        ("I'm joining at the fifth because the first four are flooded.", None, 5),
        ("Our first is the thirteenth.", None, 13),
        ("We tee off from number seven.", None, 7),
        ("It's a shotgun, hole fourteen for me.", None, 14),
        ("We drew the eleventh for the shotgun.", None, 11),
        ("We're out on the back first.", 9, 10),
        ("They're sending everybody off number nine.", None, 9),
        ("Hiya. Is it on? Yeah. Hiya. Oh. No. So you go seven up to twelve. Then it's one to five.", 11, 7),
        ("Hello everybody, it's four degrees and I'm off nine.", None, None),
        ("I've been bleeding putts from six to ten feet.", None, None),
        ("Last time I was one under after five holes.", None, None),
    ],
)
def test_the_plan_is_heard(said: str, count: int | None, opener: int | None) -> None:
    found = outline(read_talk(transcript([said]), Plan()))
    assert max(found.counts, key=found.counts.__getitem__, default=None) == count
    assert max(found.openers, key=found.openers.__getitem__, default=None) == opener


def hole(opening: str) -> list[str]:
    return [opening, "7 iron onto the green.", "Two putts for par.", ""]


def test_a_last_hole_that_nobody_announces_is_found_where_the_plan_has_it() -> None:
    told = [*hole("Hole one, par three."), *hole("Hole two, par three."), *hole("Another one at last.")]
    lines = ["Three holes before work.", "", *told]
    assert [span.hole for span in decode(read_talk(transcript(lines), Plan()), Plan())] == [1, 2, 3]


def test_the_last_words_sum_up_so_many_holes() -> None:
    told = [line for number in range(1, 8) for line in hole(f"Hole {number}, par three.")]
    end = ["So one over for the seven holes.", "My partner had the same.", "Hat's in the water, so he paid."]
    assert set(outline(read_talk(transcript([*told, *end]), Plan())).counts) == {7}
    # What the first of them came to is no end.
    begun = [*told[:16], "So that's level for the four holes.", "", *told[16:]]
    assert not outline(read_talk(transcript(begun), Plan())).counts


@pytest.mark.parametrize(
    ("opening", "numbers"),
    [
        ("Hello, they have us going out on the seventh.", (7, 8, 9, 1, 2, 3)),
        ("There's only twelve holes, and they've put us off the tenth.", (10, 11, 12, 1, 2, 3)),
        ("You go nine up to twelve and then one to three. It's a shotgun.", (9, 10, 11, 12, 1, 2, 3)),
        ("We go ten up to twelve. Then it's one to two and done.", (10, 11, 12, 1, 2)),
        ("It's a shotgun, and ours is the eleventh.", (11, 12, 1, 2, 3, 4, 5)),
    ],
)
def test_a_round_that_begins_amid_a_nine_or_a_short_course_goes_around_it(
    opening: str, numbers: tuple[int, ...]
) -> None:
    told = [line for number in numbers for line in hole(f"Hole {number}, par three.")]
    lines = [opening, "", *told]
    assert [span.hole for span in decode(read_talk(transcript(lines), Plan()), Plan())] == list(numbers)


@pytest.mark.parametrize(
    ("opening", "said_on"),
    [
        ("Hello and welcome.", {7, 8, 16, 17}),
        ("Twelve holes this evening.", {10, 11, 1, 2}),
        ("It's ten holes, starting on the tenth.", {8, 9, 17, 18}),
        ("We're out on the fifth, it's seven holes.", {9, 10, 5, 6, 14, 15}),
        ("A full eighteen in this wind.", {7, 8, 16, 17}),
    ],
)
def test_holes_left_to_play_are_counted_to_where_the_plan_ends(opening: str, said_on: set[int]) -> None:
    told = outline(read_talk(transcript([opening]), Plan()))
    left = Mention("to_play", 2, 0, 2, 0.0, 1.0, "two to play")
    assert {number for number in range(1, 19) if fits(left, number, told.ends)} == said_on


def test_holes_of_which_only_the_total_is_told_are_parted_by_it() -> None:
    told = [
        "Over the pond here, and the wind is off the right.",
        "155, so a 7 iron.",
        "Oh, that's all over the stick.",
        "It's on, twenty feet, a bit to the left.",
        "Just by the edge, and that's still {} over.",
    ]
    holes = [line.format(total) for total in (1, 1, 2, 2, 3, 3) for line in (*told, "")]
    lines = ["Story, lads, there's light for an hour yet.", "", *holes]
    assert len(decode(read_talk(transcript(lines), Plan()), Plan())) == 6

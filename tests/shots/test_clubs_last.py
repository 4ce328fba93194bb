"""Which of the clubs named is a stroke's, and speakers who name it last; common practice, no source."""

from __future__ import annotations

import pytest

from reviewkit.model import Plan
from reviewkit.reasoning import reason
from tests.support.narrations import GREETING, transcript

HOLES = [
    "Hole one, a par four.",
    "It's in the middle of the fairway. Three wood.",
    "One forty to go. And that's on the green. Eight iron.",
    "Two putts for a par.",
    "",
    "Hole two, a par three.",
    "That's in the bunker on the left. Six iron.",
    "Splashed it onto the green. Sand wedge. Two putts for a bogey four.",
    "",
    "Hole three, a par four.",
    "Down the middle of the fairway again. Driver.",
    "And it's short, it's in the rough. Nine iron.",
    "Chipped onto the green. Gap wedge. One putt for a par.",
]


def clubs(lines: list[str]) -> dict[int, list[str]]:
    read = reason(transcript([GREETING, "", *lines]), Plan())
    holes: dict[int, list[str]] = {}
    for shot in read.shots:
        if shot.kind != "putt":
            holes.setdefault(shot.hole, []).append(shot.club)
    return holes


def test_a_habit_of_naming_clubs_last_is_known_by_the_tee_shots() -> None:
    assert clubs(HOLES) == {1: ["3W", "8I"], 2: ["6I", "SW"], 3: ["D", "9I", "GW"]}


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        ("Off to the right, in the rough. That was the driver, by the way.", ["D", "7I"]),
        ("I hung it out to the right, in the rough, with the driver.", ["D", "7I"]),
        ("Took the five wood, no, sorry, it was the three wood, into the rough.", ["3W", "7I"]),
        ("I had the driver out and I put it back. Three wood, into the rough.", ["3W", "7I"]),
    ],
)
def test_a_club_told_of_the_stroke_before_put_right_or_put_back(told: str, expected: list[str]) -> None:
    rest = ["7 iron from 150 yards onto the green.", "Two putts for a par."]
    assert clubs(["Hole one, a par four.", told, *rest])[1] == expected


@pytest.mark.parametrize(
    ("told", "expected"),
    [
        # "The same wedge" is the one before, and a sand wedge misheard where that was none.
        (["Pitching wedge, chunked it, in the fairway.", "50 yards. Same wedge, on the green."], "PW PW"),
        (["70 yards, same wedge again, and it's on the green."], "SW"),
        (["Gap wedge, and it's in the back bunker.", "Same wedge out, on the green."], "GW SW"),
        (["90 to go, gap wedge, no, same wedge, on the green."], "SW"),
        (["82. The sixty flat out would do, so the same wedge, on the green."], "SW"),
        # A number that may be a length is no club where one was named.
        (["104 left, the fifty four degree. It ripped back to like 60, 60, on the green."], "54"),
        # Nor is one that tells why another was taken.
        (["I'm going to get a six iron. Because I've had enough of the eight iron. On the green."], "6I"),
        (["If I had that one over, I'd hit a nine iron. I hit the eight iron, on the green."], "8I"),
        (["139 in. My pitching wedge is 134. Took the wedge and leaned on it, on the green."], "PW"),
        (["I wasn't going to fiddle about I took the nine iron and it's on the green."], "9I"),
        (["I'd have loved to have a cut at the 5 iron but it's a nine iron, on the green."], "9I"),
        (["I'd got the eight iron out, so I put the eight back and took the seven, on the green."], "7I"),
        (["Out of this grass a four iron is greedy, so my plan is a five iron. On the green."], "5I"),
        (["The seven iron was too much club, and I struck it anyway. On the green."], "7I"),
        # A mind changed after a club was named twice.
        (
            [
                "The nine iron, the sensible club, and I had hold of the nine iron,"
                " and then the wind got up in our faces, and I changed my mind.",
                "Eight iron, then. It's on the green.",
            ],
            "8I",
        ),
    ],
)
def test_the_club_of_a_stroke_among_those_named(told: list[str], expected: str) -> None:
    hole = ["Hole one, a par four.", "Driver, in the fairway.", *told, "Two putts."]
    assert " ".join(clubs(hole)[1][1:]) == expected

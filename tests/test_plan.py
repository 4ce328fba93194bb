"""Course cards, round.toml and the short forms of the command line."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.card import load_card
from reviewkit.errors import CardError, ReviewkitError
from reviewkit.model import CardHole, Plan
from reviewkit.plan import Wish, load_wish, parse_order, parse_target

CSV = "hole,par,yards,stroke_index\n1,4,362,7\n2,5,505,1\n"
TOML = 'course = "Quillback Flats"\n[[hole]]\nhole = 1\npar = 4\nyards = 362\nstroke_index = 7\n'


def write(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize(
    ("name", "text", "holes"),
    [
        ("a.csv", CSV, (CardHole(1, 4, 362, 7), CardHole(2, 5, 505, 1))),
        ("a.csv", "Hole;Par;SI\n3;3;\n\n", (CardHole(3, 3),)),
        # 100 m is 109.36 yd: the yard is 0.9144 m exactly.
        ("a.csv", "\ufeffhole,metres\n4,100\n", (CardHole(4, yards=109.4),)),
        ("a.toml", TOML, (CardHole(1, 4, 362, 7),)),
    ],
)
def test_cards(tmp_path: Path, name: str, text: str, holes: tuple[CardHole, ...]) -> None:
    assert load_card(write(tmp_path, name, text)).holes == holes


@pytest.mark.parametrize(
    ("name", "text", "told"),
    [
        ("a.csv", CSV + "2,4,380,3\n", "hole 2 stands on the card twice"),
        ("a.toml", TOML + "[[hole]]\nhole = 1\n", "hole 1 stands on the card twice"),
        ("a.csv", "hole,par\n1,9\n", "hole line 1: par 9 is not between 3 and 6"),
        ("a.csv", "hole,par\n1,four\n", "par 'four' is not a number"),
        ("a.csv", "hole,par\n1,4.5\n", "par 4.5 is not a whole number"),
        ("a.csv", "hole,pars\n1,4\n", "'pars' is not a column"),
        ("a.csv", "par\n4\n", "number is missing"),
        ("a.csv", "hole,par\n1,4,5\n", "more cells"),
        ("a.csv", "", "holds no holes"),
        ("a.toml", "hole = 3\n", "[[hole]]"),
        ("a.toml", "course = \n", "is not TOML"),
        ("a.toml", TOML + "pars = 4\n", "'pars' is not a column"),
        ("a.txt", CSV, "neither .toml nor .csv"),
    ],
)
def test_mistakes_on_a_card_are_told(tmp_path: Path, name: str, text: str, told: str) -> None:
    with pytest.raises(CardError) as error:
        load_card(write(tmp_path, name, text))
    assert told in str(error.value)
    assert name in str(error.value)


def test_order_of_play() -> None:
    assert parse_order("7-18,1-6") == (*range(7, 19), *range(1, 7))
    assert parse_order("3, 1") == (3, 1)
    for bad in ("", "1-", "a", "1-4,3", "0-9", "1-90"):
        with pytest.raises(ReviewkitError):
            parse_order(bad)


@given(st.integers(-99, 99))
def test_targets_read_as_written(target: int) -> None:
    assert parse_target(f"{target:+d}") == target


def test_level_par_and_bad_targets() -> None:
    assert parse_target("E") == 0
    with pytest.raises(ReviewkitError, match="is not a score to par"):
        parse_target("six under")


def test_round_toml_and_the_command_line_over_it(tmp_path: Path) -> None:
    write(tmp_path, "card.csv", CSV)
    text = (
        'course = "Quillback Flats"\nnames = ["Travis"]\norder = "1-2"\ntarget = -1\nunits = "m"\n'
        'card = "card.csv"\nmodel = "tiny.en"\nrules = "r.toml"\nsort = "time"\ncuts = false\n'
    )
    wish = load_wish(write(tmp_path, "round.toml", text))
    assert (wish.model, wish.sort, wish.cuts, wish.rules) == ("tiny.en", "time", False, tmp_path / "r.toml")
    plan = Wish(target=3, order=(2, 1)).over(wish).plan()
    assert plan.names == ("Quillback Flats", "Travis")
    assert (plan.order, plan.target, plan.units) == ((2, 1), 3, "m")
    assert plan.card.hole(2) == CardHole(2, 5, 505, 1)
    assert Wish().plan() == Plan()


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("targt = -6\n", "'targt' is not known here"),
        ("target = 1.5\n", "'1.5' is not a score"),
        ('units = "feet"\n', "units 'feet' is not known"),
        ('order = "1-9,4"\n', "names a hole twice"),
        ("names = 3\n", "names is not a list"),
        ("cuts = 1\n", "cuts is neither"),
        ('again = "no"\n', "again is neither"),
        ('card = "gone.csv"\n', "gone.csv: does not exist"),
        ("[[hole]]\nhole = 1\n[[hole]]\nhole = 1\n", "hole 1 stands on the card twice"),
    ],
)
def test_mistakes_in_round_toml_are_told(tmp_path: Path, text: str, told: str) -> None:
    with pytest.raises(CardError) as error:
        load_wish(write(tmp_path, "round.toml", text))
    assert told in str(error.value)

"""How alike words sound: pairs that a small listener really confused, against words that are no kin."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reviewkit.language.repair import ALIKE
from reviewkit.language.sound import distance

HEARD = [  # what a base-size model wrote for the second word, in the invented rounds
    ("bearway", "fairway"),
    ("kandex", "index"),
    ("candex", "index"),
    ("gaugleg", "dogleg"),
    ("fushed", "pushed"),
    ("bokey", "bogey"),
    ("bumper", "bunker"),
    ("hunched", "punched"),
    ("cutter", "putter"),
]
APART = [("railway", "fairway"), ("legend", "wedge"), ("middle", "bunker"), ("driver", "putter")]


@pytest.mark.parametrize(("heard", "meant"), HEARD)
def test_confused_words_are_alike(heard: str, meant: str) -> None:
    assert distance(heard, meant) <= ALIKE


@pytest.mark.parametrize(("one", "two"), APART)
def test_other_words_are_not(one: str, two: str) -> None:
    assert distance(one, two) > 1.5 * ALIKE


@given(st.text("abcdefghijklmnopqrstuvwxyz", max_size=12), st.text("abcdefghijklmnopqrstuvwxyz", max_size=12))
def test_distance_is_symmetric_and_nothing_for_the_same(one: str, two: str) -> None:
    assert distance(one, two) == pytest.approx(distance(two, one))
    assert distance(one, one) == 0
    assert distance(one, two) >= 0

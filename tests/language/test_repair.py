"""The lexicon's own examples and counterexamples, and how a user's file joins in."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewkit.errors import CardError
from reviewkit.language.lexicon import LEXICON, load, read
from reviewkit.language.repair import Lexicon
from reviewkit.language.tokens import as_heard, sentences
from reviewkit.model import Segment, Transcript, Word

ENTRIES = read(LEXICON)["repair"]
UNSURE = 0.4
"""A listener's probability low enough for entries that only mend what it was unsure of."""


def read_with(text: str, lexicon: Lexicon, probability: float = UNSURE) -> str:
    words = tuple(Word(word, at * 0.3, at * 0.3 + 0.28, probability) for at, word in enumerate(text.split()))
    return " ".join(piece.text for piece in lexicon.mend(as_heard((Segment(words),), lexicon.spelling)))


def bare(lexicon: Lexicon) -> Lexicon:
    return Lexicon(lexicon.spelling, {})


EXAMPLES = [(heard, meant) for entry in ENTRIES for heard, meant in entry["examples"]]
COUNTEREXAMPLES = [text for entry in ENTRIES for text in entry["counterexamples"]]


@pytest.mark.parametrize(("heard", "meant"), EXAMPLES)
def test_an_entry_mends_its_examples(heard: str, meant: str) -> None:
    assert read_with(heard, load()) == meant


@pytest.mark.parametrize("text", COUNTEREXAMPLES)
def test_an_entry_leaves_its_counterexamples(text: str) -> None:
    assert read_with(text, load()) == read_with(text, bare(load()))


def test_every_entry_has_both() -> None:
    for entry in ENTRIES:
        assert entry.get("examples") and entry.get("counterexamples"), entry


def test_a_users_entries_come_first_and_use_the_groups(tmp_path: Path) -> None:
    own = tmp_path / "rules.toml"
    own.write_text(
        '[[repair]]\nheard = "big dog"\nmeant = "driver"\n'
        '[[repair]]\nheard = "part <number 3-6>"\nmeant = "<1> <2>"\n'
        '[spelling]\n"spoony" = "5 wood"\n'
    )
    assert (
        read_with("the big dog on part three, then a spoony", load(own))
        == "the driver on part 3 , then a 5 wood"
    )


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("[[repair]\n", "not valid TOML"),
        ('[[repair]]\nheard = "a"\n', "needs heard and meant"),
        ('[[repair]]\nheard = "a"\nmeant = "b"\nafetr = "c"\n', "afetr"),
        ('[[repair]]\nheard = "a <clubs>"\nmeant = "b"\n', "<clubs>"),
    ],
)
def test_a_mistake_in_a_users_file_is_told(tmp_path: Path, text: str, told: str) -> None:
    own = tmp_path / "rules.toml"
    own.write_text(text)
    with pytest.raises(CardError, match=told) as caught:
        load(own)
    assert str(own) in str(caught.value)


def test_a_misheard_saying_of_several_words_is_put_right() -> None:
    assert read_with("I hit the southern wood", load(), 0.99) == "i hit the 7 wood"


def test_a_missing_users_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(CardError, match="cannot be read"):
        load(tmp_path / "none.toml")


def test_sure_words_are_left_where_only_unsure_ones_are_mended() -> None:
    assert (
        read_with("look at the flight, it's cut left", load(), 0.99) == "look at the flight , it's cut left"
    )


def test_the_words_as_heard_stay_within_reach() -> None:
    words = tuple(
        Word(w, i * 0.3, i * 0.3 + 0.2, 0.5)
        for i, w in enumerate(["It's", "a", "part", "for,", "to", "putts."])
    )
    tokens = sentences(Transcript((Segment(words),)))[0].tokens
    mended = [(token.text, token.repaired, token.first, token.last) for token in tokens if token.repaired]
    assert mended == [("par", "part", 2, 2), ("4", "for", 3, 3), ("2", "to", 4, 4)]

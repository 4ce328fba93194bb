"""Words taken for the phrase they sound like: what listeners really made of phrases of the game."""

from __future__ import annotations

import json
import math
from pathlib import Path

import numpy as np
import pytest

from reviewkit.language import by_ear, following
from reviewkit.language.phones import SOUNDS, sounds
from reviewkit.language.pieces import ENDS, Piece, pieces
from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word
from tests.language import ear, followed

ROUNDS = Path(__file__).parents[2] / "fixtures" / "rounds"


def heard(text: str, unsure: str, probability: float = 0.4) -> Transcript:
    """`text` as a listener wrote it, who was sure of all but the words of `unsure`."""
    doubted = {word.strip(".,?").lower() for word in unsure.split()}
    words = tuple(
        Word(word, at * 0.3, at * 0.3 + 0.25, probability if word.strip(".,?").lower() in doubted else 0.95)
        for at, word in enumerate(text.split())
    )
    return Transcript((Segment(words),))


@pytest.mark.parametrize(
    ("text", "unsure", "meant"),
    [
        ("Got a shot to burn. Biviren. Chop it out sideways.", "biviren", "5 iron"),
        ("It is a little downhill. The a tiren goes that far.", "a tiren", "8 iron"),
        ("No way to the green from here. So if I've hybrid and get it moving.", "if I've", "5 hybrid"),
        ("This one is narrow, so far iron, exactly what it wants.", "far", "4 iron"),
        ("So seven mired instead, fairway.", "mired", "7 iron"),
        ("It sat down, so I took the ditching wedge. A bit thin.", "ditching", "pitching wedge"),
        ("Onto the next one. Power floor, 380 yards.", "power floor", "par 4"),
    ],
)
def test_a_phrase_that_was_misheard(text: str, unsure: str, meant: str) -> None:
    found = sentences(heard(text, unsure))
    assert any(meant in sentence.text for sentence in found), [sentence.text for sentence in found]
    words = [token for sentence in found for token in sentence.tokens if token.repaired]
    assert words and all(token.repaired != token.text for token in words)


@pytest.mark.parametrize(
    ("text", "unsure"),
    [
        ("My friend in the blue jumper brought biscuits.", "jumper biscuits"),
        ("I'm hitting my driver here, and it's out.", "driver"),
        ("A 5 would do nicely.", "would"),
        ("He had a sandwich in the buggy.", "sandwich"),
        ("That is three hundred and ten off the tee.", "hundred"),
    ],
)
def test_words_that_are_what_they_seem(text: str, unsure: str) -> None:
    assert not any(token.repaired for sentence in sentences(heard(text, unsure)) for token in sentence.tokens)


def test_a_sure_listener_is_believed() -> None:
    given = pieces((Word("Took", 0.0, 0.2), Word("biviren", 0.3, 0.7), Word("here.", 0.8, 1.0)), {})
    assert by_ear.mended(given) == given


@pytest.mark.parametrize("path", sorted(ROUNDS.glob("*/asr.json")), ids=lambda path: path.parent.name)
def test_nothing_but_what_is_mended_changes(path: Path) -> None:
    said, given = ear.both_sides(path.parent)
    kept = [piece for piece in by_ear.mended(given) if not piece.heard]
    assert [piece for piece in given if piece in kept] == kept
    assert sum(piece.text in ENDS for piece in kept) == sum(piece.text in ENDS for piece in given)
    assert by_ear.mended(said) == said


@pytest.mark.parametrize(
    ("text", "spoken"),
    [
        # As a pronouncing dictionary has them, stress left out; from memory.
        ("5 iron", "F AY V AY ER N"),
        ("wedge", "W EH JH"),
        ("152", "W AH N F IH F T IY T UW"),
        ("105", "W AH N OW F AY V"),
        ("200", "T UW HH AH N D R AH D"),
        ("7th", "S EH V EH N TH"),
        ("hoped", "HH OW P D"),
        ("shot", "SH AA T"),
        ("butter", "B AH T ER"),
        ("the city", "DH AH S IH T IY"),
        ("- ,", ""),
    ],
)
def test_sounds_of_spelling(text: str, spoken: str) -> None:
    assert sounds(text) == tuple(spoken.split())


def test_costs_are_counted() -> None:
    """Over a few rounds alone every sound is heard for itself more than anyhow."""
    costs = ear.costs([ear.both_sides(path.parent) for path in sorted(ROUNDS.glob("*/asr.json"))])
    assert (costs.heard.diagonal() > 0).mean() > 0.85
    assert (costs.lost < 0).all() and (costs.added < 0).all()


def test_every_kind_of_phrase_is_weighed() -> None:
    table = json.loads(by_ear.COUNTED.read_text(encoding="utf-8"))
    kinds = {phrase.kind for phrase in by_ear.phrases()}
    assert set(table["weights"]) == kinds, "count anew: python -m tests.language.ear ROUND..."
    assert np.shape(table["heard"]) == (len(SOUNDS), len(SOUNDS))


def test_words_follow_as_counted() -> None:
    """What was said is likelier than what was not, and a word that nobody ever said is the least likely."""
    talk = words_of("I hit the 7 iron. Then I hit the 9 iron, and I hit the green.")
    known = followed.following([talk])
    assert known.one["hit"] == 3 and known.two["hit the"] == 3 and known.three["i hit the"] == 3
    assert known.two["#1 iron"] == 2 and "then i" not in known.two
    said, strange, unheard = (known.odds(["i", "hit", *words.split()]) for words in ("the", "green", "zebra"))
    assert said > strange > unheard


def test_what_may_follow_is_no_more_than_a_whole() -> None:
    """Interpolated counts are shares of one; what was said in a row only once is left out."""
    known = followed.following([words_of("I hit it. I hit it. It went left. I hit it left.")])
    for before in (["i", "hit"], ["went", "left"], ["zebra", "zebra"]):
        seen = sum(math.exp(known.odds([*before, word])) for word in known.one)
        assert 0.1 < seen + following.OTHERS * math.exp(known.odds([*before, "zebra"])) <= 1.0 + 1e-9


def test_sense_is_what_goes_with_the_words_around() -> None:
    given = words_of("I took a zebra tiren. Short of the green.")
    known = following.counted()
    assert following.sense(known, given, 3, 5, ["8", "iron"]) > 5
    assert following.sense(known, given, 3, 5, ["par", "4"]) < following.sense(
        known, given, 3, 5, ["8", "iron"]
    )


def words_of(text: str) -> list[Piece]:
    return pieces(tuple(Word(word, at * 0.3, at * 0.3 + 0.25) for at, word in enumerate(text.split())), {})

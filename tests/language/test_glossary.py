"""Words of the speaker's own for the parts of a course."""

from __future__ import annotations

import pytest

from reviewkit.language import lexicon
from reviewkit.language.glossary import glossary
from reviewkit.language.tokens import sentences
from tests.support.narrations import transcript

USES = [
    "That's in the fluff.",
    "On the carpet.",
    "Fluff again.",
    "Still on the carpet.",
    "Down the left. Left.",
]


@pytest.mark.parametrize(
    ("told", "words"),
    [
        ("Carpet is the fairway, fluff is rough.", {"carpet": "fairway", "fluff": "rough"}),
        ("Carpet is the fairway. The fluff's the rough.", {"carpet": "fairway", "fluff": "rough"}),
        ("The rough's the fluff. The green is my carpet, like.", {"fluff": "rough", "carpet": "green"}),
        ("The rough's the fluff, and the green's the carpet.", {"fluff": "rough", "carpet": "green"}),
        # A listener loses the apostrophe.
        ("The roughs the fluff, the greens the carpet.", {"fluff": "rough", "carpet": "green"}),
        ("When I say carpet I mean the green.", {"carpet": "green"}),
        ("I call the rough the fluff.", {"fluff": "rough"}),
        # One by itself may tell how a hole lies, and so may the sides of it.
        ("The carpet is green.", {}),
        ("The green's the carpet.", {}),
        ("The green's the right answer, the water's the killer, the rough's the left.", {}),
        ("Left is the bunker, right is rough.", {}),
        # What is never said again needs no meaning.
        ("Porridge is the bunker, custard's the water.", {}),
    ],
)
def test_a_glossary_is_taken_at_its_word(told: str, words: dict[str, str]) -> None:
    assert glossary(sentences(transcript([told, *USES]), lexicon.load(None))) == words

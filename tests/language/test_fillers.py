"""Words that only fill a pause go before anything is read."""

import pytest

from reviewkit.language.tokens import sentences
from reviewkit.model import Segment, Transcript, Word


def spoken(text: str) -> str:
    words = [Word(word, at * 0.3, at * 0.3 + 0.25, 0.9) for at, word in enumerate(text.split())]
    return " | ".join(sentence.text for sentence in sentences(Transcript((Segment(tuple(words)),))))


@pytest.mark.parametrize(
    ("said", "read"),
    [
        ("I hit, like, a baby seven.", "i hit a baby 7 ."),
        ("Uh, that's a four, you know, four.", "that's a 4 , 4 ."),
        ("It's like two feet. You know the one.", "it's like 2 feet . | you know the one ."),
        ("It's rolled to, call it, eighteen inches.", "it's rolled to 18 inches ."),
        ("Leaves me, what, about a hundred and forty.", "leaves me about 140 ."),
        (
            "And, oh, that's short. I'd call it, well, bad.",
            "and , oh , that's short . | i'd call it , well , bad .",
        ),
        ("On the fringe, um. Chipped it.", "on the fringe . | chipped it ."),
    ],
)
def test_fillers_go_and_a_written_stop_stays(said: str, read: str) -> None:
    assert spoken(said) == read

"""Long runs of words without a mark, parted before the clauses in them."""

from __future__ import annotations

import pytest

from reviewkit.language.tokens import sentences
from tests.support.narrations import transcript

BARE = (
    "nine iron from the left side of the fairway and it's gone miles right of the flag "
    "i think it's on the back fringe there's my ball it's fine"
)


@pytest.mark.parametrize(
    ("said", "read"),
    [
        (
            BARE,
            "9 iron from the left side of the fairway , and it's gone miles right of the flag "
            "i think it's on the back fringe , there's my ball , it's fine",
        ),
        (
            "driver and it's gone miles right of it that's wet",
            "driver and it's gone miles right of it that's wet",
        ),
    ],
)
def test_clauses_are_parted_where_no_mark_was_heard_for_long(said: str, read: str) -> None:
    assert [sentence.text for sentence in sentences(transcript([said]))] == [read]

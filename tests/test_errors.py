"""Told errors cross processes whole, as the workers of a batch raise them."""

from __future__ import annotations

import copy
import inspect
import pickle

import pytest

from reviewkit import errors
from reviewkit.errors import FileError, ReviewkitError

KINDS = [
    kind
    for _, kind in inspect.getmembers(errors, inspect.isclass)
    if issubclass(kind, ReviewkitError) and kind.__module__ == errors.__name__
]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
@pytest.mark.parametrize("remedy", ["", "Check the name."])
def test_an_error_comes_through_a_process_border_as_it_was(kind: type[ReviewkitError], remedy: str) -> None:
    about = ("day one/x.mp4",) if issubclass(kind, FileError) else ()
    raised = kind(*about, "is empty.", remedy)
    raised.add_note("while reading")
    for protocol in range(pickle.HIGHEST_PROTOCOL + 1):
        found = pickle.loads(pickle.dumps(raised, protocol))
        assert type(found) is kind
        assert (str(found), found.problem, found.remedy) == (str(raised), raised.problem, remedy)
        assert found.args == raised.args and vars(found) == vars(raised)
    assert str(copy.copy(raised)) == str(raised)

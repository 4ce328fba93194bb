"""The words of the game that the listener should expect, from a data file and the player's own names."""

from __future__ import annotations

from collections.abc import Iterable
from importlib import resources

LONGEST = 610
"""Characters: a speech model reads no more than 223 tokens of prompt, and every token costs time."""


def prompt(names: Iterable[str] = ()) -> str:
    """The hint given to the speech model with every window: the game's words, then `names`."""
    text = resources.files("reviewkit").joinpath("rules", "vocabulary.txt").read_text(encoding="utf-8")
    lines = [line.strip() for line in text.splitlines()]
    words = [line for line in lines if line and not line.startswith("#")]
    # Names come first in the cut, because no model knows them.
    own = ", ".join(name.strip() for name in names if name.strip())[: LONGEST // 2]
    game = ", ".join(words)
    room = LONGEST - len(own)
    if len(game) > room:
        game = game[:room].rsplit(",", 1)[0]
    return f"{game}, {own}" if own else game


def echoes(text: str, hint: str) -> bool:
    """Whether `text` is the hint itself read back, as models do with wind: six words or more in its order."""
    said, hinted = _plain(text), _plain(hint)
    return len(said.split()) >= 6 and said in hinted


def _plain(text: str) -> str:
    return " ".join("".join(c if c.isalnum() else " " for c in text.lower()).split())

"""The words of the game that the listener should expect, from a data file and the player's own names."""

from __future__ import annotations

from collections.abc import Iterable
from importlib import resources

LONGEST = 600
"""Characters: a speech model reads no more than 223 tokens of prompt, and every token costs time."""


def prompt(names: Iterable[str] = ()) -> str:
    """The hint given to the speech model with every window: the game's words, then `names`.

    Names are kept and words of the game left out where there is no room for both: no model knows the names.
    """
    text = resources.files("reviewkit").joinpath("rules", "vocabulary.txt").read_text(encoding="utf-8")
    lines = [line.strip() for line in text.splitlines() if line.strip() and not line.startswith("#")]
    own = " ".join(f"{name.strip().rstrip('.')}." for name in names if name.strip())[: LONGEST // 2]
    while lines and len(" ".join([*lines, own])) > LONGEST:
        lines.pop()
    return " ".join([*lines, own]).strip()


def echoes(text: str, hint: str) -> bool:
    """Whether `text` is the hint itself read back, as models do with wind: a dozen words in its order.

    Fewer could be a player who happens to say a sentence of the hint.
    """
    said, hinted = _plain(text), _plain(hint)
    return len(said.split()) >= 12 and said in hinted


def _plain(text: str) -> str:
    return " ".join("".join(c if c.isalnum() else " " for c in text.lower()).split())

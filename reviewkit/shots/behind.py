"""The words behind a stroke, for what no rule knows in them."""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model import Word
from reviewkit.shots.cue import Cue, bare_hit
from reviewkit.shots.drafts import Draft

AFTER = 18
"""Words behind the last that tells of a stroke, at most, that are still about it."""


def swung(draft: Draft) -> bool:
    """Whether words tell of the stroke, and it is no putt."""
    return draft.first < draft.last and draft.shape != "putt"


def last_word(cues: Sequence[Cue], draft: Draft) -> int:
    """The last word that may be about the stroke, before the next one's own words."""
    later = next((cue for cue in cues[draft.last :] if not bare_hit(cue)), None)
    until = cues[draft.last - 1].mention.last + AFTER
    return min(until, later.mention.first - 1) if later is not None else until


def bare(word: Word) -> str:
    """A word without the marks around it."""
    return re.sub(r"[^a-z']", "", word.text.lower())

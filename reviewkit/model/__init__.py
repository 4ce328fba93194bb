"""Frozen dataclasses that every room shares. They validate themselves and import no room."""

from reviewkit.model.amendment import ACTIONS, Amendment
from reviewkit.model.course import Card, CardHole, Plan
from reviewkit.model.fact import HoleFact
from reviewkit.model.mention import Mention
from reviewkit.model.round import Doubt, HoleScore, HoleSpan, Round, Shot
from reviewkit.model.tale import HoleTale
from reviewkit.model.talk import Talk, Utterance
from reviewkit.model.transcript import HeardAgain, Segment, Transcript, Word

__all__ = [
    "ACTIONS",
    "Amendment",
    "Card",
    "CardHole",
    "Doubt",
    "HeardAgain",
    "HoleFact",
    "HoleScore",
    "HoleSpan",
    "HoleTale",
    "Mention",
    "Plan",
    "Round",
    "Segment",
    "Shot",
    "Talk",
    "Transcript",
    "Utterance",
    "Word",
]

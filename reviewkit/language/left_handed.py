"""A left-hander's hook goes right: where a speaker says so of himself, curves are turned about."""

from __future__ import annotations

import re
from dataclasses import replace

from reviewkit.model import Mention, Talk, Utterance

_LEFT_HANDED = re.compile(
    r"\b(?:(?:i'm|i am|i play(?: golf| it| them)?|i swing|being|as|for|us|we) (?:an? )?(?:old )?)"
    r"(?:left handed|left handers?|lefty|lefties|southpaws?)(?! (?:bunker|trap|rough|side|edge|fringe|semi))"
)
_CURVES = {"curved or started left": "right", "curved or started right": "left"}
"""Rules whose words tell a side by how a right-hander's ball goes, and the side for the others."""


def with_curves_of_his_hand(talk: Talk) -> Talk:
    """The talk with "hooked it" to the right where the speaker plays left-handed."""
    if not any(_LEFT_HANDED.search(said.text) for said in talk):
        return talk
    return tuple(_turned(said) for said in talk)


def _turned(said: Utterance) -> Utterance:
    return replace(said, mentions=tuple(_other_way(mention) for mention in said.mentions))


def _other_way(mention: Mention) -> Mention:
    side = _CURVES.get(mention.rule)
    # "Turned left" says where it went whoever hit it.
    told = mention.kind != "miss" or side is None or mention.text.endswith(("left", "right"))
    return mention if told else replace(mention, value=side)

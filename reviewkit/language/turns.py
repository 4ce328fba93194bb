"""Another player's turn, told on in the next breath: "he's hit 8 iron. It's in the bunker. Nice out."

A mood reaches to the end of its sentence. What becomes of another's ball may be told in the sentences behind
it, until I, a club, a longer length, a score or a silence stands between. Where my own ball has not come to
rest before, "it" may be mine.
"""

from __future__ import annotations

import re
from collections.abc import Set
from dataclasses import replace

from reviewkit.model import Mention, Talk, Utterance
from reviewkit.model.values import SMALL_UNITS

_AT_ONCE_S, _SOON_S = 0.5, 1.0
"""What is told behind a longer silence is told anew."""
_STRUCK = {"club", "strike", "place", "holed", "putter", "contact", "miss"}
_FATES = {"place", "miss", "contact", "stayed_out", "putt", "lie"}
_THEIRS = (_STRUCK | _FATES | {"distance"}) - {"holed"}
_SCORES = {"score_word", "strokes", "running", "total", "points", "putt_for", "hole_to_par"}
_ENDS_IT = _SCORES | {"reload", "drop", "iron", "tap", "putts", "updown"}
RESTS = {"place", "holed", "tap", "putts", "putt", "stayed_out", "updown"}
"""My ball lies still after these, and moves after those."""
MOVES = {"club", "strike", "putter", "reload", "drop"}
_TURN = re.compile(
    r"\b(?:partner's|your|his|her) (?:turn|go|shot)\b"
    r"|\b(?:he|partner)(?:'s| is) (?:just )?(?:on|in|off|out|over|through|away|short|long|left|right)\b"
    r"|\bpartner (?:, )?from \d+"
)
_ABOUT_TO = re.compile(r"\bpartner (?:, )?from \d+(?: yards| metres| out)? [.!]$")
"""His club is told in the next breath: "Ned from 98. Gap wedge. Stuffs it to six foot"."""
_ITS = re.compile(r"(?:[a-z]+ , )?(?:(?:and|but|oh) )?(?:it|it's|that|that's)\b")
_PRAISED = re.compile(r"(?:that's a )?(?:nice|good|great|lovely) ")


def with_turns_told_on(talk: Talk) -> Talk:
    """The talk with fates told right behind another player's stroke as that player's."""
    told: list[Utterance] = []
    theirs, resting, armed = False, True, False
    for said in talk:
        whose = [m for m in said.mentions if m.kind == "who?"]
        soon = said.gap_s <= (_SOON_S if armed else _AT_ONCE_S)
        if theirs and not whose and soon and (armed or _goes_on(said)):
            said = of_another(said, _THEIRS)
        else:
            theirs = resting and _plays(said, whose[-1] if whose else None)
        armed = bool(whose) and _ABOUT_TO.search(said.text) is not None
        resting = at_rest(said, resting, RESTS, MOVES)
        told.append(said)
    return tuple(told)


def _plays(said: Utterance, whose: Mention | None) -> bool:
    """Whether another plays, whom the sentence names last: "he hit it stiff", "Ned's turn", "your go"."""
    if whose is None or (whose.value == "me" and whose.text != "your"):
        return False
    struck = whose.value == "other" and any(m.mood == "other" and m.kind in _STRUCK for m in said.mentions)
    return struck or _TURN.search(said.text) is not None


def _goes_on(said: Utterance) -> bool:
    """Whether a sentence naming nobody tells at most where a ball went and how far that is from the hole."""
    praised, its = _PRAISED.match(said.text), _ITS.match(said.text)
    for mention in said.mentions:
        if mention.kind in _ENDS_IT or (mention.kind in ("club", "strike", "putter") and not praised):
            return False
        if mention.kind == "distance" and not (its and mention.unit in SMALL_UNITS):
            return False
    return True


def at_rest(said: Utterance, before: bool, rests: Set[str], moves: Set[str]) -> bool:
    """Whether my own ball lies still behind a sentence, if it did or did not `before` it."""
    moved = [m.kind for m in said.mentions if not m.mood and (m.kind in rests or m.kind in moves)]
    return moved[-1] in rests if moved else before


def of_another(said: Utterance, kinds: Set[str]) -> Utterance:
    """A sentence with what is plainly told in it, of these kinds, as another player's."""
    theirs = (replace(m, mood="other") if m.kind in kinds and not m.mood else m for m in said.mentions)
    return replace(said, mentions=tuple(theirs))

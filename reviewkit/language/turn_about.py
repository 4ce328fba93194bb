"""Another player's turn told whole before mine: "Ned's hit. Brace yourselves. 7 iron, on it. Me. Driver."

A name, or that somebody struck, opens a turn without saying with what or where to. What is told behind it
is that player's, clubs too, as long as nothing but my own turn ends it: "me now", "I'll have the 7 as well".
Where no turn of mine follows, the club may well be mine, and nothing is taken for another's.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.language.turns import MOVES, RESTS, at_rest, of_another
from reviewkit.model import Talk, Utterance

_LONGEST, _SOON_S, _SOON = 9, 2.5, 4
"""Sentences of a turn at most, silence within it, and sentences from "me" to my club."""
_ALONE = re.compile(
    r"(?:(?:and|so|now|then|okay|right|well|meanwhile|anyway|1st|here's|over to|up comes|up steps)(?: ,)? )*"
    r"partner(?:'s| is)?"
    r"(?: (?:, )?(?:now|next|again|then|1st|up|on the tee|steps up|to (?:go|play|hit)"
    r"|(?:away|off|goes|going)(?: 1st)?|(?:your )?(?:turn|go|honou?r)|you're (?:up|on|1st)|off you go))*"
    r"(?: [.,!])?"
)
_TRIES = re.compile(
    r"\b(?:partner|he|she)(?:'s| is| was| has| had)?(?: (?:now|just|also|all))*"
    r" (?:(?:having|had|has|takes|taking|took) (?:a|another|his|her) (?:little |big |full )?"
    r"(?:dip|go|lash|crack|pop|swing|swipe|turn|shot|whack)"
    r"|going for it|goes for it|went for it)\b"
)
_MY_TURN = re.compile(
    r"(?:(?:and|so|now|then|okay|right|well|but|alright|anyway|yep)(?: ,)? )*"
    r"(?:(?:it's )?(?:me|mine)(?: (?:now|next|then|again|too))*(?= [.,!])"
    r"|(?:it's )?my (?:go|turn|shot|drive|honou?r)\b"
    r"|(?:as )?for me\b|over to me\b|i'm (?:with|going|taking|hitting|having|up|next|away|dropping)\b)"
    r"|.* for me [.,!]"
)
_I_TAKE = re.compile(
    r"(?:(?:and|so|now|then|but)(?: ,)? )*"
    r"(?:i'll (?:have|take|go|hit|play)|i (?:take|took|hit|go|went))\b"
)
"""A turn of mine only with the club in the same breath."""
_NEARER = {"togo", "left", "from"}
_TELLS = {"club", "iron", "place", "miss", "contact", "putter", "putt", "holed", "distance", "par", "hole"}
_SCORES = {"score_word", "strokes", "running", "total", "points", "hole_to_par", "putts", "tap", "hole"}
_THEIRS = {"club", "iron", "place", "lie", "miss", "contact", "strike", "distance", "reload", "drop"}
_RESTS = RESTS | {"par", "strokes", "hole"}
_MOVES = MOVES - {"drop"}


def with_turns_before_mine(talk: Talk) -> Talk:
    """The talk with clubs and fates between another player's turn and mine as that player's."""
    told = list(talk)
    resting, theirs = True, 0
    for number, said in enumerate(talk):
        if number < theirs:
            continue
        if resting and _opens(said) and (mine := _my_turn(talk, number + 1)):
            for at in range(number + 1, mine):
                told[at] = of_another(talk[at], _THEIRS)
            theirs = mine
        resting = at_rest(said, resting, _RESTS, _MOVES)
    return tuple(told)


def _opens(said: Utterance) -> bool:
    """ "Ned.", "Ned now", "he's having a go", "Ned's hit": a turn of which nothing else is told."""
    if any(m.kind in _TELLS for m in said.mentions) or _of_me(said):
        return False
    if _ALONE.fullmatch(said.text) or _TRIES.search(said.text):
        return True
    return any(m.kind == "strike" and m.mood == "other" for m in said.mentions)


def _of_me(said: Utterance) -> bool:
    return any(m.kind == "who?" and m.value == "me" for m in said.mentions)


def _my_turn(talk: Talk, start: int) -> int:
    """Number of the sentence that opens my turn, where a turn told from `start` on ends; 0 if none."""
    clubs, told, last = 0, False, start + _LONGEST
    for number in range(start, len(talk)):
        said = talk[number]
        take = _I_TAKE.match(said.text)
        if take or _MY_TURN.match(said.text):
            within = 1 if take else _SOON
            return number if told and _with_a_club(talk[number : number + within]) else 0
        if _opens(said):
            clubs, last = 0, number + _LONGEST
        if (
            number > last
            or clubs > 1
            or said.gap_s > _SOON_S
            or _of_me(said)
            or any(m.kind in _SCORES for m in said.mentions)
        ):
            return 0
        clubs += sum(m.is_club and m.mood != "other" for m in said.mentions)
        told = told or clubs > 0
    return 0


def _with_a_club(told: Sequence[Utterance]) -> bool:
    """Whether my turn is played with a club of its own: "I'm happy with that" is none.

    "I'm with the 9 iron from 120" is a next stroke of mine, so that the one before may have been mine too.
    """
    for said in told:
        kinds = {m.kind for m in said.mentions if m.mood not in ("other", "past")}
        if kinds & (_SCORES | {"putter", "putt"}) or any(m.mood in _NEARER for m in said.mentions):
            return False
        if "drop" in kinds or any(m.is_club and m.mood not in ("other", "past") for m in said.mentions):
            return True
    return False

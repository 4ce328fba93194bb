"""Clubs named by their number alone: "148 from there. Six." is a six iron, and no stroke counted."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.model import Mention, Utterance
from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.second_thoughts import by_itself, chosen, once_more
from reviewkit.shots.weighed import WHERE, weighed

_IRONS = range(5, 10)
"""Lower numbers are as often hybrids and woods."""
_NEAR = 40
"""Words from the length to the club, at most."""
_AT_ONCE = 2
"""Words from a club to the number that puts it right: "7 iron. Six. I'm hitting six."."""
_DECIDED_WITHIN = 12
"""Words from a club that was only thought of to the number taken: "I thought about my hybrid. So, seven."."""
_PUT_RIGHT_WITHIN = 5
"""Words from such a number to words that take it back: "7? Hang on, wind's behind. 8."."""
_SURELY = 1.5
"""The weight of a hole that a number names and no club: "that's the nine" may be either."""
_THOUGHT_WITHIN = 12
"""Words from one such number to the next: "so that's an eight. Or it's a nine. I'll hit a nine"."""
_SETTLED = {"place", "holed", "tap", "putts", "putt", "putter", "club", "miss", "reload", "drop"}
"""What stands between a length and a number that is then something else."""
_IN_PLAY = {"rough", "trees", "sand", "penalty", "fairway", "None"}
"""Where a ball lies, or was dropped, that a lone number before "punch it out" or "fairway" may be for."""
_MISSED = {"rough", "sand", "fringe", "trees"}
"""Where a wedge is likelier than a length that is told of nothing."""
_ADVISED = ("says", "said", "reckons", "reckoned", "called", "makes", "be ", "normally", "usually")
_COUNTS = {"count", "strokes"}
_NAMED = {"club", "hole", "putts", "distance"}
_TOLD = {"strike", "distance", "contact", "stayed_out"}
_MOVES = _SETTLED - {"miss"} | {"strike"}
"""What says where a ball lies, or that it lies there no more."""
_SOON = 12
"""Words from such a number to what became of the ball."""
_LEAST_YD, _LEAST_M = 75, 70
"""Nobody takes a numbered iron for less, as a rule; a guess."""
_MOST = 270
"""Nor for more."""
_LENGTHS = ("", "togo", "bare", "said", "left", "length")
_LOFTS = range(46, 66, 2)
_LONGEST_WEDGE = 140
"""What is left where a number is a wedge's loft; a guess."""


def with_clubs(talk: Sequence[Utterance]) -> tuple[Utterance, ...]:
    """One hole's talk with such numbers as clubs in place of counts."""
    named = _renamed(talk, list(once_more(_mentions(talk))))
    named = _renamed(named, list(_clubs(named)))
    named = _renamed(named, list(chosen(_mentions(named))))
    return _renamed(named, list(weighed(named)))


def _mentions(talk: Sequence[Utterance]) -> list[Mention]:
    return [mention for said in talk for mention in said.mentions]


def _renamed(talk: Sequence[Utterance], numbers: Sequence[Mention]) -> tuple[Utterance, ...]:
    if not numbers:
        return tuple(talk)
    clubs = {_key(mention): mention for mention in numbers}
    return tuple(
        replace(
            said,
            mentions=tuple(
                _club(clubs[_key(m)]) if _key(m) in clubs else m
                for m in said.mentions
                if _key(m) in clubs or not (m.kind in _COUNTS and any(m.overlaps(n) for n in numbers))
            ),
        )
        for said in talk
    )


def _key(mention: Mention) -> tuple[int, str, str]:
    return mention.first, mention.kind, mention.rule


def _clubs(talk: Sequence[Utterance]) -> Iterator[Mention]:
    far = named = alone = wedge = thought = meant = -_NEAR
    lies = ""
    told = _without_choices(_mentions(talk))
    for at, mention in enumerate(told):
        lone = _lone(mention) or (_maybe(mention) and mention.value in _IRONS and _alone(mention, told))
        if lone and lies in _IN_PLAY and _advanced(told[at + 1 :], mention):
            far, lies = -_NEAR, ""
            yield mention
            continue
        if mention.kind in _MOVES and not mention.mood:
            lies = str(mention.value) if mention.kind in ("place", "drop") else ""
        named = mention.last if mention.kind == "club" and not mention.mood else named
        meant = mention.last if _weighed(mention) else meant
        settled = mention.kind in _SETTLED and not mention.mood
        thought, meant = (-_NEAR, -_NEAR) if settled else (thought, meant)
        near = mention.first - wedge < _NEAR
        if _loft(mention) and (near or _for_a_wedge(told[at + 1 :], mention, lies)) and _alone(mention, told):
            wedge = -_NEAR
            yield mention
        elif settled or _summed_up(mention):
            wedge, lies = -_NEAR, "" if _summed_up(mention) else lies
        elif _from_near(mention):
            wedge = mention.last
        if _from_afar(mention):
            far = mention.last
        elif settled or _at_the_hole(mention):
            far = -_NEAR
        elif mention.kind == "mend?" and mention.first - alone <= _PUT_RIGHT_WITHIN:
            far = mention.last
        elif _maybe(mention, far) and _alone(mention, told) and _for_a_club(mention, far, thought):
            far, thought = far if mention.mood or _advised(mention) else -_NEAR, mention.last
            yield mention
        elif _lone(mention) and (
            mention.first - far < _NEAR
            or mention.first - named <= _AT_ONCE
            or mention.first - meant <= _DECIDED_WITHIN
        ):
            far, meant, alone = -_NEAR, -_NEAR, mention.last
            yield mention


def _without_choices(told: Sequence[Mention]) -> list[Mention]:
    """ "Between eight and nine. So eight": neither of the two is the one taken yet."""
    choices = [m for m in told if m.kind == "iron" and m.mood == "choice"]
    return [m for m in told if not (_lone(m) and any(m.overlaps(choice) for choice in choices))]


def _weighed(mention: Mention) -> bool:
    """ "I was going to hit hybrid": a club meant or ruled out, not used."""
    return mention.is_club and mention.mood in ("plan", "not", "tried")


def _summed_up(mention: Mention) -> bool:
    """ "57 total, plus one. Old low was 58": behind a standing no number is a club."""
    return mention.kind in ("running", "points") and not mention.mood


def _for_a_club(number: Mention, far: int, thought: int) -> bool:
    """Whether a length was told not long before, or another club by its number: "A seven? That's a five"."""
    return number.first - far < _NEAR or number.first - thought <= _THOUGHT_WITHIN


def _advanced(rest: Sequence[Mention], number: Mention) -> bool:
    """Whether what is told next is a ball punched out, or in the fairway."""
    following = next((m for m in rest if not m.mood and (m.kind in _SETTLED or m.kind in _TOLD)), None)
    if following is None or following.first - number.last > _SOON:
        return False
    return following.value in ("punch", "layup") or (following.kind, following.value) == ("place", "fairway")


def _for_a_wedge(rest: Sequence[Mention], number: Mention, lies: str) -> bool:
    """Whether the green was missed, and neither a club nor a better length is told behind the number."""
    named = (m for m in rest if m.kind == "club" or (_length(m) < math.inf and m.mood != "left"))
    return lies in _MISSED and not any(m.first - number.last <= _SOON for m in named)


def _loft(mention: Mention) -> bool:
    """ "130 yards. Grass is thick, so 56": a number of degrees, where the length has been told."""
    bare = mention.kind == "distance" and not mention.unit and mention.mood in ("", "bare", "togo")
    return bare and mention.text.isdigit() and mention.value in _LOFTS


def _from_near(mention: Mention) -> bool:
    return mention.mood != "length" and _length(mention) <= _LONGEST_WEDGE


def _from_afar(mention: Mention) -> bool:
    least = _LEAST_M if mention.unit == "m" else _LEAST_YD
    return mention.mood != "left" and least <= _length(mention) <= _MOST


def _at_the_hole(mention: Mention) -> bool:
    """ "80 yards. On, 25 feet. Backhanded the last two inches, that's a seven": no club any more."""
    return mention.kind == "distance" and mention.unit in SMALL_UNITS and mention.mood in ("", "left")


def _length(mention: Mention) -> float:
    """What was told as left of the fairway or of the whole hole, endless where nothing was."""
    told = mention.kind == "distance" and mention.unit not in SMALL_UNITS and mention.mood in _LENGTHS
    return mention.value if told and isinstance(mention.value, int | float) else math.inf


def _lone(mention: Mention) -> bool:
    return by_itself(mention) and mention.value in _IRONS


def _maybe(mention: Mention, far: int = -_NEAR) -> bool:
    """ "It's a seven for me", which is a score where no length was told before it.

    So is "that's my seven", but soon behind a length: "152, that's my seven".
    """
    soon = mention.mood == "named" and mention.first - far <= _SOON
    return mention.kind == "iron" and (mention.mood in ("", "plan", "tried") or soon)


def _advised(mention: Mention) -> bool:
    """ "The caddie says seven": a club to be taken, which may be another in the end."""
    return mention.text.startswith(_ADVISED)


def _alone(mention: Mention, told: Sequence[Mention]) -> bool:
    """Whether nothing else is named in the same words, a hole that they may be taken for aside."""
    named = (m for m in told if m is not mention and m.kind in _NAMED)
    named = (m for m in named if m.kind != "hole" or m.weight >= _SURELY)
    return not any(m.overlaps(mention) for m in named)


def _club(mention: Mention) -> Mention:
    if mention.kind in WHERE:
        return mention
    if mention.kind == "distance":
        return replace(mention, kind="club", value=str(mention.value), mood="")
    mood = "" if mention.mood in ("changed", "named", "again") else mention.mood
    mood = "plan" if mention.kind == "iron" and _advised(mention) else mood
    value = mention.value if isinstance(mention.value, str) else f"{mention.value}I"
    return replace(mention, kind="club", value=value, unit="", mood=mood)

"""Clubs weighed against each other, of which the one taken is told when the ball has landed, or never.

"Comfortable six, or a very good seven. Short of the green. So I'd hit the six": a number weighed among clubs
is one when it is told behind the landing, and of the stroke that has landed. Till then none of them was used.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import dropwhile

from reviewkit.model import Mention, Utterance
from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import HAPPENED
from reviewkit.shots.second_thoughts import by_itself

_LANDED = {"place", "miss", "contact"}
WHERE = _LANDED | {"lie"}
_DONE = {"holed", "tap", "putts", "putt", "putter", "stayed_out", "reload", "drop", "updown"}
"""What tells that another stroke was played: a number is then a score, a club another's."""
_BEHIND = 45
"""Words from where the ball landed to the club that it was struck with."""
_NAMED = ("", "named", "changed")
"""Moods of a number that may be the club taken."""
_USED = ("", "after", "with")
"""Moods of a club that was."""
_ELSEWHERE = ("other", "past", "land")
_CLUB = r"(?:iron|wood|hybrid|rescue|driver|wedge|\b[3-9]|\b[456]\d)"
_OR = re.compile(rf"{_CLUB}(?:(?: ,)? [a-z0-9']+){{0,6}}(?: ,)? or (?:[a-z']+ ){{0,4}}{_CLUB}|\?$")
"""Words between clubs of which one is to be taken."""
_WAS = re.compile(r"(?:it|that|which) was |i'd |i (?:had|hit|took|used) ")
"""How a club is told of a stroke when what it left has been told."""
SURELY_BEHIND = 3.0
"""The weight of a club that can only be of the stroke before it."""
_FEWEST = 2
"""Clubs that are weighed against each other."""


@dataclass(slots=True)
class _Choice:
    """Clubs weighed for one stroke, by their number or name, with their mentions.

    It is `open` while nobody knows which of them is taken. The ball has `landed` at that word; `left` is
    whether what is left then has been told.
    """

    clubs: dict[str, str] = field(default_factory=dict)
    named: list[Mention] = field(default_factory=list)
    numbers: list[Mention] = field(default_factory=list)
    open: bool = False
    settled: bool = False
    landed: int = -1
    left: bool = False

    def weigh(self, mention: Mention, clubs: Sequence[str], weighs: bool) -> Iterator[Mention]:
        """Take account of the clubs that a mention names; `weighs` if none of them is taken by its words.

        Where one is, those weighed before it were not.
        """
        self.clubs |= {_key(club): club for club in clubs}
        if mention.kind == "club" and mention.mood in _USED and not weighs:
            yield from (_given_up(club) for club in self.named if self.open)
            self.settled = True
        self.open = not self.settled and weighs and len(self.clubs) >= _FEWEST
        self.named += [mention] * (mention.kind == "club")
        self.numbers += [mention] * (mention.kind == "iron" and mention.mood == "weighed")

    def land(self, at: int) -> Iterator[Mention]:
        """The clubs weighed, as none that is known now that the ball has landed; one alone as that meant."""
        self.landed = at
        if self.open:
            yield from (_meant(club, "") for club in (*self.named, *self.numbers))
        elif len(self.clubs) == 1 and not self.named:
            club = next(iter(self.clubs.values()))
            yield from (_meant(number, club) for number in self.numbers)

    def over(self, mention: Mention) -> bool:
        """Whether another stroke's words have come: "Driver. 150 left. Seven or eight"."""
        if mention.kind in _DONE and not mention.mood:
            return True
        if self.landed >= 0:
            anew = self.left and _considered(mention) and not _WAS.match(mention.text)
            return bool(anew) or not self.open or mention.first - self.landed > _BEHIND
        return self.settled and _left(mention)


def weighed(talk: Sequence[Utterance]) -> Iterator[Mention]:
    """Clubs weighed and not settled on, as none that is known; those told behind the landing, as taken."""
    choice = _Choice()
    for number, said in enumerate(talk):
        told = _own(said.mentions)
        around = talk[max(number - 1, 0) : number + 2 : 2]
        amid = not any(map(_considered, told)) and all(map(_weighs, around))
        weighs = _only_weighed(told, said.text, choice.open and choice.landed < 0)
        for at, mention in enumerate(told):
            choice = _Choice() if choice.over(mention) else choice
            if choice.landed >= 0:
                choice.left = choice.left or _left(mention)
                if (club := _told(mention, choice)) and not _struck(told[at:]):
                    yield replace(mention, value=club, mood="after", weight=SURELY_BEHIND)
                    choice = _Choice()
            elif clubs := _considered(mention):
                yield from choice.weigh(mention, clubs, any(mention.overlaps(one) for one in weighs))
            elif mention.kind in WHERE and not mention.mood:
                if amid or (_among(told[:at], weighs) and _among(told[at:], weighs)):
                    # "Hybrid is in those bunkers, 5 iron is on the limit": where it would land.
                    yield replace(mention, mood="plan")
                elif choice.clubs and mention.kind in _LANDED:
                    yield from choice.land(mention.last)


def _weighs(said: Utterance) -> bool:
    return any(mention.kind == "iron" and mention.mood == "weighed" for mention in said.mentions)


def _among(told: Sequence[Mention], weighs: Sequence[Mention]) -> bool:
    return any(one in told for one in weighs)


def _own(told: Sequence[Mention]) -> list[Mention]:
    """What is told of a player's own; a "hybrid" with its number is that alone."""
    clubs = [mention for mention in told if mention.kind == "club"]
    return [
        mention
        for mention in told
        if mention.mood not in _ELSEWHERE
        and not (mention.kind == "strike" and any(mention.overlaps(club) for club in clubs))
    ]


def _only_weighed(told: Sequence[Mention], text: str, still: bool) -> list[Mention]:
    """The mentions that name clubs only weighed: "six is sensible", "the seven or the eight".

    The one then taken of them is not: "the seven or the eight, no, seven it is". Where clubs are weighed
    `still`, those told in one breath and with nothing else are: "five wood, hybrid, five wood".
    """
    listed = [m for m in told if m.mood in _USED and (m.kind == "club" or m.value == "full")]
    if still and _several(listed) and not any(m.kind in HAPPENED for m in told):
        return listed
    clubs = [m for m in told if _considered(m)]
    if not (_several(clubs) and _OR.search(text)):
        return [m for m in told if m.kind == "iron" and m.mood in ("weighed", "choice")]
    last = clubs[-1]
    before = [m for m in clubs if m.last < last.first]
    again = any(_same(club, str(last.value)) for m in before for club in _considered(m))
    mended = any(m.kind == "mend?" and before and before[-1].last < m.first <= last.first for m in told)
    return before if again or mended else clubs


def _several(clubs: Sequence[Mention]) -> bool:
    return len({_key(club) for mention in clubs for club in _considered(mention)}) >= _FEWEST


def _meant(mention: Mention, club: str) -> Mention:
    return replace(mention, value=club, mood="plan")


def _given_up(club: Mention) -> Mention:
    """The club as none that was used; a number that may be a loft is no length all the same."""
    value = str(club.value)
    return replace(club, value=value, mood="plan" if value.isdigit() else "not")


def _considered(mention: Mention) -> list[str]:
    """The clubs that a mention names as to be taken or not: "7I" of a seven."""
    if mention.kind == "club":
        return [str(mention.value)]
    if mention.kind == "strike" and mention.value == "full":
        return [mention.text]
    if mention.kind == "iron" and mention.value is not None:
        named = str(mention.value)
        return [f"{word}I" for word in mention.text.split() if word.isdigit()] if named.isdigit() else [named]
    return []


def _same(club: str, last: str) -> bool:
    return _key(club) == _key(last) or (club in ("hybrid", "rescue") and last.endswith("H"))


def _key(club: str) -> str:
    return club.rstrip("IHW") if club[:1].isdigit() else club


def _told(mention: Mention, choice: _Choice) -> str:
    """The club among those weighed that a mention names, if any."""
    if choice.left and not _WAS.match(mention.text):
        return ""
    if mention.kind == "club" and mention.mood in _USED:
        return str(mention.value) if str(mention.value) in choice.clubs.values() else ""
    if (mention.kind == "iron" and mention.mood in _NAMED) or by_itself(mention):
        return choice.clubs.get(str(mention.value), "")
    return ""


def _struck(told: Sequence[Mention]) -> bool:
    """ "Three wood, on the green": whether the club is that of a stroke told behind it."""
    behind = dropwhile(lambda mention: mention.overlaps(told[0]), told)
    return any(m.kind in _LANDED or m.kind in _DONE for m in behind if not m.mood)


def _left(mention: Mention) -> bool:
    """What is left to the hole once the ball lies where it does, and is played on from."""
    return mention.kind == "distance" and mention.mood == "togo" and mention.unit not in SMALL_UNITS

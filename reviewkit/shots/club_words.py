"""What the clubs named in a run of cues say of its being one stroke.

The numbers are common sense checked on invented rounds; no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Mention, Utterance
from reviewkit.model.values import WEDGES
from reviewkit.shots.cue import LONGEST_CLUBS, Cue
from reviewkit.shots.lengths import putt_long

_BARE = re.compile(r"(?:, )?\d\d(?: ,)?")
"""A number that may be a loft, or a length."""
_AT_ONCE = 3
"""Words from a club to one that puts it right."""
_IN_FULL = 2.0
"""The weight of a club that is named, not only by its number."""
_SURELY = 0.9
"""The weight of a total that nothing else could be."""
_FEWEST, _DRIVEN, _LEFT = 60, 180, 230
"""Nobody drives for less than `_DRIVEN`, in yards or metres; less than the first is a pitch,
and more than `_LEFT` is seldom left by a tee shot."""


def named_late(run: Sequence[Cue], landed_at: int, at: int, clubs_last: bool) -> float:
    """What speaks against the club of a ball that has landed."""
    if run[at].after or (run[at].mention.mood == "with" and run[at].utterance == run[landed_at].utterance):
        return 0.0
    at_once = run[at].mention.first - run[landed_at].mention.last <= 3
    return 0.2 if at_once or clubs_last else 1.3


def left_since(run: Sequence[Cue]) -> bool:
    """Whether what is left is told after the last club of the words so far."""
    club = max(at for at, cue in enumerate(run) if cue.kind == "club")
    return any(cue.kind == "distance" and cue.mention.mood in ("togo", "bare") for cue in run[club:])


def left_another(cues: Sequence[Cue], at: int) -> bool:
    """ "3 wood, interstate, 151. 7 iron": whether a club left a length that is another's."""
    if cues[at].kind != "club" or cues[at].meant:
        return False
    after = next((to for to in range(at + 1, len(cues)) if cues[to].kind == "club"), at)
    return any(
        cue.kind == "distance" and cue.mention.mood in ("togo", "bare") and _FEWEST < float(cue.value) < _LEFT
        for cue in cues[at + 1 : after]
    )


def struck_since(run: Sequence[Cue], cue: Cue) -> bool:
    """ "6 iron. Shanked it, way right. 9 iron": whether a ball was struck in a breath between two clubs."""
    club = max(at for at, told in enumerate(run) if told.kind == "club")
    return any(
        told.kind in ("contact", "miss") and not told.meant and told.utterance < cue.utterance
        for told in run[club:]
    )


def once_more(run: Sequence[Cue], at: int) -> bool:
    """ "3 hybrid, get it moving, and again, the 3 wood": told in a later breath, or right before a club."""
    club = at + 1 < len(run) and run[at + 1].kind == "club" and run[at + 1].utterance == run[at].utterance
    return club or run[at].utterance > run[0].utterance


def missed_before(run: Sequence[Cue]) -> bool:
    """ "6 iron short, chip, two putts": a chip or a pitch told behind a club and where that missed."""
    club = next((at for at, cue in enumerate(run) if cue.kind == "club" and not cue.meant), len(run))
    missed = next((at for at in range(club, len(run)) if run[at].kind == "miss"), len(run))
    return any(cue.kind == "strike" and cue.value in ("chip", "pitch") for cue in run[missed:])


def wedged(run: Sequence[Cue]) -> bool:
    """Whether a wedge was taken, whichever."""
    return any(cue.kind == "strike" and cue.value == "wedge" and not cue.meant for cue in run)


def beyond_its_club(run: Sequence[Cue]) -> bool:
    """ "Driver. Wedge from 110": told in a later breath, a stroke for a club that goes half as far."""
    club = next((cue for cue in run if cue.kind == "club"), None)
    if club is None or club.meant or club.value not in LONGEST_CLUBS:
        return False
    later = [cue for cue in run if cue.utterance > club.utterance]
    left = [cue for cue in later if cue.kind == "distance" and cue.mention.mood == "togo"]
    return wedged(later) or any(_FEWEST < float(cue.value) < _DRIVEN and not putt_long(cue) for cue in left)


def wedge_behind(run: Sequence[Cue]) -> bool:
    """ "Driver. Wedge from 110": another club, whichever wedge it was."""
    clubs = [cue for cue in run if cue.kind == "club"]
    if not clubs or any(cue.value.isdigit() or cue.value in WEDGES for cue in clubs):
        return False
    return any(cue.value == "wedge" and cue.utterance > clubs[0].utterance for cue in run)


def on_the_card(mention: Mention, utterance: Utterance) -> bool:
    """ "So that's seven over, 54": the round's strokes, no wedge."""
    return (
        mention.kind == "club"
        and str(mention.value).isdigit()
        and any(
            m.kind == "total" and m.value == int(str(mention.value)) and m.overlaps(mention)
            for m in utterance.mentions
            if not m.mood and m.weight >= _SURELY
        )
    )


def is_wedge(cue: Cue) -> bool:
    """Whether it names a wedge, by its name or its loft."""
    return cue.kind == "club" and _wedge(cue.value)


def _wedge(club: str) -> bool:
    return club.isdigit() or club in WEDGES


def with_the_same_wedge(found: Sequence[Cue]) -> list[Cue]:
    """ "Pitching wedge, chunked it. Same wedge": the one before.

    Where that was none, or a bunker is to be got out of, a sand wedge was heard so; as in "gap wedge, no,
    same wedge".
    """
    kept: list[Cue] = []
    club = place = ""
    named = -_AT_ONCE
    for cue in found:
        if cue.kind == "club" and cue.value == "same" and cue.mention.text.endswith("wedge"):
            again = place != "sand" and _wedge(club) and cue.mention.first - named > _AT_ONCE
            cue = replace(cue, mention=replace(cue.mention, value=club if again else "SW"))
        if cue.kind == "club" and not cue.meant:
            club, named = cue.value, cue.mention.last
        place = cue.value if cue.kind == "place" else place
        kept.append(cue)
    return kept


def club_of(run: Sequence[Cue]) -> str:
    """The club last named as used, else the one last named as meant; "the same" only where none is named.

    A number that may be a loft ("back to like 60, 60") gives way to a club named in full before it.
    """
    told = [cue for cue in run if cue.kind == "club"]
    told = [cue for cue in told if cue.value != "same"] or told
    told = [cue for cue in told if not cue.meant] or told
    named = [cue for cue in told if cue.mention.weight >= _IN_FULL]
    if named and all(_BARE.fullmatch(cue.mention.text) for cue in told[told.index(named[-1]) + 1 :]):
        told = named
    return told[-1].value if told else ""

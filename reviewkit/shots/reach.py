"""How far a club goes at most, and the number that was said where a length heard is beyond that, or a putt.

"One eighteen" and "one eighty" sound alike; nobody hits a gap wedge 180 yards.
"""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.shots.club_words import wedged
from reviewkit.shots.cue import Cue
from reviewkit.shots.lengths import yards
from reviewkit.shots.steps import Step

_WOODS = {"D": 340, "3W": 290, "5W": 265, "7W": 245, "9W": 225}
_HYBRIDS = {"2H": 255, "3H": 245, "4H": 230, "5H": 215, "6H": 205}
_IRONS = {"1I": 250, "2I": 240, "3I": 230, "4I": 220, "5I": 210, "6I": 200, "7I": 190, "8I": 174, "9I": 158}
_WEDGES = {"PW": 148, "GW": 136, "SW": 126, "LW": 112}
_REACH_YD = _WOODS | _HYBRIDS | _IRONS | _WEDGES
"""Yards that a strong amateur may reach with a club, its run included; common practice, from memory."""
_SHORT_YD, _FULL_YD, _AT_A_STRETCH = 30, 140, 1.15
"""What a chip has at most, what a club goes that is seldom chipped with, how far a long hitter outdoes it."""

_SELDOM, _NEVER = 1.0, 1.1
_HARDLY_A_PUTT_YD = 24.0
"""Of a longer one the number that sounds like it is likelier: 14 metres for 40."""


def reach(club: str) -> float | None:
    """The most yards of a club, of a wedge by its degrees too; None where the club is not known."""
    if club.isdigit():
        return 150.0 - 3.0 * (int(club) - 46) if 44 <= int(club) <= 64 else None
    return _REACH_YD.get(club)


def twin(value: float) -> float | None:
    """The smaller number that sounds like a told one, 118 for 180; None where there is none."""
    hundreds, rest = divmod(value, 100)
    return hundreds * 100 + 10 + rest // 10 if rest in range(30, 100, 10) else None


def usual(most: float) -> float:
    """Beyond so many yards of a shorter club's `most` the number that sounds like it is likelier.

    With a longer one people go for what they cannot reach, or lay up.
    """
    return (_SELDOM if most <= _REACH_YD["5I"] else _NEVER) * most


def without_hundreds(value: float, most: float | None) -> float | None:
    """ "That's two, 95 in" heard as 295, "that's two. Hundred and ten left" as 210: what the count leaves,
    where the club goes so far and no further."""
    if most is None or most >= 200 or not 200 <= value < 300:
        return None
    return next((rest for rest in (value - 200, value - 100) if 0.5 * most <= rest <= most), None)


def within_reach(cues: Sequence[Cue], at: int, step: Step, units: str) -> float:
    """The told yards, or those of the number it sounds like where the club cannot have gone so far."""
    cue = cues[at]
    told, short = yards(cue, units), twin(float(cue.value))
    if step.draft.shape == "putt":
        if short is None or told <= _HARDLY_A_PUTT_YD or step.lie != "green":
            return told
        return round(told * short / float(cue.value), 3)
    most = reach(step.draft.club or ("PW" if wedged(cues[step.draft.first : step.draft.last]) else ""))
    if most is None or step.draft.result == "fairway":
        return told
    meant = short if told > usual(most) else None
    if meant is None and told > _NEVER * most:
        meant = without_hundreds(float(cue.value), most)
    if meant is None:
        return told
    likely = round(told * meant / float(cue.value), 3)
    return likely if likely <= most and step.draft.shape != "layup" else told


def out_of_reach(clubs: Sequence[str], hole: float | None, left: float | None) -> bool:
    """ "302 yards. 5 iron, fairway. Pitching wedge, and 6 yards": not all of the number was heard.

    `clubs` are those of the strokes so far and of this one, a full one; `hole` is what the first of them had.
    """
    if hole is None or left is None or left >= _SHORT_YD or (reach(clubs[-1]) or 0.0) < _FULL_YD:
        return False
    return hole - left > _AT_A_STRETCH * sum(reach(club) or _WOODS["D"] for club in clubs[:-1])


def far_too_near(club: str, yards: float) -> bool:
    """Whether nobody takes a full wood, hybrid or iron for so little."""
    most = reach(club)
    return most is not None and most > 150 and yards < most / 3

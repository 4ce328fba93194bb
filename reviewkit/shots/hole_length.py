"""Which of the told lengths is the hole's, and so the tee shot's."""

from __future__ import annotations

import re
from collections.abc import Sequence

from reviewkit.model.values import SMALL_UNITS
from reviewkit.shots.cue import LONGEST_CLUBS, Cue
from reviewkit.shots.drafts import PENALTIES
from reviewkit.shots.lengths import unit_of, yards
from reviewkit.shots.moments import Moment

_HOLES = {3: (70.0, 275.0), 4: (225.0, 530.0), 5: (420.0, 680.0), None: (70.0, 680.0)}
"""Lengths that a hole of such a par may have, in yards; common practice of the trade, no source."""
_FAR_TOO_SHORT = 0.6
_BY_A_SIGN = 0.1
_SIGN = re.compile(r"\b(?:sign|card|board|plaque)\b")
"""What is told by one puts right what was thought before: "I want to say it's 330. The sign says 332"."""
_OFF_THE_TEE = {"length": 2.0, "togo": 0.8, "": 0.6, "bare": 0.5, "plan": 0.3, "said": 0.15}
_FLOWN = 340
"""Yards that nobody drives; common sense."""
_LATER = 0.3
"""Of several lengths the first is likelier."""


def length_of_hole(cues: Sequence[Cue], tee: Moment, units: str, par: int | None) -> int | None:
    """The hole's length, wherever it is told; else the likeliest number told before the tee shot lands."""
    best: dict[int, float] = {}
    for rank, at in enumerate(at for at, cue in enumerate(cues) if cue.kind == "distance"):
        cue = cues[at]
        # "Off we go, 331", "301 metres back down to the clubhouse": nothing has flown, or is left, yet.
        mood = "" if cue.mention.mood in ("flown", "left") and at < tee.first else cue.mention.mood
        worth = _OFF_THE_TEE.get(mood)
        low, high = _HOLES[None]
        if worth is None or unit_of(cue, units) in SMALL_UNITS or not low <= yards(cue, units) <= high:
            continue
        low, high = _HOLES.get(par, _HOLES[None])
        likely = low <= yards(cue, units) <= high
        late = par == 3 and not best and _told_of_a_one_shotter(cues, at)
        if at >= tee.ending and not (likely and (cue.mention.mood == "length" or late)):
            continue
        if yards(cue, units) < _FAR_TOO_SHORT * low:
            continue
        # Behind the driver it is how far that went: "driver, 268"; but "driver, 388" is the hole's.
        flown = tee.first <= tee.swung < at and cues[tee.swung].value in LONGEST_CLUBS
        flown = flown and yards(cue, units) < _FLOWN
        first = next(iter(best), at)
        by_a_sign = _SIGN.search(cue.mention.text) and _near(yards(cue, units), yards(cues[first], units))
        best[at] = (
            worth
            - (-_BY_A_SIGN if by_a_sign else _LATER * rank)
            - (0.0 if likely else 0.7)
            - (0.6 if flown and worth < 1 else 0.0)
        )
    likeliest = max(best, key=lambda at: (best[at], cues[at].mention.mood == "togo"), default=None)
    return likeliest if likeliest is not None and best[likeliest] > 0 else None


def _told_of_a_one_shotter(cues: Sequence[Cue], at: int) -> bool:
    """ "It's on the green, and it's only 138", of a one-shotter: nothing else there is so far."""
    trouble = any(cue.kind in ("reload", "drop") or cue.value in PENALTIES for cue in cues[:at])
    after = next((cue for cue in cues[at + 1 :] if cue.kind not in ("miss", "distance", "contact")), None)
    swung = after is not None and after.kind in ("club", "strike") and not after.after
    return cues[at].mention.mood in ("togo", "", "length") and not trouble and not swung


def _near(now: float, before: float) -> bool:
    """Whether the one may put the other right: "84 on the plaque" is of the drop zone of a hole of 142."""
    return 0.7 < now / before < 1.4

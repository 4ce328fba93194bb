"""What sort of stroke it was, from the ball's lie, the length left, the club and the words used.

The borders (pitch and chip inside about 50 yards, a putt from the fringe is a putt) are the contract's.
"""

from __future__ import annotations

from reviewkit.model.values import IRONS, WEDGES
from reviewkit.shots.drafts import PENALTIES
from reviewkit.shots.reach import reach
from reviewkit.shots.steps import Step

PITCH_YD = 50.0
CHIP_YD = 24.0
_GREENSIDE_YD = 55.0
_BEYOND_REACH_YD = 225.0
_AT_A_STRETCH = 1.12
"""Times what a club goes at most, from where a golfer may yet try for the green."""
_LONG_CLUBS = {"D", "3W", "5W", "7W", "2H", "3H", "4H", "5H", "6H", "1I", "2I", "3I", "4I", "5I", "6I", "7I"}


def kind(step: Step, yards: float | None, near: bool, par: int | None) -> str:
    """`near` says that the stroke before was meant for the green and came up close to it."""
    shape, lie, result = step.draft.shape, step.lie, step.draft.result
    if shape == "putt":
        return "putt"
    if lie == "tee":
        return "tee"
    if lie == "sand":
        # Out of a fairway's sand to the fairway, unless a length was told for it, is no more than out; by the
        # green nobody ends there.
        got_out = yards is None or shape == "punch" or _laid_up(step, yards, par)
        if result == "fairway" and not near and got_out:
            measured = yards is not None and shape != "punch" and step.draft.club not in WEDGES
            return "layup" if shape == "layup" or measured else "recovery"
        fairway = (yards or 0.0) > _GREENSIDE_YD or (not near and step.draft.club in (*_LONG_CLUBS, *IRONS))
        return "approach" if fairway else "bunker"
    if shape == "bunker" and near and lie == "unknown":
        return "bunker"
    if yards is not None and yards <= PITCH_YD:
        return _short(shape, yards)
    played_on = lie == "fairway" or (near and step.draft.club not in _LONG_CLUBS)
    low = shape == "punch" and not (played_on and result in ("green", "fringe"))
    if low or (lie == "trees" and result != "green"):
        return "recovery"
    if yards is None and near and step.draft.club not in _LONG_CLUBS - {"7I"} and not _full(step):
        return "pitch" if shape == "pitch" else "chip"
    swung = step.draft.club in _LONG_CLUBS and not near and result in ("fairway", "rough", "trees")
    if yards is None and shape in ("chip", "pitch") and not swung:
        return shape
    return "layup" if _laid_up(step, yards, par) else "approach"


def from_untold_sand(step: Step, after: Step | None, yards: float | None, near: bool) -> bool:
    """ "8 iron. Hit that ever so well. Sand wedge, and it's out": by the green, and nobody said where it lay.

    So too where the next stroke is out of sand, and this one ended nowhere.
    """
    made, before = step.draft, step.before
    if not (near and step.lie == "unknown" and made.club == "SW" and yards is None and step.told):
        return False
    if made.shape in ("chip", "pitch") or before is None:
        return False
    told = before.draft.result or before.draft.miss or before.draft.close
    stayed = not made.result and after is not None and after.draft.shape == "bunker"
    return stayed or not told


def _short(shape: str, yards: float) -> str:
    if shape in ("chip", "pitch"):
        return shape
    return "chip" if yards <= CHIP_YD else "pitch"


def _full(step: Step) -> bool:
    """ "Hit a 7 iron down to the corner, fairway": no word of a chip, and it ended on the fairway."""
    iron = step.draft.club in ("7I", "8I", "9I")
    return iron and step.draft.result == "fairway" and step.draft.shape not in ("chip", "pitch")


def _laid_up(step: Step, yards: float | None, par: int | None) -> bool:
    """A stroke not meant for the green: told so, or one that could not have reached it."""
    result = step.draft.result
    if step.draft.contact == "topped" and par != 5 and step.draft.shape != "layup":
        return False
    if step.draft.shape == "layup" and result in ("fairway", "rough", "", "sand"):
        return True
    most = reach(step.draft.club)
    if yards is not None and most is not None:
        if step.draft.miss == "short" and yards <= _AT_A_STRETCH * most:
            # "Never got up to the green": it was meant to.
            return False
        stretch = _AT_A_STRETCH if result == "sand" else 1.0
        if yards > stretch * most and result in ("fairway", "rough", "sand"):
            return True
    if result == "fairway":
        return yards is None or yards >= _BEYOND_REACH_YD or (par == 5 and yards >= 190)
    # "Out of bounds. Three off the tee, fairway. 5 iron": the next from a long hole's tee shot, whichever.
    from_drive = step.before is not None and step.before.lie == "tee"
    return (
        yards is None
        and par == 5
        and from_drive
        and result in ("rough", "sand", "trees", "", *PENALTIES)
        and step.draft.miss != "short"
    )

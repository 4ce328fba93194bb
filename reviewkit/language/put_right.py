"""Claims about the score that the talk takes back or puts right: "nine over. No, hang on, it's eight"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from reviewkit.model import Mention

PUT_RIGHT_WITHIN = 15
"""Words from a standing to a lone number that puts it right ("5 over, no, 4")."""
MENDED_WITHIN = 25
DENIED_WITHIN = 150
"""Words from a standing to one that denies it, as on the next hole: "it wasn't ten over, it's eleven"."""
DENIED = "not"
"""Mood of a claim that is denied."""
STANDINGS = frozenset({"running", "total"})
TAKEN_BACK = 0.3
"""What is left of a claim's weight once the talk takes it back."""
RIVAL, ALONE = "rival", "alone"
"""Units of a number that another has counted, and of one that nothing is said beside."""
SLIPS = range(1, 3)
"""How far such a number is from the one that it puts right."""
STROKES_WITHIN, ALONE_WITHIN = 6, 5
"""Words from a hole's score to the number that puts it right, "six. No, seven", and to one by itself."""
_WITHIN = dict.fromkeys(STANDINGS, PUT_RIGHT_WITHIN) | {"strokes": STROKES_WITHIN}


def put_right(found: list[Mention], mends: Sequence[Mention], ends: Sequence[int]) -> list[Mention]:
    """Claims that the talk takes back lose their weight; a number that puts one right becomes a claim.

    `ends` are the last words of holes done with.
    """
    kept: list[Mention] = []
    for claim in found:
        rival = claim.unit == RIVAL
        if claim.kind == "mended":
            if any(c.kind in _WITHIN and c.overlaps(claim) for c in found):
                # "It's 5 over" is a standing by itself.
                continue
            latest = _latest(kept, claim)
            if latest is None or not _puts_right(claim, latest, mends):
                continue
            denied = _denied(kept, latest, claim, ends)
            if denied is not None:
                kept[denied] = replace(kept[denied], weight=kept[denied].weight * TAKEN_BACK)
                continue
            mood = "" if latest.mood == DENIED else latest.mood
            value = _on_its_side(claim, latest)
            claim = replace(claim, kind=latest.kind, value=value, mood=mood, unit=latest.unit)
            if latest.last >= claim.first:
                continue
        for at, earlier in enumerate(kept):
            if _takes_back(claim, earlier, mends, rival):
                kept[at] = replace(earlier, weight=earlier.weight * TAKEN_BACK)
        kept.append(claim)
    return kept


def _puts_right(claim: Mention, latest: Mention, mends: Sequence[Mention]) -> bool:
    """Whether a number puts a claim right: another's count does, and one behind words that take it back."""
    slip = abs(abs(int(latest.value or 0)) - int(claim.value or 0)) in SLIPS
    if claim.unit == RIVAL:
        return slip
    if claim.unit == ALONE and claim.first - latest.last > ALONE_WITHIN:
        return False
    taken_back = latest.mood == DENIED or _between(mends, latest, claim)
    return taken_back and (slip or (claim.unit != ALONE and latest.kind in STANDINGS))


def _takes_back(claim: Mention, earlier: Mention, mends: Sequence[Mention], rival: bool) -> bool:
    """Whether a claim says that the earlier one was wrong: another number, or the same one denied."""
    apart = claim.first - earlier.last
    if earlier.kind != claim.kind or earlier.mood:
        return False
    if claim.mood:
        return claim.mood == DENIED and earlier.value == claim.value and apart <= DENIED_WITHIN
    mended = rival or _between(mends, earlier, claim)
    return earlier.value != claim.value and apart <= MENDED_WITHIN and mended


def _denied(kept: Sequence[Mention], latest: Mention, claim: Mention, ends: Sequence[int]) -> int | None:
    """ "That's me five over. I've counted that drop twice. It's four over, no five": index of the five told
    before, which is what the four puts right, no hole having ended since."""
    before = [
        at for at, c in enumerate(kept) if c.kind == latest.kind and c.last < latest.first and not c.mood
    ]
    if not before or not isinstance(latest.value, int | float):
        return None
    told = kept[before[-1]]
    ended = latest.first - told.last > MENDED_WITHIN and any(told.last < end < latest.first for end in ends)
    return before[-1] if told.value == _on_its_side(claim, latest) and not ended else None


def _on_its_side(claim: Mention, latest: Mention) -> int:
    """The number that puts a standing right, under par where that was."""
    under = isinstance(latest.value, int | float) and latest.value < 0
    return -abs(int(claim.value or 0)) if under else abs(int(claim.value or 0))


def _latest(kept: Sequence[Mention], claim: Mention) -> Mention | None:
    near = [c for c in kept if claim.first - c.last <= _WITHIN.get(c.kind, -1)]
    return near[-1] if near and not any(c.first >= claim.first for c in near) else None


def _between(mends: Sequence[Mention], earlier: Mention, later: Mention) -> bool:
    return any(earlier.last < mend.first <= later.last for mend in mends)


def of_putts(mend: Mention, putted: int, found: Sequence[Mention]) -> bool:
    """ "Five. Seven one-putts, no, six": the number of putts is put right, not the score before it."""
    since = any(putted < claim.first < mend.first for claim in found)
    return mend.first - putted in range(PUT_RIGHT_WITHIN) and not since

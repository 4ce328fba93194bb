"""What is said of the standing (running score, totals, nines, the course's par) as factors of the lattice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

import numpy as np

from reviewkit.model import HoleTale, Mention
from reviewkit.scoring.lattice import Grid, Standing
from reviewkit.scoring.moment import moment
from reviewkit.scoring.slips import SLIP, SPREAD
from reviewkit.scoring.table import Array

RIGHT = {"running": 0.94, "total": 0.9, "nine": 0.9, "par_total": 0.95}
"""How often a claim of a kind, as extracted, is about this player's round and true."""

STOOD = 0.97
"""Share of a standing that is told as what it was, that means the one before the hole."""

NEAR_WORDS = 14
"""A "through two" or "with two to play" within so many words belongs to the claim."""

AT_ONCE, OUTDATED = 20, 0.6
"""A standing followed by another within so many words, no stroke between, and what is left of its trust."""

FAR = 0.5
"""What is left of a claim's trust when the hole it names is neither this one nor the one before."""

NINE_PAR = {-2: 0.05, -1: 0.2, 0: 0.55, 1: 0.12, 2: 0.03}
"""Par of a nine, less 36, over courses as they are built; a full course is two of them."""


@dataclass(frozen=True, slots=True)
class Slot:
    """A place in the order of play; `tale` is None where a hole was skipped in the talk."""

    hole: int
    tale: HoleTale | None


@dataclass(frozen=True, slots=True)
class Claim:
    """A claim on the standing: where it is read into the lattice and how it weighs."""

    mention: Mention
    slot: int
    """Index of the slot in whose passage it stands."""
    before: float
    """Share of the reading that means the standing before the slot's hole; the rest means after it."""
    right: float


def claims(slots: Sequence[Slot], holes_planned: int) -> list[Claim]:
    """Every claim on the standing with the hole it is about."""
    found: list[Claim] = []
    for index, slot in enumerate(slots):
        if slot.tale is None:
            continue
        cues = [m for m in slot.tale.mentions if m.kind in ("played", "to_play") and not m.mood]
        for mention in slot.tale.mentions:
            if (
                mention.kind in ("running", "total")
                and not mention.mood
                and isinstance(mention.value, int | float)
            ):
                found.append(_placed(slots, index, slot.tale, mention, cues, holes_planned))
            elif mention.kind == "stood_at" and not mention.mood:
                # "From three over to six over": the first is how the hole began.
                found.append(Claim(mention, index, STOOD, RIGHT["running"] * min(mention.weight, 1.0)))
            elif mention.kind == "nine" and not mention.mood and isinstance(mention.value, int | float):
                found.extend(_of_nine(slots, index, mention))
    return [
        replace(claim, right=claim.right * OUTDATED) if after and _put_right(slots, claim, after) else claim
        for claim, after in zip_longest(found, found[1:])
    ]


def _put_right(slots: Sequence[Slot], claim: Claim, after: Claim) -> bool:
    """ "So I'm still six over. What? Oh, I'm five over": of two told at the end the later counts."""
    one, two = claim.mention, after.mention
    tale = slots[claim.slot].tale
    if tale is None or claim.slot != after.slot or {one.kind, two.kind} != {"running"}:
        return False
    played = any(one.start_s < shot.start_s < two.start_s for shot in tale.shots)
    over = max(claim.before, after.before) < 0.5
    return over and not played and one.value != two.value and two.first - one.last <= AT_ONCE


def _placed(
    slots: Sequence[Slot], index: int, tale: HoleTale, mention: Mention, cues: Sequence[Mention], planned: int
) -> Claim:
    right = RIGHT[mention.kind] * min(mention.weight, 1.0)
    before = 0.95 if _put_behind(tale, mention) else _share_before(tale, mention)
    near = [cue for cue in cues if max(cue.first - mention.last, mention.first - cue.last) <= NEAR_WORDS]
    if not near:
        return Claim(mention, index, before, right)
    cue = min(near, key=lambda cue: abs(cue.first - mention.first))
    told = {_index_of(slots, cue, planned), _by_hole(slots, cue)} - {None}
    if index in told and index - 1 not in told:
        return Claim(mention, index, min(before, 0.05), right)
    if index - 1 in told and index not in told:
        return Claim(mention, index, max(before, 0.95), right)
    far = next((k for k in told if k is not None and 0 <= k < index - 1), None)
    if far is None:
        return Claim(mention, index, before, right * (1.0 if told & {index, index - 1} else 0.9))
    return Claim(mention, far, 0.0, right * FAR)


def _index_of(slots: Sequence[Slot], cue: Mention, planned: int) -> int | None:
    """Slot after which a cue's count of holes stands."""
    if not isinstance(cue.value, int | float):
        return None
    played = int(cue.value) if cue.kind == "played" else planned - int(cue.value)
    return played - 1 if 1 <= played <= len(slots) else None


def _by_hole(slots: Sequence[Slot], cue: Mention) -> int | None:
    if cue.kind != "played":
        return None
    return next((k for k, slot in enumerate(slots) if slot.hole == cue.value), None)


def _put_behind(tale: HoleTale, mention: Mention) -> bool:
    """ "I was six over walking off there. So now I'm five over": the first is how the hole began."""
    stood = any(m.kind == "stood" and m.overlaps(mention) for m in tale.mentions)
    return stood and any(
        m.kind == mention.kind and m.first > mention.last and not m.mood and m.value != mention.value
        for m in tale.mentions
    )


def _share_before(tale: HoleTale, mention: Mention) -> float:
    when = moment(tale, mention)
    if when.walking:
        return 0.9
    if when.holed:
        return 0.04
    return 0.75 if when.begun < 0.5 else 0.4


def _of_nine(slots: Sequence[Slot], index: int, mention: Mention) -> list[Claim]:
    """A nine's figure where that nine begins the round; one that ends it is read in `home`."""
    ninth = 8 if len(slots) >= 9 else None
    right = RIGHT["nine"] * min(mention.weight, 1.0)
    if ninth is None or index < ninth - 1:
        return []
    if mention.unit in ("front", "") or len(slots) == 9:
        return [Claim(mention, ninth, 0.0, right)]
    return []


def likelihood(value: float, truth: Array, right: float) -> Array:
    """Likelihood of the claim `value` where the truth is as in `truth`; a slip is most often by one."""
    off = np.rint(value - truth)
    wrong = np.full(truth.shape, SPREAD)
    for by, share in SLIP.items():
        wrong[off == by] = share
    out: Array = np.where(off == 0, right, (1.0 - right) * wrong)
    return out


def factor(claim: Claim, grid: Grid) -> Standing:
    """A claim as likelihoods of the states before and after its hole."""
    value = float(claim.mention.value or 0)
    strokes = claim.mention.kind == "total" or (claim.mention.kind == "nine" and value > 20)
    level = np.broadcast_to(grid.running, grid.shape)

    def of(holes: int) -> Array:
        truth = level + grid.par_sum + 4 * holes if strokes else level
        return likelihood(value, truth, claim.right)

    return Standing(claim.before * of(claim.slot), (1.0 - claim.before) * of(claim.slot + 1))


def of_total(value: float, slot: int, right: float, grid: Grid) -> Standing:
    """Strokes taken once the hole of `slot` is done."""
    truth = np.broadcast_to(grid.running, grid.shape) + grid.par_sum + 4 * (slot + 1)
    return Standing(np.zeros(grid.shape), likelihood(value, truth, right))


def of_course(slots: Sequence[Slot], mentions: Sequence[Mention], grid: Grid) -> list[tuple[int, Standing]]:
    """(slot, factor) for the par of each whole nine and eighteen, as said or as courses are built."""
    said = [
        int(m.value)
        for m in mentions
        if m.kind == "par_total" and not m.mood and isinstance(m.value, int | float)
    ]
    found: list[tuple[int, Standing]] = []
    for count, low, high in ((9, 27, 40), (18, 60, 76)):
        if len(slots) < count or not _whole(slots, count):
            continue
        told = [value for value in said if low <= value <= high]
        if told:
            shares = likelihood(told[-1] - 4 * count, grid.par_sum, RIGHT["par_total"])
        else:
            spread = {2 * k: v for k, v in NINE_PAR.items()} if count == 18 else NINE_PAR
            shares = np.array([[spread.get(int(k), 0.03) for k in grid.par_sum[0]]])
        after = np.broadcast_to(shares, grid.shape).astype(np.float64)
        found.append((count - 1, Standing(np.zeros(grid.shape), after)))
    return found


def _whole(slots: Sequence[Slot], count: int) -> bool:
    """Whether the first `count` slots are one nine of the course, or all of it."""
    holes = {slot.hole for slot in slots[:count]}
    return holes in ({*range(1, 10)}, {*range(10, 19)}, {*range(1, 19)})

"""Clubs: how often each was played, how far, where it missed, and the gaps between them."""

from __future__ import annotations

import itertools
from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, replace
from statistics import median

from reviewkit.model import Shot
from reviewkit.model.values import CLUBS
from reviewkit.stats.play import Hole, Play


@dataclass(frozen=True, slots=True)
class ClubLine:
    """One club over one or more rounds. None and empty text: nothing told allows it.

    `yards` is the median of `told` told distances: to the hole for strokes at the green, else the ground the
    stroke gained (distance before minus distance after). `reached` of `aimed` strokes with a known result hit
    what they were for, the green or the fairway. `gap_yd` is how much farther it goes than the next shorter
    club of the list.
    """

    club: str
    used: int
    told: int
    yards: float | None
    gap_yd: float | None
    miss: str
    missed: int
    reached: int
    aimed: int


def clubs(plays: Iterable[Play]) -> tuple[ClubLine, ...]:
    """A line a club that was played, longest first as the log orders them."""
    strokes: dict[str, list[tuple[Hole, Shot]]] = defaultdict(list)
    for play in plays:
        for hole, shot in play.strokes:
            if shot.club:
                strokes[shot.club].append((hole, shot))
    return _with_gaps([_line(club, strokes[club]) for club in CLUBS if club in strokes])


def at_green(hole: Hole, shot: Shot) -> bool:
    """A full stroke meant for the green: an approach, or the tee shot of a par 3."""
    return shot.kind == "approach" or (shot.kind == "tee" and hole.par == 3)


def _line(club: str, strokes: list[tuple[Hole, Shot]]) -> ClubLine:
    yards = [yards for hole, shot in strokes if (yards := _played(hole, shot)) is not None]
    misses = Counter(shot.miss for _, shot in strokes if shot.miss)
    most = misses.most_common(1)[0] if misses else ("", 0)
    aims = [_reached(hole, shot) for hole, shot in strokes]
    known = [aim for aim in aims if aim is not None]
    return ClubLine(
        club=club,
        used=len(strokes),
        told=len(yards),
        yards=median(yards) if yards else None,
        gap_yd=None,
        miss=most[0],
        missed=most[1],
        reached=sum(known),
        aimed=len(known),
    )


def _played(hole: Hole, shot: Shot) -> float | None:
    """Yards the club was played for: to the hole at a green, else the ground gained."""
    if shot.distance_yd is None or shot.penalty_strokes:
        return None
    if at_green(hole, shot):
        return shot.distance_yd
    after = hole.following(shot)
    if shot.kind not in ("tee", "layup") or after is None or after.distance_yd is None:
        return None
    gained = shot.distance_yd - after.distance_yd
    return gained if gained > 0 else None


def _reached(hole: Hole, shot: Shot) -> bool | None:
    if shot.result == "unknown" or shot.kind not in ("tee", "layup", "approach"):
        return None
    wanted = ("green", "holed") if at_green(hole, shot) else ("fairway", "green", "holed")
    return shot.result in wanted


def _with_gaps(lines: list[ClubLine]) -> tuple[ClubLine, ...]:
    """Gaps to the next shorter distance among the clubs with a told one."""
    known = sorted((line.yards, line.club) for line in lines if line.yards is not None)
    shorter = {club: yards - below for (below, _), (yards, club) in itertools.pairwise(known)}
    return tuple(replace(line, gap_yd=shorter.get(line.club)) for line in lines)

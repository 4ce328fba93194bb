"""The miss picture: for each club, on which side of the target its strokes ended."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from reviewkit.model import Shot
from reviewkit.model.values import CLUBS, MISSES
from reviewkit.report import svg
from reviewkit.report.words import club_name

SIDES = {"left": (-1, 0), "right": (1, 0), "long": (0, -1), "short": (0, 1)}


@dataclass(frozen=True, slots=True)
class ClubMisses:
    """`counts` by side; `strokes` are all with this club, those without a told miss included."""

    name: str
    strokes: int
    counts: dict[str, int]

    @property
    def missed(self) -> int:
        return sum(self.counts.values())


def by_club(shots: Iterable[Shot]) -> tuple[ClubMisses, ...]:
    """Clubs in the bag's order, the putter last; strokes without a told club are left out."""
    names = [(shot, "putter" if shot.kind == "putt" else shot.club) for shot in shots]
    order = (*CLUBS, "putter")
    used = Counter(name for _, name in names if name)
    sides = Counter((name, shot.miss) for shot, name in names if name and shot.miss)
    return tuple(
        ClubMisses(
            club_name(name) if name != "putter" else name,
            used[name],
            {side: sides[name, side] for side in MISSES},
        )
        for name in order
        if used[name]
    )


def picture(club: ClubMisses) -> Markup:
    """A target with a bubble on each side, its area the number of strokes missed there."""
    parts = [svg.circle("aim", 60, 60, 16), svg.circle("aim", 60, 60, 2.5)]
    for side, (right, down) in SIDES.items():
        count = club.counts[side]
        if count:
            x, y = 60 + right * 38.0, 60 + down * 38.0
            parts.append(svg.circle("bubble", x, y, min(7.0 * count**0.5 + 2, 20.0), f"{side}: {count}"))
            parts.append(svg.text("bubble-count", x, y + 4, str(count), "middle"))
    told = ", ".join(f"{count} {side}" for side, count in club.counts.items() if count) or "no miss told"
    return svg.drawing(120, 120, f"{club.name}: {told} of {club.strokes} strokes.", parts, "miss")

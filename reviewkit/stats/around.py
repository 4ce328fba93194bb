"""Around the green and out of trouble: scrambling, up and downs, sand saves."""

from __future__ import annotations

from collections.abc import Callable

from reviewkit.model import Shot
from reviewkit.stats.play import Hole, Play
from reviewkit.stats.registry import Reading, share, statistic

GROUP = "Around the green"
SHORT_KINDS = ("pitch", "chip", "bunker")


def off_green(shot: Shot) -> bool:
    """A stroke played from about the green but not on it: pitch, chip, greenside sand, putter from off it."""
    return shot.kind in SHORT_KINDS or (shot.kind == "putt" and shot.lie not in ("green", ""))


@statistic(
    "scrambling",
    "Scrambling",
    group=GROUP,
    unit="share",
    counts="holes",
    definition="Par or better on holes whose green was missed in regulation, of all such holes; "
    "a chip-in counts, a saved bogey does not.",
    source="progolfnow.com 2020; rantsports.com 2012",
)
def scrambling(play: Play) -> Reading:
    missed = [hole for hole in play.holes if hole.score.green_in_regulation is not True]
    return share(_saved_par(hole) for hole in missed)


def _saved_par(hole: Hole) -> bool | None:
    if hole.score.green_in_regulation is None or hole.to_par is None:
        return None
    return hole.to_par <= 0


@statistic(
    "up_and_downs",
    "Up and downs",
    group=GROUP,
    unit="share",
    counts="holes",
    definition="Holed out in two strokes or fewer from the first stroke about the green but off it, "
    "whatever the score.",
    source="foreputtgolf.com",
)
def up_and_downs(play: Play) -> Reading:
    return share(_within_two(play, off_green))


@statistic(
    "sand_saves",
    "Sand saves",
    group=GROUP,
    unit="share",
    counts="holes",
    definition="Holed out in two strokes or fewer from the first stroke out of a greenside bunker, "
    "whatever the score (some amateur usage demands par).",
    source="foreputtgolf.com",
)
def sand_saves(play: Play) -> Reading:
    return share(_within_two(play, lambda shot: shot.kind == "bunker"))


def _within_two(play: Play, fits: Callable[[Shot], bool]) -> list[bool | None]:
    """One answer a hole with such a stroke; a penalty stroke in between counts like any other."""
    answers: list[bool | None] = []
    for hole in play.holes:
        first = next((shot for shot in hole.shots if fits(shot)), None)
        if first is not None:
            strokes = hole.score.strokes
            answers.append(None if strokes is None else strokes - first.stroke + 1 <= 2)
    return answers

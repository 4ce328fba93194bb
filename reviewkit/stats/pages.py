"""Tables for people and programs: one round's other views, and a series."""

from __future__ import annotations

from collections.abc import Sequence

from reviewkit.stats.clubs import ClubLine
from reviewkit.stats.conditions import PlayedShot
from reviewkit.stats.gained import StrokesGained
from reviewkit.stats.odds import HoleOdds
from reviewkit.stats.series import NextRound, Practice, Recurring, Series, Trend
from reviewkit.stats.summary import RoundSummary
from reviewkit.stats.table import Table


def hole_table(gained: StrokesGained) -> Table:
    """Strokes gained a hole."""
    rows = tuple(
        (h.hole, h.score, _two(h.benchmark), _two(h.mean), _two(h.low), _two(h.high)) for h in gained.holes
    )
    note = "gained = benchmark from the tee - score; low to high: 80 %, wider where less is told."
    return Table("holes", ("hole", "score", "benchmark", "gained", "low", "high"), rows, note)


def stroke_table(gained: StrokesGained) -> Table:
    """Strokes gained a stroke."""
    rows = tuple(
        (
            s.hole,
            s.stroke,
            s.category,
            _two(s.mean),
            _two(s.low),
            _two(s.high),
            s.exact,
        )
        for s in gained.strokes
    )
    columns = ("hole", "stroke", "skill", "gained", "low", "high", "told")
    return Table("strokes", columns, rows, gained.rests_on)


def club_table(lines: Sequence[ClubLine]) -> Table:
    """The bag."""
    rows = tuple(
        (line.club, line.used, _one(line.yards), line.told, _one(line.gap_yd), _times(line.miss, line.missed),
         f"{line.reached} of {line.aimed}" if line.aimed else None)
        for line in lines
    )  # fmt: skip
    columns = ("club", "used", "yards", "told", "gap", "misses most", "on target")
    return Table("clubs", columns, rows)


def odds_table(rows: Sequence[HoleOdds]) -> Table:
    """The odds as the round went."""
    cells = tuple((row.hole or "start", _signed(row.to_par), round(row.probability, 4)) for row in rows)
    note = "exact for independent holes; learnt from the player's scores and a stated prior."
    return Table(
        "odds", ("after hole", "to par", "chance of the target"), cells, note if rows else "no target"
    )


def condition_table(shots: Sequence[PlayedShot]) -> Table:
    """Approaches in their conditions."""
    rows = tuple(
        (shot.hole, shot.stroke, shot.club, _one(shot.played.yards) if shot.played else None,
         _one(shot.played.low) if shot.played else None, _one(shot.played.high) if shot.played else None,
         ", ".join(shot.told), "yes" if shot.short_for_it else "")
        for shot in shots
    )  # fmt: skip
    columns = ("hole", "stroke", "club", "yards", "played from", "to", "told", "short for it")
    return Table("conditions", columns, rows, "" if rows else "no conditions known and none told")


def series_tables(found: Series, most: int | None = None) -> list[Table]:
    """Rounds, trends, what recurs (`most` lines of it), what to practise and the next round."""
    return [
        _rounds(found.rounds),
        _trends(found.trends),
        _recurring(found.recurring[:most]),
        _practice(found.practice),
        *([_next(found.next_round)] if found.next_round else []),
    ]


def _rounds(rounds: Sequence[RoundSummary]) -> Table:
    rows = tuple(
        (r.name, r.holes, r.score, _signed(r.to_par), _signed(r.target),
         None if r.reached is None else "yes" if r.reached else "no",
         _percent(r.value("fairways")), _percent(r.value("greens")), _two(r.value("putts_a_hole")),
         _percent(r.value("up_and_downs")))
        for r in rounds
    )  # fmt: skip
    columns = ("round", "holes", "score", "to par", "target", "made", "fw %", "gir %", "putts", "u&d %")
    return Table("rounds", columns, rows)


def _trends(trends: Sequence[Trend]) -> Table:
    rows = tuple(
        (t.name, t.rounds, _two(t.mean), _three(t.slope), _three(t.low), _three(t.high)) for t in trends
    )
    columns = ("statistic", "rounds", "mean", "change a round", "low", "high")
    return Table("trends", columns, rows, "80 % interval; one that holds 0 is no trend." if rows else "")


def _recurring(lines: Sequence[Recurring]) -> Table:
    rows = tuple(
        (line.club, line.fault, f"{line.rounds} of {line.of}", line.times, _two(line.cost)) for line in lines
    )
    return Table("recurring", ("club", "fault", "rounds", "times", "strokes lost"), rows)


def _practice(lines: Sequence[Practice]) -> Table:
    rows = tuple(
        (p.category, _two(p.lost), _two(p.low), _two(p.high), p.rounds, _two(p.latest)) for p in lines
    )
    columns = ("skill", "lost on 18", "low", "high", "rounds", "latest against own")
    note = "strokes lost to the benchmark; latest: the newest round against the mean of those before it."
    return Table("practice", columns, rows, note if rows else "")


def _next(coming: NextRound) -> Table:
    rows = tuple(
        (line.category, _two(line.strokes), _percent(line.share), round(line.chance, 4))
        for line in coming.doublings
    )
    columns = ("skill", "strokes to gain", "% of its loss", "chance then")
    note = (
        f"Chance of {_signed(coming.target)} over {coming.holes} holes next time: {coming.chance:.1%}. "
        "The rows say what would double it; an empty one cannot."
    )
    return Table("next round", columns, rows, note)


def _one(value: float | None) -> float | None:
    return None if value is None else round(value, 1)


def _two(value: float | None) -> float | None:
    return None if value is None else round(value, 2) + 0.0


def _three(value: float) -> float:
    return round(value, 3)


def _percent(share: float | None) -> int | None:
    return None if share is None else round(100 * share)


def _signed(value: int | None) -> str | None:
    return None if value is None else f"{value:+d}" if value else "E"


def _times(miss: str, times: int) -> str | None:
    return f"{miss} ({times})" if miss else None

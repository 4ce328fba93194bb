"""The round's drawings: run against target, odds, strokes gained, the round in time, one hole's flight."""

from __future__ import annotations

import math
from collections.abc import Sequence

from markupsafe import Markup

from reviewkit.model import Shot
from reviewkit.report import svg
from reviewkit.report.view import HoleView, RoundView
from reviewkit.report.words import score_mark, score_name, stroke_name, to_par
from reviewkit.timecode import clock

WIDTH = 720.0
LEFT, RIGHT = 44.0, 16.0


def running(view: RoundView) -> Markup:
    """Score to par after each hole, with the target as a line; a hole without a score breaks the run."""
    values = [hole.score.running_to_par for hole in view.holes]
    target = view.plan.target
    every = [0, *(value for value in values if value is not None), *([] if target is None else [target])]
    low, high = min(every) - 1, max(every) + 1
    height, top, foot = 220.0, 14.0, 30.0
    across = (WIDTH - LEFT - RIGHT) / max(len(values), 1)

    def y(value: float) -> float:
        return top + (high - value) / (high - low) * (height - top - foot)

    parts = [_gridline(value, y(value), target) for value in range(low, high + 1) if _shown(value, low, high)]
    if target is not None:
        parts.append(svg.line("target", LEFT, y(target), WIDTH - RIGHT, y(target)))
        parts.append(svg.text("target-name", LEFT + 6, y(target) - 5, f"target {to_par(target)}"))
    run = [(LEFT, y(0.0))]
    dots: list[Markup] = []
    for place, (hole, value) in enumerate(zip(view.holes, values, strict=True)):
        x = LEFT + (place + 0.5) * across
        parts.append(svg.text("tick", x, height - 10, str(hole.score.hole), "middle"))
        if value is None or len(dots) < place:
            continue
        run.append((x, y(value)))
        name = f"Hole {hole.score.hole}: {score_name(hole.score)}, {to_par(value)} in all"
        dots.append(svg.circle(f"dot {score_mark(hole.score)}", x, y(value), 4.5, name))
    parts += [svg.path("run", svg.curve(run)), *dots]
    said = ", ".join(
        f"{hole.score.hole}: {to_par(value)}" for hole, value in zip(view.holes, values, strict=True)
    )
    return svg.drawing(WIDTH, height, f"Score to par after each hole. {said}.", parts)


def _shown(value: int, low: int, high: int) -> bool:
    return value % max(1, math.ceil((high - low) / 8)) == 0


def _gridline(value: int, y: float, target: int | None) -> Markup:
    kind = "level" if value == 0 else "grid"
    words = svg.text("tick", LEFT - 8, y + 4, to_par(value), "end")
    return svg.element("g", {}, [svg.line(kind, LEFT, y, WIDTH - RIGHT, y), words])


def odds(view: RoundView) -> Markup:
    """Chance of reaching the target before the round and after each hole, in per cent."""
    points = [(0, view.odds_before)] + [(place, hole.odds) for place, hole in enumerate(view.holes, start=1)]
    known = [(place, value) for place, value in points if value is not None]
    height, top, foot = 150.0, 12.0, 30.0
    across = (WIDTH - LEFT - RIGHT) / max(len(view.holes), 1)

    def y(share: float) -> float:
        return top + (1 - share) * (height - top - foot)

    parts = []
    for share in (0.0, 0.5, 1.0):
        parts.append(svg.line("grid", LEFT, y(share), WIDTH - RIGHT, y(share)))
        parts.append(svg.text("tick", LEFT - 8, y(share) + 4, f"{share:.0%}", "end"))
    spots = [(LEFT + max(place - 0.5, 0) * across, y(value)) for place, value in known]
    base = f"V{y(0.0):.2f}H{spots[0][0]:.2f}Z" if spots else ""
    parts += [svg.path("odds-area", svg.curve(spots) + base), svg.path("odds", svg.curve(spots))]
    for place, hole in enumerate(view.holes, start=1):
        parts.append(
            svg.text("tick", LEFT + (place - 0.5) * across, height - 10, str(hole.score.hole), "middle")
        )
    said = ", ".join(f"after {place} holes {value:.0%}" for place, value in known[1:])
    start = f"{view.odds_before:.0%}" if view.odds_before is not None else "not known"
    return svg.drawing(WIDTH, height, f"Odds of the target: before the round {start}; {said}.", parts)


def gained(view: RoundView) -> Markup:
    """Strokes gained by part of the game as points with their 80 % intervals."""
    skills = view.gained.categories
    reach = max((max(abs(skill.low), abs(skill.high)) for skill in skills), default=1.0) or 1.0
    row, top = 34.0, 26.0
    middle, half_width = 400.0, 290.0
    height = top + row * len(skills) + 8

    def x(value: float) -> float:
        return middle + value / reach * half_width

    parts = [
        svg.line("level", middle, top - 6, middle, height - 4),
        svg.text("tick", middle - 10, 14, "cost strokes", "end"),
        svg.text("tick", middle + 10, 14, "gained strokes"),
    ]
    for place, skill in enumerate(skills):
        y = top + row * (place + 0.5)
        tone = "under" if skill.mean >= 0 else "over"
        told = f"{skill.category}: {skill.mean:+.2f}, between {skill.low:+.2f} and {skill.high:+.2f}"
        parts.append(svg.text("name", 0, y + 4, skill.category))
        parts.append(svg.line(f"interval {tone}", x(skill.low), y, x(skill.high), y))
        parts.append(svg.circle(f"mean {tone}", x(skill.mean), y, 5.5, told))
    said = "; ".join(f"{skill.category} {skill.mean:+.2f}" for skill in skills)
    return svg.drawing(WIDTH, height, f"Strokes gained with 80 % intervals: {said}.", parts)


def flight(hole: HoleView) -> Markup:
    """One hole from tee to cup: each stroke an arc, dashed where it is inferred.

    Distance left runs as a square root, so that putts stay visible; untold spots lie between their
    neighbours and are drawn hollow.
    """
    shots = [stroke.shot for stroke in hole.strokes]
    spots = _spots(shots)
    width, floor = 340.0, 62.0
    parts = [
        svg.line("ground", 8, floor, width - 8, floor),
        svg.line("pin", width - 14, floor, width - 14, 18),
    ]
    parts.append(svg.path("flag", f"M{width - 14:.0f},18l-14,5l14,5z"))
    for place, shot in enumerate(shots):
        start, end = (20 + share * (width - 34) for share in (spots[place], spots[place + 1]))
        rise = 0.0 if shot.kind == "putt" else min(48.0, 10 + abs(end - start) * 0.32)
        kinds = "arc" + ("" if shot.told else " inferred") + (" penal" if shot.penalty_strokes else "")
        curve = (
            f"M{start:.1f},{floor:.0f}Q{(start + end) / 2:.1f},{floor - 2 * rise:.1f} {end:.1f},{floor:.0f}"
        )
        parts.append(svg.path(kinds, curve, stroke_name(shot)))
        spot = "spot" if shot.distance_yd is not None or place == 0 else "spot guess"
        parts.append(svg.circle(spot, start, floor, 3.6, stroke_name(shot)))
        parts.append(svg.text("tick", start, floor + 15, str(shot.stroke), "middle"))
    said = "; ".join(f"{shot.stroke} {stroke_name(shot)}" for shot in shots)
    return svg.drawing(width, 84, f"Hole {hole.score.hole} stroke by stroke: {said}.", parts, "flight")


def _spots(shots: Sequence[Shot]) -> list[float]:
    """Where each stroke starts, and the last one ends, as a share of the way from tee to cup."""
    longest = max((shot.distance_yd or 0.0 for shot in shots), default=0.0) or 400.0
    told = [None if shot.distance_yd is None else 1 - math.sqrt(shot.distance_yd / longest) for shot in shots]
    spots: list[float | None] = [*told, 1.0]
    spots[0] = 0.0
    for place, value in enumerate(spots):
        if value is None:
            later = next(other for other in range(place + 1, len(spots)) if spots[other] is not None)
            before, after = spots[place - 1] or 0.0, spots[later] or 0.0
            spots[place] = before + (after - before) / (later - place + 1)
    return [min(max(value or 0.0, 0.0), 1.0) for value in spots]


def timeline(view: RoundView) -> Markup:
    """Holes as bands along the round's time, strokes as marks; every mark knows its second."""
    length = max(view.length_s, 1.0)
    height, band = 92.0, 40.0

    def x(seconds: float) -> float:
        return seconds / length * WIDTH

    parts = []
    for place, hole in enumerate(view.holes):
        score = hole.score
        start, wide = x(score.start_s), x(score.end_s) - x(score.start_s)
        title = f"Hole {score.hole}, {score_name(score) or 'score not known'}, from {clock(score.start_s)}"
        parts.append(_timed(svg.rect(f"band b{place % 2}", start, 20, wide, band, title), score.start_s))
        parts.append(svg.text("band-name", start + wide / 2, 14, str(score.hole), "middle"))
        tone = f"score-strip {score_mark(score)}"
        parts.append(svg.rect(tone, start + 1, 20 + band, wide - 2, 5))
        parts += [_mark(stroke.shot, x(stroke.shot.start_s)) for stroke in hole.strokes]
    step = next((each for each in (60, 120, 300, 600, 900, 1800) if length / each <= 9), 3600)
    for seconds in range(0, int(length) + 1, step):
        anchor = "start" if seconds == 0 else "middle"
        parts.append(svg.text("tick", x(seconds), height - 8, clock(seconds), anchor))
    said = ", ".join(f"hole {hole.score.hole} from {clock(hole.score.start_s)}" for hole in view.holes)
    return svg.drawing(WIDTH, height, f"The round in time: {said}.", parts, "chart timeline")


def _mark(shot: Shot, x: float) -> Markup:
    kinds = "stroke-mark" + ("" if shot.told else " inferred") + (" penal" if shot.penalty_strokes else "")
    title = f"Hole {shot.hole}, stroke {shot.stroke}: {stroke_name(shot)}, at {clock(shot.start_s)}"
    tall = 14.0 if shot.kind == "putt" else 26.0
    return _timed(svg.rect(kinds, x - 1.5, 58 - tall, 3, tall, title), shot.start_s)


def _timed(shape: Markup, seconds: float) -> Markup:
    return svg.element("g", {"data_at": float(seconds)}, [shape])

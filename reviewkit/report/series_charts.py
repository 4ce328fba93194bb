"""The drawings of a series: scores against their targets, and strokes gained round by round."""

from __future__ import annotations

from markupsafe import Markup

from reviewkit.report import svg
from reviewkit.report.charts import LEFT, RIGHT, WIDTH
from reviewkit.report.series import SeriesView, reached
from reviewkit.report.words import said, signed, to_par


def scores(series: SeriesView) -> Markup:
    """Each round's score to par as a stem from par, with its target as a bar across."""
    known = [view.to_par for view in series.rounds if view.to_par is not None]
    targets = [view.plan.target for view in series.rounds if view.plan.target is not None]
    low, high = min([0, *known, *targets]) - 1, max([0, *known, *targets]) + 1
    height, top, foot = 220.0, 22.0, 28.0
    across = (WIDTH - LEFT - RIGHT) / max(len(series.rounds), 1)

    def y(value: float) -> float:
        return top + (high - value) / (high - low) * (height - top - foot)

    parts = [
        svg.line("level", LEFT, y(0), WIDTH - RIGHT, y(0)),
        svg.text("tick", LEFT - 8, y(0) + 4, "E", "end"),
    ]
    for place, view in enumerate(series.rounds):
        x = LEFT + (place + 0.5) * across
        parts.append(svg.text("tick", x, height - 8, str(place + 1), "middle"))
        if view.plan.target is not None:
            aim = y(view.plan.target)
            parts.append(svg.line("target", x - across * 0.32, aim, x + across * 0.32, aim))
        if view.to_par is None:
            continue
        tone = "ring" if reached(view) else "box" if reached(view) is False else ""
        parts.append(svg.line("stem", x, y(0), x, y(view.to_par)))
        parts.append(
            svg.circle(f"dot {tone}", x, y(view.to_par), 6.0, f"{said(view.title)}: {to_par(view.to_par)}")
        )
        target = view.plan.target
        close = target is not None and 0 <= y(view.to_par) - y(target) < 24
        lift = 18 if close or view.to_par < 0 else -12
        parts.append(
            svg.text(
                "value",
                x + (12 if close else 0),
                y(view.to_par) + lift,
                to_par(view.to_par),
                "start" if close else "middle",
            )
        )
    told = ", ".join(f"{place}: {to_par(view.to_par)}" for place, view in enumerate(series.rounds, start=1))
    return svg.drawing(WIDTH, height, f"Score to par by round. {told}.", parts)


def trend(series: SeriesView, category: str) -> Markup:
    """One part's strokes gained by round, with 80 % intervals."""
    rows = [
        (place, skill)
        for place, view in enumerate(series.rounds)
        for skill in view.gained.categories
        if skill.category == category
    ]
    reach = max([1.0, *(abs(end) for _, skill in rows for end in (skill.low, skill.high))])
    width, height = 340.0, 130.0
    across = (width - LEFT - 8) / max(len(series.rounds), 1)

    def y(value: float) -> float:
        return height / 2 - value / reach * (height / 2 - 12)

    parts = [svg.line("level", LEFT, y(0), width - 8, y(0)), svg.text("tick", LEFT - 6, y(0) + 4, "0", "end")]
    ends = (-reach, reach)
    parts += [svg.text("tick", LEFT - 6, y(value) + 4, signed(value, 1), "end") for value in ends]
    spots = [(LEFT + (place + 0.5) * across, skill) for place, skill in rows]
    parts += [
        svg.line(f"interval {'under' if skill.mean >= 0 else 'over'}", x, y(skill.low), x, y(skill.high))
        for x, skill in spots
    ]
    parts.append(svg.path("run", svg.curve((x, y(skill.mean)) for x, skill in spots)))
    parts += [svg.circle("dot", x, y(skill.mean), 3.5, signed(skill.mean)) for x, skill in spots]
    told = ", ".join(f"{place + 1}: {signed(skill.mean)}" for place, skill in rows)
    return svg.drawing(width, height, f"Strokes gained {category} by round: {told}.", parts, "chart trend")

"""`reviewkit explain`: which words led to what."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from reviewkit.explanation import HoleExplanation
    from reviewkit.model import Mention, Shot, Utterance

_WIDTH = 79
_MOODS = {
    "plan": "meant, not done",
    "tried": "tried",
    "with": "with what was told before it",
    "after": "of the stroke told before it",
    "weighed": "held against others",
    "other": "another player's",
    "past": "another time or hole",
    "not": "denied, or not done",
    "land": "the lie of the land",
    "aside": "not a length left",
    "togo": "left to the hole",
    "left": "what a stroke left",
    "from": "what it was played from",
    "length": "the hole's length",
    "flown": "how far it went",
    "bare": "a number by itself",
    "said": "by a sign or somebody else",
    "paused": "only behind a pause",
}
_SHOWN = 0.005
"""A smaller probability is not worth a place on the line."""


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option("--hole", type=click.IntRange(1, 36), help="Only this hole; all of them without.")
def command(round_folder: Path, hole: int | None) -> None:
    """Which words of ROUND led to what, rule by rule: mentions, strokes, counts and the score."""
    from reviewkit.explanation import explain
    from reviewkit.log import open_round

    found = explain(open_round(round_folder), hole)
    if not found:
        click.echo("No holes were found in the words.")
    for place, told in enumerate(found):
        click.echo(("\n" if place else "") + "\n".join(page(told)))


def page(told: HoleExplanation) -> Iterator[str]:
    """The lines about one hole."""
    yield from _head(told)
    yield "\nSaid"
    for utterance in told.talk:
        yield from _said(utterance)
    yield from _heard(told)
    yield "\nStrokes read from it"
    for shot in told.shots:
        yield from _stroke(told, shot)
    if not told.shots:
        yield "  none"
    yield "\nScore"
    yield from _wrapped(f"strokes by the tale alone: {_odds(told.counts) or 'not told'}", 2)
    score = told.score
    strokes = "not known" if score.strokes is None else str(score.strokes)
    yield f"  settled with the rest of the round: {strokes}, {score.confidence:.0%} sure, {score.status}"
    for doubt in score.doubts:
        yield from _wrapped(f"- {doubt}", 2)


def _head(told: HoleExplanation) -> Iterator[str]:
    from reviewkit.timecode import clock

    span, score = told.span, told.score
    par = "par not known" if score.par is None else f"par {score.par}"
    yield f"Hole {span.hole}, {par}, {clock(span.start_s)} to {clock(span.end_s)}"
    by = f'by "{span.reason}"' if span.told and span.reason else "not named: by the order of play"
    yield from _wrapped(f"begins here: {span.probability:.0%}, {by}", 2)
    yield from _wrapped(f"par: {_odds(told.par) or 'neither words nor card say'}", 2)


def _said(utterance: Utterance) -> Iterator[str]:
    from reviewkit.timecode import clock

    yield from _wrapped(f"{clock(utterance.start_s):>7}  {utterance.text}", 0, 9)
    for mention in utterance.mentions:
        yield from _wrapped(f"{_meaning(mention)} < {mention.text} [{mention.rule or 'no rule'}]", 11)


def _meaning(mention: Mention) -> str:
    """`club D`, `distance 150 yd (left to the hole)`."""
    parts = [mention.kind, "" if mention.value is None else str(mention.value), mention.unit]
    mood = f" ({_MOODS.get(mention.mood, mention.mood)})" if mention.mood else ""
    return " ".join(part for part in parts if part) + mood


def _heard(told: HoleExplanation) -> Iterator[str]:
    if not told.hearings:
        return
    yield "\nListened to again"
    yield from _wrapped(f"hearing taken: {next(iter(told.hearings))}", 2)
    yield from _wrapped(f"strokes over all hearings: {_odds(told.odds)}", 2)
    for manner, words in list(told.hearings.items())[1:]:
        yield from _wrapped(f'{manner}: "{words}"', 2, 4)


def _stroke(told: HoleExplanation, shot: Shot) -> Iterator[str]:
    from reviewkit.timecode import clock

    far = f"{shot.distance_yd:g} yd" if shot.distance_yd is not None else ""
    cost = f"{shot.penalty_strokes} penalty" if shot.penalty_strokes else ""
    lie = f"from {shot.lie}" if shot.lie else ""
    words = [shot.kind, shot.club, lie, far, f"to {shot.result}", shot.miss, shot.contact, cost]
    if not shot.told:
        words.append("not told, but implied")
    line = ", ".join(word for word in words if word)
    yield from _wrapped(f"{clock(shot.start_s):>7}  {shot.stroke}. {line} ({shot.confidence:.0%})", 0, 12)
    if shot.evidence:
        yield from _wrapped(f'"{shot.evidence}"', 12)
        rules = dict.fromkeys(mention.rule for mention in told.mentions(shot) if mention.rule)
        if rules:
            yield from _wrapped(f"by: {'; '.join(rules)}", 12)


def _odds(shares: Mapping[int, float]) -> str:
    """`4 (86%), 5 (12%)`, likeliest first."""
    ranked = sorted(shares.items(), key=lambda item: -item[1])
    return ", ".join(f"{value} ({share:.0%})" for value, share in ranked if share >= _SHOWN)


def _wrapped(text: str, indent: int, hanging: int | None = None) -> list[str]:
    """Lines of at most 79 columns; what was said goes without marks that could disturb a terminal."""
    from reviewkit.log.amendments import plain

    rest = " " * (indent + 2 if hanging is None else hanging)
    return textwrap.wrap(plain(text), _WIDTH, initial_indent=" " * indent, subsequent_indent=rest)

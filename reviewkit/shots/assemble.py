"""A hole's utterances as strokes: the way into the shots room."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from reviewkit.model import HoleSpan, Shot, Utterance, Word
from reviewkit.shots.aim import for_the_green, one_shotter
from reviewkit.shots.chart import readings
from reviewkit.shots.club_words import club_of
from reviewkit.shots.clubs_again import with_the_club_of_again
from reviewkit.shots.counts import counts
from reviewkit.shots.cue import LONGEST_CLUBS, SHORT, Cue
from reviewkit.shots.cues import cues
from reviewkit.shots.drafts import PENALTIES, side_of
from reviewkit.shots.greens import misses
from reviewkit.shots.kinds import from_untold_sand, kind
from reviewkit.shots.measures import distances
from reviewkit.shots.reach import reach
from reviewkit.shots.shared import shared_endings
from reviewkit.shots.steps import Step
from reviewkit.shots.stray_places import stray_places
from reviewkit.shots.stray_sides import stray_sides
from reviewkit.shots.trouble import out_of_bounds, sides

_TEMPERATURE = 1.3
"""How far the chart's scores are trusted as log odds; set to calibrate counts on invented rounds."""
_TOLD, _GUESSED = 0.9, 0.45
_WHERE = re.compile(
    r"\b(?:into|in (?:the|a|that|there|some)|left|right|behind|under|over the|lost|gone|wet)\b"
)
_SHORT_OF_IT = ("bunker", "chip", "pitch", "putt")
_OUT_OF_SAND_YD = 160
"""What no club goes at most that a ball by the green is got out of sand with."""
_HABIT = 3
"""Holes that make a habit."""


@dataclass(frozen=True, slots=True)
class Telling:
    """All readings of one hole's strokes, by count. `counts` are probabilities by the tale alone."""

    span: HoleSpan
    talk: tuple[Utterance, ...]
    cues: tuple[Cue, ...]
    options: Mapping[int, tuple[float, tuple[Step, ...]]]

    @property
    def counts(self) -> dict[int, float]:
        if not self.options:
            return {}
        top = max(score for score, _ in self.options.values())
        odds = {count: math.exp((score - top) / _TEMPERATURE) for count, (score, _) in self.options.items()}
        total = sum(odds.values())
        return {count: share / total for count, share in sorted(odds.items())}

    def nearest(self, strokes: int | None) -> int:
        """The count among the readings that is nearest to `strokes`; the likeliest when None."""
        if strokes is None:
            return max(self.options, key=lambda count: self.options[count][0])
        return min(self.options, key=lambda count: (abs(count - strokes), -self.options[count][0]))


def tell(span: HoleSpan, talk: Sequence[Utterance], par: int | None, clubs_last: bool = False) -> Telling:
    """Read one hole's utterances as strokes; `par` and the speaker's manner help where known."""
    found = cues(talk)
    return Telling(span, tuple(talk), found, readings(found, par, counts(talk, found, par), clubs_last))


def clubs_told_last(holes: Iterable[Sequence[Utterance]]) -> bool:
    """Whether most tee shots of a round are told by where they ended, and their club behind that."""
    first, last = 0, 0
    for talk in holes:
        told = [cue for cue in cues(talk) if cue.kind in ("club", "place") and not cue.meant]
        if any(cue.kind == "club" for cue in told):
            last += told[0].kind == "place"
            first += told[0].kind == "club"
    return last >= _HABIT and last > first


def shots(
    telling: Telling, strokes: int | None, par: int | None, units: str, words: Sequence[Word]
) -> tuple[Shot, ...]:
    """The strokes of the reading with `strokes` in all, in order; with None, of the likeliest reading.

    Where no reading has exactly so many, the nearest is given: the score and the strokes then disagree, which
    scoring reports.
    """
    if not telling.options:
        return ()
    _, steps = telling.options[telling.nearest(strokes)]
    steps = with_the_club_of_again(telling.cues, _with_clubs_before(telling.cues, steps), words)
    for at, place in stray_places(telling.talk, telling.cues, steps, words).items():
        steps = _with(steps, at, result=place)
    for at in out_of_bounds(telling.talk, steps):
        steps = _with(steps, at, result="ob")
    for at, end in shared_endings(telling.cues, steps).items():
        steps = _with(steps, at, result=end)
    lengths = distances(telling.cues, steps, units, par)
    steps = tuple(
        step
        if step.lie != "tee" or for_the_green("tee", steps, at, par, lengths)
        else _sideways(telling.cues, step)
        for at, step in enumerate(steps)
    )
    for at, miss in {
        **sides(telling.talk, telling.cues, steps, words),
        **misses(telling.cues, steps, units),
    }.items():
        steps = _with(steps, at, miss=miss)
    for at, miss in stray_sides(telling.talk, telling.cues, steps, words).items():
        steps = _with(steps, at, miss=miss)
    result: list[Shot] = []
    near = False
    for at, step in enumerate(steps):
        if from_untold_sand(step, steps[at + 1] if at + 1 < len(steps) else None, lengths[at], near):
            step = replace(step, lie="sand")
            result[-1] = replace(result[-1], result="sand")
        sort = kind(step, lengths[at], near, par)
        step = _fell_short(step)
        if not for_the_green(sort, steps, at, par, lengths):
            step = _sideways(telling.cues, step)
        shot = _shot(telling, step, sort, lengths[at], _rest(steps, at), words, par)
        if step.draft.club == "same":
            shot = replace(shot, club=_same(result, sort))
        if shot.result == "unknown" and at + 1 < len(steps) and _on_the_fairway(step, steps[at + 1], par):
            between = telling.cues[step.draft.last - 1], telling.cues[steps[at + 1].draft.first]
            if not _somewhere(words, *between):
                shot = replace(shot, result="fairway", confidence=_GUESSED)
        result.append(shot)
        near = _now_near(sort, step, lengths[at], near, par)
    return tuple(result)


def _with_clubs_before(cues: Sequence[Cue], steps: Sequence[Step]) -> tuple[Step, ...]:
    """Strokes told without a club take the one named since the stroke before: the last used, else meant."""
    result: list[Step] = []
    since = 0
    for at, step in enumerate(steps):
        if not step.draft.club and step.draft.shape != "putt":
            following = (
                later.draft.first for later in steps[at + 1 :] if later.draft.first < later.draft.last
            )
            until = step.draft.first if step.told else next(following, len(cues))
            if named := club_of(cues[since:until]):
                step = replace(step, draft=replace(step.draft, club=named))
        result.append(step)
        since = max(since, step.draft.last)
    return tuple(result)


def _with(steps: Sequence[Step], at: int, **facts: str) -> tuple[Step, ...]:
    told = replace(steps[at], draft=replace(steps[at].draft, **facts))  # type: ignore[arg-type]
    return (*steps[:at], told, *steps[at + 1 :])


def _same(before: Sequence[Shot], sort: str) -> str:
    """The club of "same again": the last told, unless a short stroke was played since with nobody knows what.

    "7 iron, in the sand. Fat, still in there. Same again": no 7 iron, as none gets a ball out by the green.
    """
    last = next((shot for shot in reversed(before) if shot.club or shot.kind in _SHORT_OF_IT), None)
    if last is None or sort == "putt" or (sort == "bunker" and (reach(last.club) or 0.0) > _OUT_OF_SAND_YD):
        return ""
    return last.club


def _now_near(sort: str, step: Step, yards: float | None, near: bool, par: int | None) -> bool:
    """Whether the next stroke is played from near the green."""
    result = step.draft.result
    if sort == "tee":
        # A tee shot meant for the green is a par 3's; where that is not told the club or its miss tells.
        if par == 3:
            return result not in PENALTIES
        return step.draft.club not in LONGEST_CLUBS and result not in PENALTIES and one_shotter(yards)
    if sort in ("layup", "recovery"):
        return False
    if sort == "approach" and step.draft.contact == "topped":
        return False
    return result not in PENALTIES


def _rest(steps: Sequence[Step], at: int) -> str:
    """Where the ball came to rest: as told, or on the green when the next stroke is a putt from it.

    A long stroke that missed and is played on from nowhere told lies in the rough, as most do.
    """
    result = steps[at].draft.result
    if result:
        return result
    if steps[at].draft.close:
        return "green"
    after = steps[at + 1] if at + 1 < len(steps) else None
    if after is None or after.lie == "tee":
        return "unknown"
    if after.lie != "unknown":
        return after.lie
    if after.draft.shape == "putt" and after.draft.feet:
        return "green"
    if after.draft.shape == "bunker":
        return "sand"
    missed = steps[at].draft.miss and after.told and steps[at].draft.shape not in ("layup", "punch")
    return after.draft.lie or ("rough" if missed else "unknown")


def _on_the_fairway(step: Step, after: Step, par: int | None) -> bool:
    """ "Driver. And then 150, 8 iron": a drive of which nothing else is told, played on from with a club."""
    draft, then = step.draft, after.draft
    told = draft.miss or draft.contact or draft.dropped or then.lie or then.dropped or not step.told
    full = after.told and then.club and then.shape not in (*SHORT, "punch", "putt")
    return step.lie == "tee" and par in (4, 5) and not told and bool(full)


def _somewhere(words: Sequence[Word], last: Cue, after: Cue) -> bool:
    """ "Driver, in the left hand buncher": where it went is told, in words that were not understood."""
    told = " ".join(word.text for word in words[last.mention.last + 1 : after.mention.first])
    return _WHERE.search(told.lower()) is not None


def _fell_short(step: Step) -> Step:
    """ "Chunked it. Still in the rough": hit fat, and no word of where it missed."""
    draft = step.draft
    fat = draft.contact == "fat" and not draft.miss and draft.result not in ("", "green", "holed")
    return replace(step, draft=replace(draft, miss="short")) if fat else step


def _sideways(cues: Sequence[Cue], step: Step) -> Step:
    """The stroke neither short nor long: it missed to the side told beside that, if any."""
    if step.draft.miss not in ("short", "long"):
        return step
    run = cues[step.draft.first : step.draft.last]
    side = side_of([cue for cue in run if cue.value in ("left", "right")])
    return replace(step, draft=replace(step.draft, miss=side))


def _came_up_short(sort: str, step: Step, par: int | None) -> bool:
    """A side of the fairway is no miss, but a stroke meant for the green that stops there is short.

    One topped along the fairway is not: it was no try that failed, but a way of getting on.
    """
    meant = sort in ("approach", "layup", "pitch", "chip") or (sort == "tee" and par == 3)
    return meant and step.draft.miss == "short" and step.draft.contact != "topped"


def _shot(
    telling: Telling,
    step: Step,
    sort: str,
    yards: float | None,
    rest: str,
    words: Sequence[Word],
    par: int | None,
) -> Shot:
    run = telling.cues[step.draft.first : step.draft.last]
    first, last = (run[0].mention.first, run[-1].mention.last) if run else (None, None)
    start = words[first].start_s if first is not None else telling.span.end_s
    end = words[last].end_s if last is not None else telling.span.end_s
    if first is None and step.before is not None and step.before.draft.last:
        start = end = telling.cues[step.before.draft.last - 1].mention.end_s
    held = step.draft.result == "holed"
    return Shot(
        hole=telling.span.hole,
        stroke=step.number,
        start_s=start,
        end_s=end,
        kind=sort,
        club="" if sort == "putt" or step.draft.club == "same" else step.draft.club,
        lie=step.lie if step.lie != "unknown" else step.draft.lie,
        distance_yd=yards,
        result="holed" if held else rest,
        miss="" if held or (rest == "fairway" and not _came_up_short(sort, step, par)) else step.draft.miss,
        contact=step.draft.contact,
        penalty_strokes=1 if step.draft.result in PENALTIES else 0,
        holed=held,
        told=step.told,
        confidence=_TOLD if step.told else _GUESSED,
        evidence=" ".join(word.text.strip() for word in words[first : last + 1])
        if first is not None and last is not None
        else "",
    )

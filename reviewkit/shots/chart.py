"""The chart: all ways to read a hole's cues as strokes from the tee into the hole, weighed together.

A state is where the ball lies, how many strokes have counted (penalty strokes included) and how many of them
were putts. A cue is either explained by a stroke or skipped at a cost; strokes nobody told are inserted at a
cost. The best reading for every final count is kept, so that scoring can choose among counts.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from reviewkit.shots.counts import Count, agreement
from reviewkit.shots.cue import SHORT, Cue
from reviewkit.shots.drafts import PENALTIES, Draft, draft, told_again
from reviewkit.shots.holing import lies_at, tapped, untold
from reviewkit.shots.steps import Ball, Step, as_putt, come_to_green, in_order, next_cue, played
from reviewkit.shots.weights import skip_cost

_LONGEST = 9
"""Cues in one stroke, at most."""
_BEAM = 14
_MARGIN = 7.0
_MOST = 16
_DROP = {"penalty": 1.2, "drop": 0.3}
"""What a drop is worth as a sign of a penalty stroke; without that word it may be a free one."""
_DROPPED_FROM = {
    "penalty": ("", "rough", "trees", "sand", "fairway", "fringe"),
    "drop": ("", "rough", "trees"),
}

_UNHEARD, _APPROACHED, _DRIVEN = 1.6, 260, ("D", "3W")
"""What a drive costs of which nothing was heard, and the most that one leaves."""
_LATER = 1.0
"""What speaks against the first putt being the next one: "and the next one's in"."""
_STROKED, _ON_THE_GREEN = 0.4, ("green", "fringe", "holed")
_PUTTED_FROM, _OFF_THE_GREEN = ("fairway",), 1.2
"""Where a putter may be used besides green and fringe, and what speaks against it."""

Reading = tuple[float, Step | None]


@lru_cache(maxsize=512)
def readings(
    cues: tuple[Cue, ...], par: int | None, said: tuple[Count, ...], clubs_last: bool = False
) -> Mapping[int, tuple[float, tuple[Step, ...]]]:
    """Strokes on the hole -> (score, steps in order) of the best reading with that many, all holed out.

    Kept for the next reading of the round: most of its holes will be told in the same words.
    """
    table: list[dict[Ball, Reading]] = [{} for _ in range(len(cues) + 1)]
    table[0][Ball()] = (0.0, None)
    drafts = _drafts(cues, clubs_last)
    for at, cue in enumerate(cues):
        states = sorted(table[at].items(), key=lambda item: -item[1][0])[:_BEAM]
        for ball, (score, chain) in states:
            if score < states[0][1][0] - _MARGIN:
                break
            idle = 0.4 if ball.lie == "tee" else 1.0
            here = (at, ball.strokes)
            idly = agreement(said, here, (at + 1, ball.strokes)) - idle * skip_cost(cue)
            _offer(table[at + 1], ball, score + idly, chain)
            for found in drafts[at]:
                for gain, after, steps in moves(ball, found, chain, par):
                    agreed = agreement(said, here, (found.last, after.strokes))
                    _offer(table[found.last], after, score + gain + agreed, steps)
    return _finished(table[len(cues)], cues)


def _drafts(cues: Sequence[Cue], clubs_last: bool) -> list[list[Draft]]:
    """Drafts by their first cue; hopeless ones are left out."""
    result = []
    for first in range(len(cues)):
        ends = range(first + 1, min(first + _LONGEST, len(cues)) + 1)
        found = [
            made for last in ends if (made := draft(cues, first, last, clubs_last)) and made.score > -2.0
        ]
        result.append(found)
    return result


def _offer(table: dict[Ball, Reading], ball: Ball, score: float, chain: Step | None) -> None:
    if ball.strokes <= _MOST and (ball not in table or score > table[ball][0]):
        table[ball] = (score, chain)


def moves(
    ball: Ball, found: Draft, chain: Step | None, par: int | None
) -> Iterator[tuple[float, Ball, Step | None]]:
    """What a draft may be with the ball where it is: (gain, ball afterwards, steps)."""
    if ball.lie == "holed":
        yield from _afterwards(ball, found, chain)
        return
    if found.family in ("swing", "putt_or_swing") and ball.lie != "green":
        yield from _swing(ball, found, chain, par)
    if found.family == "swing" and _stroked(found) and (ball.lie == "green" or _left(chain)):
        yield from ((gain - _STROKED, after, steps) for gain, after, steps in _putt(ball, found, chain))
    elif found.family == "swing" and ball.lie == "green":
        off = found.result not in ("", *_ON_THE_GREEN)
        yield (
            found.score - 2.5 - (1.5 if found.club else 0.0) - (2.0 if off else 0.0),
            *played(ball, as_putt(found), chain),
        )
    if found.family in ("putt", "putt_or_swing", "tap"):
        yield from _putt(ball, found, chain)
    if found.family == "tally":
        yield from _tally(ball, found, chain)
    if found.family == "updown":
        yield from _updown(ball, found, chain)


def _afterwards(ball: Ball, found: Draft, chain: Step | None) -> Iterator[tuple[float, Ball, Step | None]]:
    """The hole is over: talk may sum it up, nothing is played."""
    if found.family == "tally":
        yield (1.2 if found.putts == ball.putts else -1.0), ball, chain
    elif found.family in ("updown", "tap", "putt_or_swing"):
        yield 0.2, ball, chain


def _swing(
    ball: Ball, found: Draft, chain: Step | None, par: int | None
) -> Iterator[tuple[float, Ball, Step | None]]:
    gain = found.score
    first = ball.strokes == 0
    if found.shape == "tee" or found.club == "D":
        gain += 0.5 if ball.lie == "tee" else -1.2
    if ball.lie == "tee" and (found.shape in SHORT or (found.shape == "punch" and found.club != "D")):
        gain -= 2.0
    if first and found.reload:
        gain -= 1.5
    if first and par in (4, 5) and found.result in ("green", "holed"):
        gain -= 1.6
    if par == 3 and found.result == "fairway" and first:
        gain -= 0.8
    if found.family == "putt_or_swing":
        gain -= 0.8
    if found.result == "holed":
        far = ball.lie in ("tee", "fairway", "unknown") and found.shape not in ("chip", "pitch")
        gain -= 1.5 if far else 1.0
    if found.lie and ball.lie not in ("unknown", found.lie):
        gain -= 0.4
    if chain is not None and chain.told:
        gain -= told_again(chain.draft, found)
    if found.reload and ball.lie != "tee" and ball.strokes == 1 and chain is not None:
        # The first ball's fate was not told, but playing another from the tee tells it.
        gone = replace(chain, draft=replace(chain.draft, result=_gone(chain.draft.result)))
        yield gain - 0.2, *played(Ball("tee", 2), found, gone)
        return
    if found.dropped:
        yield from _dropped(ball, found, chain, gain)
    if first and 0 < found.far <= _APPROACHED and par in (4, 5) and found.club not in _DRIVEN:
        # "Flurb, flurb. 152 to the flag, 8 iron": nothing of the drive was heard.
        driven, before = played(ball, Draft(0, 0, 0.0, "swing"), None, told=False)
        again = gain + (1.6 if found.result in ("green", "holed") else 0.0)
        yield again - _UNHEARD, *played(driven, found, before)
    yield gain, *played(ball, found, chain)


def _dropped(
    ball: Ball, found: Draft, chain: Step | None, gain: float
) -> Iterator[tuple[float, Ball, Step | None]]:
    """A ball dropped tells that the stroke before it cost another, where that was not told."""
    if chain is None:
        unheard = Draft(0, 0, 0.0, "swing", result="penalty")
        left, lost = played(ball, unheard, None, told=False)
        yield gain - 2.4 + _DROP[found.dropped], *played(left, found, lost)
        return
    if chain.draft.result not in _DROPPED_FROM[found.dropped]:
        return
    fate = "unplayable" if chain.draft.result in ("rough", "trees", "sand") else "penalty"
    gone = replace(chain, draft=replace(chain.draft, result=fate))
    yield gain + _DROP[found.dropped], *played(Ball("unknown", ball.strokes + 1, ball.putts), found, gone)


def _gone(result: str) -> str:
    return result if result in PENALTIES else "lost"


def _stroked(found: Draft) -> bool:
    """ "12 feet. Pulled it left": struck to a side, and no word of a club or of a landing."""
    return bool(found.miss) and not (
        found.club or found.result or found.shape or found.contact or found.close
    )


def _putt(ball: Ball, found: Draft, chain: Step | None) -> Iterator[tuple[float, Ball, Step | None]]:
    gain = found.score - (0.3 if found.family == "putt_or_swing" and ball.lie == "fringe" else 0.0)
    made = found if found.shape == "putt" else as_putt(found)
    ways = list(_onto_green(ball, chain, found.family != "tap"))
    if found.putter and ball.lie in _PUTTED_FROM:
        ways.append((-_OFF_THE_GREEN, ball, chain))
    for cost, green, steps in ways:
        tap = found.family == "tap"
        first, later = tapped(_left(steps) or found.feet, _close(steps)) if tap else (0.0, -1.5)
        another = green.putts > 0 or (steps is not None and steps.draft.shape == "putt")
        if made.later:
            first, later = first - _LATER, max(later, -0.4)
        yield gain + cost + (0.0 if another else first), *played(green, made, steps)
        if made.result == "holed" and green.lie == "green" and not another:
            missed = Draft(next_cue(steps), next_cue(steps), 0.0, "putt", shape="putt", result="green")
            between, before = played(green, missed, steps, told=False)
            yield gain + cost + later, *played(between, made, before)


def _left(chain: Step | None) -> float | None:
    """Feet that the last stroke left, where its words tell."""
    return chain.draft.feet if chain is not None and chain.draft.shape != "putt" else None


def _close(chain: Step | None) -> bool:
    return chain is not None and chain.draft.close


def _tally(ball: Ball, found: Draft, chain: Step | None) -> Iterator[tuple[float, Ball, Step | None]]:
    """ "Two putts", "three-jacked it": so many putts in all, those told before included."""
    for cost, green, steps in _onto_green(ball, chain, False):
        more = found.putts - green.putts
        if more < 1:
            yield found.score + cost - 1.5, green, steps
            continue
        after = green
        for left in range(more, 0, -1):
            putt = replace(
                found, family="putt", shape="putt", result="holed" if left == 1 else "green", miss=""
            )
            after, steps = played(after, putt, steps, told=False)
        yield found.score + cost + 0.3, after, steps


def _updown(ball: Ball, found: Draft, chain: Step | None) -> Iterator[tuple[float, Ball, Step | None]]:
    """Off the green and in, in two; the first of them may have been told already."""
    putt = replace(found, family="putt", shape="putt", result="holed", club="", miss="")
    if ball.lie == "green" and ball.putts == 0:
        yield found.score, *played(ball, putt, chain)
    elif ball.lie != "tee":
        if ball.lie == "unknown" and chain is not None and chain.told and chain.draft.result not in PENALTIES:
            # "Sand wedge. 5 feet. Up and down": the first of the two has been told.
            yield found.score - 0.3, *played(Ball("green", ball.strokes), putt, come_to_green(chain))
        onto = replace(found, family="swing", shape="", result="green", club="", miss="")
        green, steps = played(ball, onto, chain, told=False)
        yield found.score - 0.3, *played(green, putt, steps, told=False)


def _onto_green(ball: Ball, chain: Step | None, fringe: bool) -> Iterator[tuple[float, Ball, Step | None]]:
    """The ball on the green, or on the fringe where a putter may be used, at the cost of what is not told."""
    if ball.lie == "green" or (ball.lie == "fringe" and fringe):
        yield 0.0, ball, chain
    if ball.lie == "unknown" and chain is not None and chain.draft.result not in PENALTIES:
        yield -0.5, Ball("green", ball.strokes), come_to_green(chain)
    if ball.lie not in ("green", "holed"):
        blank = Draft(next_cue(chain), next_cue(chain), 0.0, "swing", result="green")
        cost = -5.0 if ball.lie == "tee" else -2.4
        yield cost, *played(ball, blank, chain, told=False)


def _finished(table: dict[Ball, Reading], cues: Sequence[Cue]) -> dict[int, tuple[float, tuple[Step, ...]]]:
    """Every reading holed out, with one to three strokes nobody told where need be."""
    done: dict[int, tuple[float, tuple[Step, ...]]] = {}
    for ball, (score, chain) in table.items():
        if ball.strokes == 0:
            continue
        for cost, end, steps in _holed_out(ball, chain, cues):
            total = score + cost
            if end.strokes not in done or total > done[end.strokes][0]:
                done[end.strokes] = (total, in_order(steps))
    return done


def _holed_out(
    ball: Ball, chain: Step | None, cues: Sequence[Cue]
) -> Iterator[tuple[float, Ball, Step | None]]:
    if ball.lie == "holed" or chain is None:
        yield 0.0, ball, chain
        return
    told = chain.draft
    length = lies_at(cues, told.first, told.last, told.shape == "putt")
    for cost, green, steps in _onto_green(ball, chain, False):
        after = green
        for putts, odds in untold(length, green.putts):
            last = Draft(next_cue(steps), next_cue(steps), 0.0, "putt", shape="putt", result="holed")
            yield cost + odds, *played(after, last, steps, told=False)
            missed = replace(last, result="green")
            after, steps = played(after, missed, steps, told=False)
            if putts == 3:
                break

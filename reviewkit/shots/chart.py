"""The chart: all ways to read a hole's cues as strokes from the tee into the hole, weighed together.

A state is where the ball lies, how many strokes have counted (penalty strokes included) and how many of them
were putts. A cue is either explained by a stroke or skipped at a cost; strokes nobody told are inserted at a
cost. The best reading for every final count is kept, so that scoring can choose among counts.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import lru_cache

from reviewkit.shots.club_words import left_another
from reviewkit.shots.counts import Count, a_stroke_more, agreement, coming
from reviewkit.shots.cue import LONGEST_CLUBS, SHORT, Cue
from reviewkit.shots.drafts import PENALTIES, Draft, drafts, told_again
from reviewkit.shots.on_green import Moves, afterwards, holed_out, putts, struck_there, tally, updown
from reviewkit.shots.steps import Ball, Step, in_order, played
from reviewkit.shots.weights import skip_cost

_BEAM = 14
_MARGIN = 7.0
_MOST = 16
_DROP = {"penalty": 1.2, "drop": 0.3}
"""What a drop is worth as a sign of a penalty stroke; without that word it may be a free one."""
_DROPPED_FROM = {
    "penalty": ("", "rough", "trees", "sand", "fairway", "fringe"),
    "drop": ("", "rough", "trees"),
}

_ON_THE_TEE, _SWUNG = 0.4, 0.7
"""What words weigh that are told before the first stroke and taken for none; a club that left a length."""
_UNHEARD, _APPROACHED = 1.6, 260
"""What a drive costs of which nothing was heard, and the most that one leaves."""
_MOST_LEFT, _LEFT = 0.65, 0.8
"""The share of a hole's length that a drive leaves at most, and what it says for one where both are told."""
_TOO_FAR = 1.6
"""What speaks against a drive that comes to the green of a hole of more than one stroke."""
_MAY_BE_GONE = ("", "rough", "trees")
_COUNTED = 0.8
"""What speaks against a penalty of which only the next stroke's number tells."""
_MISSING, _MOST_MISSING = 0.5, 4
"""What speaks against each stroke of which only the count on the green tells, and how many those may be."""
_TEED_AGAIN = ("D", "2W", "3W", "4W", "5W")

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
    told = [drafts(cues, first, clubs_last) for first in range(len(cues))]
    numbered, onto = coming(said), [count for count in said if count.onto]
    for at, cue in enumerate(cues):
        states = sorted(table[at].items(), key=lambda item: -item[1][0])[:_BEAM]
        for ball, (score, chain) in states:
            if score < states[0][1][0] - _MARGIN:
                break
            idle = _on_the_tee(cues, at) if ball.lie == "tee" else 1.0
            here = (at, ball.strokes)
            idly = agreement(said, here, (at + 1, ball.strokes)) - idle * skip_cost(cue)
            _offer(table[at + 1], ball, score + idly, chain)
            for found in told[at]:
                for cost, start, before in _starts(ball, chain, at, found, numbered, onto):
                    for gain, after, steps in moves(start, found, before, par):
                        agreed = agreement(said, here, (found.last, after.strokes))
                        _offer(table[found.last], after, score + cost + gain + agreed, steps)
    return _finished(table[len(cues)], cues)


def _on_the_tee(cues: Sequence[Cue], at: int) -> float:
    return _SWUNG if left_another(cues, at) else _ON_THE_TEE


def _starts(
    ball: Ball, chain: Step | None, at: int, found: Draft, numbered: Sequence[Count], onto: Sequence[Count]
) -> Moves:
    """The ball where it is, and where counts say that it may be."""
    yield 0.0, ball, chain
    if numbered:
        yield from _paid(ball, chain, found, numbered)
    if onto:
        yield from _nearer(ball, chain, at, found, onto)


def _nearer(ball: Ball, chain: Step | None, at: int, found: Draft, onto: Sequence[Count]) -> Moves:
    """ "On in three, and two putts": the ball behind the strokes that nothing else tells of."""
    counted = [count.strokes for count in onto if at < count.place <= found.last]
    missing = counted[-1] - ball.strokes - 1 if counted and found.result == "green" else 0
    if not 0 < missing <= _MOST_MISSING:
        return
    for _ in range(missing):
        ball, chain = played(ball, Draft(0, 0, 0.0, "swing"), chain, told=False)
    yield -_MISSING * missing, ball, chain


def _paid(ball: Ball, chain: Step | None, found: Draft, said: Sequence[Count]) -> Moves:
    """The ball with a penalty that only the count of the next stroke tells of."""
    if chain is None or not chain.told or chain.draft.result not in _MAY_BE_GONE or found.dropped:
        return
    if not a_stroke_more(said, chain.draft.first, found.first, ball.strokes):
        return
    teed = ball.strokes == 1 and (found.club in _TEED_AGAIN or found.shape == "tee" or found.reload)
    fate = "lost" if teed else "penalty"
    gone = replace(chain, draft=replace(chain.draft, result=fate))
    yield -_COUNTED, Ball("tee" if teed else "unknown", ball.strokes + 1, ball.putts), gone


def _offer(table: dict[Ball, Reading], ball: Ball, score: float, chain: Step | None) -> None:
    if ball.strokes <= _MOST and (ball not in table or score > table[ball][0]):
        table[ball] = (score, chain)


def moves(ball: Ball, found: Draft, chain: Step | None, par: int | None) -> Moves:
    """What a draft may be with the ball where it is: (gain, ball afterwards, steps)."""
    if ball.lie == "holed":
        yield from afterwards(ball, found, chain)
        return
    if found.family in ("swing", "putt_or_swing") and ball.lie != "green":
        yield from _swing(ball, found, chain, par)
    if found.family == "swing":
        yield from struck_there(ball, found, chain)
    if found.family in ("putt", "putt_or_swing", "tap"):
        yield from putts(ball, found, chain)
    if found.family == "tally":
        yield from tally(ball, found, chain)
    if found.family == "updown":
        yield from updown(ball, found, chain)


def _swing(ball: Ball, found: Draft, chain: Step | None, par: int | None) -> Moves:
    gain = found.score
    first = ball.strokes == 0
    if found.shape == "tee" or found.club == "D":
        gain += 0.5 if ball.lie == "tee" else -1.2
    if ball.lie == "tee" and (found.shape in SHORT or (found.shape == "punch" and found.club != "D")):
        gain -= 2.0
    if first and found.reload:
        gain -= 1.5
    too_far = first and par in (4, 5) and (found.close or found.result in ("green", "holed", "fringe"))
    gain -= _TOO_FAR if too_far else 0.0
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
    if first and 0 < found.far <= _APPROACHED and par in (4, 5) and found.club not in LONGEST_CLUBS:
        # "Flurb, flurb. 152 to the flag, 8 iron": nothing of the drive was heard.
        driven, before = played(ball, Draft(0, 0, 0.0, "swing"), None, told=False)
        left = _LEFT if found.share < _MOST_LEFT else 0.0
        yield gain + (_TOO_FAR if too_far else 0.0) - _UNHEARD + left, *played(driven, found, before)
        gain -= left
    yield gain, *played(ball, found, chain)


def _dropped(ball: Ball, found: Draft, chain: Step | None, gain: float) -> Moves:
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


def _finished(table: dict[Ball, Reading], cues: Sequence[Cue]) -> dict[int, tuple[float, tuple[Step, ...]]]:
    """Every reading holed out, with one to three strokes nobody told where need be."""
    done: dict[int, tuple[float, tuple[Step, ...]]] = {}
    for ball, (score, chain) in table.items():
        if ball.strokes == 0:
            continue
        for cost, end, steps in holed_out(ball, chain, cues):
            total = score + cost
            if end.strokes not in done or total > done[end.strokes][0]:
                done[end.strokes] = (total, in_order(steps))
    return done

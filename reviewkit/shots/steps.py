"""A ball on its way round a hole, and the strokes that brought it there."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import NamedTuple

from reviewkit.shots.drafts import PENALTIES, Draft

_LIES = ("fairway", "rough", "sand", "trees", "fringe")
_STUCK = ("sand", "trees", "unknown")
_LANDING = {"penalty": "unknown", "unplayable": "unknown", "": "unknown"}


class Ball(NamedTuple):
    """`lie` is a lie of shots.csv, `unknown` off the tee somewhere, or `holed`."""

    lie: str = "tee"
    strokes: int = 0
    putts: int = 0


@dataclass(frozen=True, slots=True, eq=False)
class Step:
    """One stroke of a reading and the ones before it. `told` is False for an inserted stroke."""

    draft: Draft
    lie: str
    number: int
    told: bool
    before: Step | None


@lru_cache(maxsize=64)
def come_to_green(chain: Step) -> Step:
    """The last stroke as one that came to the green."""
    return replace(chain, draft=replace(chain.draft, result="green"))


@lru_cache(maxsize=512)
def as_putt(made: Draft) -> Draft:
    """The same words as a putt."""
    return replace(made, shape="putt")


@lru_cache(maxsize=512)
def unheard(at: int, result: str, putt: bool) -> Draft:
    """A stroke before cue `at` of which nothing was heard: a putt, or one onto the green from elsewhere."""
    shape = "putt" if putt else ""
    return Draft(at, at, 0.0, shape or "swing", shape=shape, result=result)


def next_cue(chain: Step | None) -> int:
    """The first cue behind the strokes so far."""
    return chain.draft.last if chain is not None else 0


def played(ball: Ball, made: Draft, chain: Step | None, told: bool = True) -> tuple[Ball, Step]:
    """The ball after a stroke, and the steps with it. One that got nowhere ends where it began."""
    if made.result == "there":
        # Out of sand and trees nobody means more than to get out.
        miss = "" if made.miss == "short" and ball.lie in _STUCK else made.miss
        made = replace(made, result=ball.lie if ball.lie in _LIES else "", miss=miss)
    step = Step(made, ball.lie, ball.strokes + 1, told, chain)
    strokes = ball.strokes + (2 if made.result in PENALTIES else 1)
    if made.shape == "putt":
        putts = ball.putts + (ball.lie == "green")
        return Ball("holed" if made.result == "holed" else "green", strokes, putts), step
    if made.result in ("ob", "lost"):
        return Ball(ball.lie, strokes), step
    lie = "green" if made.close and made.result in ("", "green") else _LANDING.get(made.result, made.result)
    return Ball(lie, strokes), step


def in_order(chain: Step | None) -> tuple[Step, ...]:
    """The strokes from the first to the last."""
    steps = []
    while chain is not None:
        steps.append(chain)
        chain = chain.before
    return tuple(reversed(steps))

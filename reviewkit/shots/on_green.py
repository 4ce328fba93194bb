"""What the words of the green may be: putts told or not, tallies, the way from a landing to the hole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from reviewkit.shots.cue import Cue
from reviewkit.shots.drafts import PENALTIES, Draft
from reviewkit.shots.holing import lies_at, tapped, untold
from reviewkit.shots.steps import Ball, Step, as_putt, come_to_green, next_cue, played, unheard

_LATER = 1.0
"""What speaks against the first putt being the next one: "and the next one's in"."""
_STROKED, _ON_THE_GREEN = 0.4, ("green", "fringe", "holed")
_PUTTED_FROM, _OFF_THE_GREEN = ("fairway",), 1.2
"""Where a putter may be used besides green and fringe, and what speaks against it."""

_COUNTED_TOO = 1.0
"""What speaks against a putt from off the green being one of those counted."""

Moves = Iterator[tuple[float, Ball, Step | None]]
"""Ways on: (gain in log odds, the ball afterwards, the steps)."""


def struck_there(ball: Ball, found: Draft, chain: Step | None) -> Moves:
    """A swing's words where only a putt can have been: "12 feet. Pulled it left"."""
    if _stroked(found) and (ball.lie == "green" or _left(chain)):
        yield from ((gain - _STROKED, after, steps) for gain, after, steps in putts(ball, found, chain))
    elif ball.lie == "green":
        off = found.result not in ("", *_ON_THE_GREEN)
        yield (
            found.score - 2.5 - (1.5 if found.club else 0.0) - (2.0 if off else 0.0),
            *played(ball, as_putt(found), chain),
        )


def _stroked(found: Draft) -> bool:
    """ "12 feet. Pulled it left": struck to a side, and no word of a club or of a landing."""
    return bool(found.miss) and not (
        found.club or found.result or found.shape or found.contact or found.close
    )


def putts(ball: Ball, found: Draft, chain: Step | None) -> Moves:
    gain = found.score - (0.3 if found.family == "putt_or_swing" and ball.lie == "fringe" else 0.0)
    made = found if found.shape == "putt" else as_putt(found)
    ways = list(onto_green(ball, chain, found.family != "tap"))
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
            missed = unheard(next_cue(steps), "green", True)
            between, before = played(green, missed, steps, told=False)
            yield gain + cost + later, *played(between, made, before)


def _left(chain: Step | None) -> float | None:
    """Feet that the last stroke left, where its words tell."""
    return chain.draft.feet if chain is not None and chain.draft.shape != "putt" else None


def _close(chain: Step | None) -> bool:
    return chain is not None and chain.draft.close


def tally(ball: Ball, found: Draft, chain: Step | None) -> Moves:
    """ "Two putts", "three-jacked it": so many putts in all, those told before included.

    One from off the green is none, but some count it.
    """
    ways = [(cost, green.putts, green, steps) for cost, green, steps in onto_green(ball, chain, False)]
    ways += [
        (cost - _COUNTED_TOO, putts + 1, green, steps)
        for cost, putts, green, steps in ways
        if _putted_on(steps)
    ]
    for cost, putted, green, steps in ways:
        more = found.putts - putted
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


def _putted_on(chain: Step | None) -> bool:
    """Whether the ball came to the green by a putt from off it."""
    while chain is not None and chain.draft.shape == "putt":
        if chain.lie != "green":
            return True
        chain = chain.before
    return False


def updown(ball: Ball, found: Draft, chain: Step | None) -> Moves:
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


def onto_green(ball: Ball, chain: Step | None, fringe: bool) -> Moves:
    """The ball on the green, or on the fringe where a putter may be used, at the cost of what is not told."""
    if ball.lie == "green" or (ball.lie == "fringe" and fringe):
        yield 0.0, ball, chain
    if ball.lie == "unknown" and chain is not None and chain.draft.result not in PENALTIES:
        yield -0.5, Ball("green", ball.strokes), come_to_green(chain)
    if ball.lie not in ("green", "holed"):
        blank = unheard(next_cue(chain), "green", False)
        cost = -5.0 if ball.lie == "tee" else -2.4
        yield cost, *played(ball, blank, chain, told=False)


def holed_out(ball: Ball, chain: Step | None, cues: Sequence[Cue]) -> Moves:
    if ball.lie == "holed" or chain is None:
        yield 0.0, ball, chain
        return
    told = chain.draft
    length = lies_at(cues, told.first, told.last, told.shape == "putt")
    for cost, green, steps in onto_green(ball, chain, False):
        after = green
        for putts, odds in untold(length, green.putts):
            at = next_cue(steps)
            yield cost + odds, *played(after, unheard(at, "holed", True), steps, told=False)
            if putts == 3:
                break
            after, steps = played(after, unheard(at, "green", True), steps, told=False)


def afterwards(ball: Ball, found: Draft, chain: Step | None) -> Moves:
    """The hole is over: talk may sum it up, nothing is played."""
    if found.family == "tally":
        yield (1.2 if found.putts == ball.putts else -1.0), ball, chain
    elif found.family in ("updown", "tap", "putt_or_swing"):
        yield 0.2, ball, chain

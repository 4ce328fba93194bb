"""Any walk of corrections leaves a sound round, and taking all of them back leaves the reading."""

from __future__ import annotations

from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st
from support.corrections import READING, made

from reviewkit.errors import ValueRuleError
from reviewkit.log import amend_make as make
from reviewkit.log.amend_apply import apply
from reviewkit.log.amend_fields import CHOICES
from reviewkit.log.amendments import Correction
from reviewkit.model import Round


@st.composite
def walks(draw: st.DrawFn) -> list[Correction]:
    """Corrections that a person could make one after the other, each seeing what the last one left."""
    done: list[Correction] = []
    for _ in range(draw(st.integers(1, 9))):
        seen, _ = apply(READING, made(*done))
        try:
            done.append(_step(draw, seen))
        except ValueRuleError:
            continue
    return done


def _step(draw: st.DrawFn, seen: Round) -> Correction:
    holes = [score.hole for score in seen.scores] or [1]
    hole = draw(st.sampled_from(holes))
    strokes = [shot.stroke for shot in seen.shots if shot.hole == hole] or [1]
    stroke = draw(st.sampled_from(strokes))
    moment = round(draw(st.floats(0, 100)), 2)
    field = draw(st.sampled_from(sorted(CHOICES)))
    word = draw(st.sampled_from(("", *CHOICES[field])))
    number = str(draw(st.integers(0, 5)))
    name = draw(st.sampled_from(("strokes", "par", "hole", "putts")))
    makers = (
        lambda: make.change(seen, hole, stroke, field, word),
        lambda: make.change(seen, hole, stroke, "penalty_strokes", number),
        lambda: make.change(seen, hole, None, name, number),
        lambda: make.change(seen, hole, None, "start_s", str(moment)),
        lambda: make.accept(seen, hole, draw(st.sampled_from((None, stroke)))),
        lambda: make.add(seen, hole, stroke + 1, moment, {"kind": "putt", field: word or "putt"}),
        lambda: make.delete(seen, hole, draw(st.sampled_from((None, stroke, stroke)))),
        lambda: make.move(seen, hole, stroke, draw(st.sampled_from(holes)), draw(st.integers(1, 5))),
        lambda: make.split(seen, draw(st.integers(1, 6)), moment, {"par": "4"}),
        lambda: make.merge(seen, hole, draw(st.sampled_from(holes))),
    )
    return draw(st.sampled_from(makers))()


def sound(shown: Round) -> None:
    holes = [score.hole for score in shown.scores]
    assert len(set(holes)) == len(holes), "each hole stands once"
    assert [score.play_order for score in shown.scores] == list(range(1, len(holes) + 1))
    assert {shot.hole for shot in shown.shots} <= set(holes)
    for score, following in zip(shown.scores, shown.scores[1:], strict=False):
        assert score.start_s <= score.end_s <= following.start_s + 0.001
    running: int | None = 0
    for score in shown.scores:
        here = [shot for shot in shown.shots if shot.hole == score.hole]
        number = 1
        for shot in here:
            assert shot.stroke == number
            number += 1 + shot.penalty_strokes
        known = score.strokes is not None and score.par is not None
        running = running + score.strokes - score.par if known and running is not None else None  # type: ignore[operator]
        assert score.running_to_par == running


@given(walks())
def test_any_walk_leaves_a_sound_round_and_can_be_taken_back(walk: Sequence[Correction]) -> None:
    shown, clashes = apply(READING, made(*walk))
    sound(shown)
    assert clashes == (), "a person who sees what he corrects clashes with nothing"
    backwards = [make.undo(number) for number in range(len(walk), 0, -1)]
    assert apply(READING, made(*walk, *backwards)) == (READING, ())


@given(walks())
def test_any_walk_survives_a_reading_that_heard_less(walk: Sequence[Correction]) -> None:
    shots = READING.shots[:2] + READING.shots[4:7]
    less = Round(READING.scores, shots, READING.doubts)
    sound(apply(less, made(*walk))[0])

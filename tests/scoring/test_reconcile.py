"""One reading of the round: claims outvote a broken tale, slips are outvoted, and doubt is told."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from reviewkit.model import Card, CardHole, HoleTale, Plan
from reviewkit.model.fact import HoleFact
from reviewkit.reasoning import reason
from reviewkit.scoring import Reconciled, reconcile
from tests.scoring.rounds import said, tale
from tests.support.narrations import GREETING, transcript

UNSURE = {4: 0.45, 5: 0.45, 6: 0.1}
AFTER = "Hole two, a par 4. Driver, fairway. 9 iron on, two putts."


def scores(found: Reconciled) -> list[int | None]:
    return [score.strokes for score in found.scores]


def test_a_plain_round_is_read_as_told_and_sure() -> None:
    found = reconcile(
        [tale(1, {4: 0.9, 5: 0.1}), tale(2, {5: 0.9, 4: 0.1}), tale(3, {3: 0.95, 4: 0.05}, par=3)], Plan()
    )
    assert scores(found) == [4, 5, 3]
    assert [score.running_to_par for score in found.scores] == [0, 1, 1]
    assert [score.to_par for score in found.scores] == [0, 1, 0]


@pytest.mark.parametrize(
    ("mentions", "strokes"),
    [
        ([said("score_word", 0)], 4),
        ([said("score_word", 1)], 5),
        ([said("strokes", 6)], 6),
        ([said("hole_to_par", 2)], 6),
        ([said("running", 1)], 5),
        ([said("total", 5)], 5),
        ([said("strokes", 5, mood="other")], None),
        ([said("strokes", 6, mood="plan")], None),
    ],
)
def test_each_kind_of_claim_settles_an_unsure_tale(mentions: list, strokes: int | None) -> None:
    found = reconcile([tale(1, UNSURE, mentions=mentions)], Plan())
    if strokes is None:
        assert found.scores[0].status == "check" and found.scores[0].confidence < 0.6
    else:
        assert found.scores[0].strokes == strokes
        assert found.scores[0].confidence > 0.7


def test_words_settle_the_par_that_nobody_names() -> None:
    found = reconcile(
        [tale(1, {5: 0.6, 4: 0.4}, par=None, mentions=[said("strokes", 5), said("score_word", 0)])], Plan()
    )
    assert (found.scores[0].par, found.scores[0].strokes) == (5, 5)


def test_a_count_adds_the_strokes_told_after_it() -> None:
    # "Lying three" as the third of five strokes begins: two more are told, so five.
    lying = said("count", 3, share=0.35, unit="lying")
    hitting = said("count", 4, share=0.42, unit="hitting")
    for mention in (lying, hitting):
        found = reconcile([tale(1, UNSURE, mentions=[mention], told=5)], Plan())
        assert found.scores[0].strokes == 5


@pytest.mark.parametrize("share", [0.02, 0.97])
def test_a_standing_said_on_the_tee_is_that_before_the_hole(share: float) -> None:
    """ "Two over" on the tee is the hole before's; after holing out it counts this hole too."""
    holes = [
        tale(1, {4: 0.34, 5: 0.33, 6: 0.33}),
        tale(2, {4: 0.5, 5: 0.5}, mentions=[said("running", 2, share, hole=2)]),
        tale(3, {4: 1.0}),
    ]
    found = reconcile(holes, Plan())
    if share < 0.5:
        assert scores(found)[0] == 6
    else:
        assert found.scores[1].running_to_par == 2


def test_a_standing_with_two_to_play_is_read_at_its_hole() -> None:
    holes = [tale(k, {4: 1.0}) for k in range(1, 7)]
    holes.append(
        tale(7, UNSURE, mentions=[said("running", 1, 0.97, hole=7), said("to_play", 2, 0.98, hole=7)])
    )
    holes += [tale(8, {4: 1.0}), tale(9, {4: 1.0})]
    found = reconcile(holes, Plan())
    assert scores(found)[6] == 5


def test_a_score_told_on_the_next_tee_is_shared_by_how_it_fits() -> None:
    late = [
        tale(1, {6: 0.4, 7: 0.6}),
        tale(2, {3: 0.55, 4: 0.45}, mentions=[said("strokes", 7, 0.02, hole=2)]),
    ]
    assert scores(reconcile(late, Plan()))[0] == 7
    # a speaker who gives the number first: it fits the hole that follows
    first = [tale(1, {4: 1.0}), tale(2, {6: 0.55, 7: 0.45}, mentions=[said("strokes", 7, 0.02, hole=2)])]
    assert scores(reconcile(first, Plan())) == [4, 7]


def test_a_slip_is_outvoted_and_reported() -> None:
    """As told in one round of the kind: "that's four over", then "I said four over, and it's three"."""
    holes = [
        tale(1, {6: 0.95, 5: 0.05}, mentions=[said("running", 2, hole=1), said("strokes", 6, hole=1)]),
        tale(2, {4: 0.95, 5: 0.05}, mentions=[said("running", 3, hole=2), said("score_word", 0, hole=2)]),
        tale(3, {4: 0.95, 5: 0.05}, mentions=[said("running", 2, hole=3), said("score_word", 0, hole=3)]),
    ]
    found = reconcile(holes, Plan())
    assert scores(found) == [6, 4, 4]
    doubts = [doubt for doubt in found.doubts if doubt.field == "running_to_par"]
    assert [doubt.hole for doubt in doubts] == [2]
    assert "running 3" in doubts[0].words and "+2" in doubts[0].text


def test_nine_totals_and_par_of_the_course_are_checksums() -> None:
    rest = [tale(k, {4: 0.97, 5: 0.03}, mentions=[said("score_word", 0, hole=k)]) for k in range(1, 9)]
    ninth = tale(9, UNSURE, mentions=[said("nine", 38, hole=9, unit="front")])
    assert scores(reconcile([*rest, ninth], Plan()))[8] == 6
    unknown = tale(9, {5: 1.0}, par=None, mentions=[said("par_total", 37, hole=9)])
    assert reconcile([*rest, unknown], Plan()).scores[8].par == 5


def test_a_home_nine_is_read_on_the_first_nine() -> None:
    holes = [tale(k, {4: 1.0}) for k in range(1, 18)]
    last = tale(18, UNSURE, mentions=[said("nine", 37, hole=18, unit="back")])
    assert scores(reconcile([*holes, last], Plan()))[17] == 5


def test_a_hole_that_the_talk_skips_does_not_break_the_sums() -> None:
    holes = [
        tale(1, {4: 1.0}, mentions=[said("running", 0)]),
        tale(3, {4: 0.9, 5: 0.1}, mentions=[said("running", 2, hole=3), said("score_word", 0, hole=3)]),
    ]
    found = reconcile(holes, Plan())
    assert [score.hole for score in found.scores] == [1, 3]
    assert found.scores[1].strokes == 4 and found.scores[1].running_to_par == 2


def test_what_a_person_settled_is_certain_and_spreads() -> None:
    holes = [tale(1, {4: 0.5, 5: 0.5}), tale(2, {4: 0.5, 5: 0.5}, mentions=[said("running", 1, hole=2)])]
    found = reconcile(holes, Plan(), {1: [HoleFact(1, 10.0, "strokes", 9.0), HoleFact(1, 10.0, "par", 5.0)]})
    assert (found.scores[0].par, found.scores[0].strokes, found.scores[0].confidence) == (5, 9, 1.0)
    assert found.scores[0].status == "sure"


def test_an_unsure_score_offers_the_others() -> None:
    found = reconcile([tale(1, {4: 0.5, 5: 0.5})], Plan())
    doubt = next(doubt for doubt in found.doubts if doubt.field == "strokes")
    assert found.scores[0].status == "check" and doubt.alternatives
    assert str(found.scores[0].strokes) not in doubt.alternatives


@pytest.mark.parametrize(("other", "sure"), [({5: 1.0}, False), ({4: 1.0}, True)])
def test_another_start_lowers_the_confidence_where_it_tells_another_score(
    other: dict[int, float], sure: bool
) -> None:
    told = tale(1, {4: 1.0}, probability=0.25)
    found = reconcile([replace(told, others=((0.75, tale(1, other)),))], Plan())
    assert found.scores[0].strokes == 4 and (found.scores[0].confidence > 0.75) is sure
    assert found.scores[0].status == "check", "where the hole starts is worth a look either way"
    assert any(doubt.field == "start_s" for doubt in found.doubts)


def test_a_hole_that_may_not_be_there_is_not_sure() -> None:
    told = tale(1, {4: 1.0})
    found = reconcile([replace(told, span=replace(told.span, played=0.3))], Plan())
    assert found.scores[0].status == "check"


def test_no_holes_make_no_scores() -> None:
    assert reconcile([], Plan()) == Reconciled((), ())


def test_a_card_in_play_order_of_a_shotgun_start() -> None:
    holes = [tale(k, {4: 1.0}) for k in range(1, 4)]
    plan = Plan(Card((CardHole(1, 4), CardHole(2, 4), CardHole(3, 4))), order=(1, 2, 3))
    assert scores(reconcile(holes, plan)) == [4, 4, 4]


def simulated(random: np.random.Generator, count: int = 9) -> tuple[list[HoleTale], list[int]]:
    """A round with a tale right three times in four, and claims right nineteen times in twenty."""
    holes, truth, running = [], [], 0
    for hole in range(1, count + 1):
        par = int(random.choice([3, 4, 4, 4, 5]))
        score = par + int(random.choice([-1, 0, 0, 0, 1, 1, 2]))
        running += score - par
        heard = score if random.random() < 0.75 else max(1, score + int(random.choice([-1, 1])))
        counts = {heard: 0.75, heard + 1: 0.125, max(1, heard - 1): 0.125}
        mentions = []
        if random.random() < 0.6:
            word = score - par if random.random() < 0.95 else score - par + 1
            mentions.append(said("score_word", word, 0.9, hole))
        if random.random() < 0.5:
            mentions.append(said("running", running if random.random() < 0.95 else running + 1, 0.95, hole))
        holes.append(tale(hole, counts, par, mentions))
        truth.append(score)
    return holes, truth


def test_confidence_is_calibrated_and_noise_is_overcome() -> None:
    random = np.random.default_rng(7)
    told, right = [], []
    for _ in range(120):
        holes, truth = simulated(random)
        for score, true in zip(reconcile(holes, Plan()).scores, truth, strict=True):
            told.append(score.confidence)
            right.append(score.strokes == true)
    confidence, hits = np.array(told), np.array(right)
    assert hits.mean() > 0.9, "three tales in four are right before the claims are joined"
    assert abs(confidence.mean() - hits.mean()) < 0.03
    for low, high in ((0.5, 0.9), (0.9, 0.99), (0.99, 1.01)):
        among = (confidence >= low) & (confidence < high)
        assert abs(confidence[among].mean() - hits[among].mean()) < 0.1, (low, high, among.sum())


def test_a_score_that_the_words_go_against_must_be_surer() -> None:
    told = {4: 0.91, 5: 0.09}
    (against,) = reconcile([tale(1, told, mentions=[said("strokes", 5, weight=0.45)])], Plan()).scores
    (alone,) = reconcile([tale(1, {4: 0.8, 5: 0.2})], Plan()).scores
    assert against.strokes == alone.strokes == 4
    assert 0.8 < against.confidence < 0.92 and against.status == "check"
    assert 0.8 < alone.confidence < 0.92 and alone.status == "sure"


@pytest.mark.parametrize(("weight", "status"), [(0.5, "check"), (0.4, "sure")])
def test_a_score_that_makes_a_standing_wrong_must_be_surer_yet(weight: float, status: str) -> None:
    """ "One over" behind a par: the one or the other was misheard, and which is for a person to say."""
    told = said("running", 1, weight=weight)
    (score,) = reconcile([tale(1, {4: 0.98, 5: 0.02}, mentions=[told])], Plan()).scores
    assert score.strokes == 4 and 0.96 < score.confidence < 0.99 and score.status == status


@pytest.mark.parametrize(
    ("share", "strokes"),
    [
        (0.5, 4),  # "it's a six": an iron, with strokes to come
        (0.95, 6),  # after the ball was holed
    ],
)
def test_a_number_told_while_strokes_are_to_come_is_seldom_the_score(share: float, strokes: int) -> None:
    told = said("strokes", 6, share)
    found = reconcile([tale(1, {4: 0.6, 6: 0.3, 5: 0.1}, mentions=[told], told=6)], Plan())
    assert scores(found) == [strokes]


def test_a_number_by_itself_after_the_last_stroke_is_the_score() -> None:
    """ "Three feet, firm. Three." counts no stroke to come."""
    alone = replace(said("count", 3, weight=0.4), unit="hitting", rule="a number by itself")
    found = reconcile([tale(1, {4: 0.5, 3: 0.4, 5: 0.1}, par=3, mentions=[alone])], Plan())
    assert scores(found) == [3]


def test_what_a_putt_was_for_told_before_the_first_stroke_is_the_score() -> None:
    """ "Two putts from twenty foot for a three. And before that an eight-iron": nobody putts on a tee."""
    told = said("putt_for", 3, 0.02, unit="strokes", weight=0.8)
    found = reconcile([tale(1, {4: 0.5, 3: 0.4, 5: 0.1}, par=3, mentions=[told])], Plan())
    assert scores(found) == [3]


@pytest.mark.parametrize(("score_first", "strokes"), [(True, 2), (False, 3)])
def test_a_number_that_opens_a_hole_is_the_score_where_the_round_is_told_so(
    score_first: bool, strokes: int
) -> None:
    """ "Two! Did you hear that? Two!" """
    alone = replace(said("count", 2, 0.02, weight=0.4), unit="hitting", rule="a number by itself")
    hole = tale(1, {3: 0.6, 2: 0.4}, par=3, mentions=[alone])
    hole = replace(hole, span=replace(hole.span, score_first=score_first))
    assert scores(reconcile([hole], Plan())) == [strokes]


@pytest.mark.parametrize(("par_too", "strokes"), [(True, 4), (False, 3)])
def test_a_number_on_the_tee_that_may_be_the_par_is_seldom_the_score(par_too: bool, strokes: int) -> None:
    """ "Sixth. It's a three, and there's a pot bunker": three is its par."""
    told = [said("strokes", 3, 0.02), *([said("par", 3, 0.02, weight=0.5)] if par_too else [])]
    found = reconcile([tale(1, {4: 0.7, 3: 0.2, 5: 0.1}, par=3, mentions=told)], Plan())
    assert scores(found) == [strokes]


@pytest.mark.parametrize(("shares", "strokes"), [((0.95, 0.97), 4), ((0.97, 0.95), 5)])
def test_of_two_standings_after_the_last_stroke_the_later_counts(
    shares: tuple[float, float], strokes: int
) -> None:
    """ "So I'm still one over. What? Oh, I'm level." """
    told = [said("running", 1, shares[0]), said("running", 0, shares[1])]
    told.sort(key=lambda mention: mention.first)
    found = reconcile([tale(1, {4: 0.5, 5: 0.5}, mentions=told)], Plan())
    assert scores(found) == [strokes]


def test_a_standing_put_behind_at_a_holes_end_is_that_before_it() -> None:
    """ "He says I was six over walking off there. So now I'm five over." """
    told = [said("running", 2, 0.95, hole=2), said("stood", 1, 0.95, hole=2)]
    told.append(said("running", 1, 0.98, hole=2))
    holes = [tale(1, {5: 0.55, 6: 0.45}), tale(2, {3: 0.9, 4: 0.1}, mentions=told)]
    assert scores(reconcile(holes, Plan())) == [6, 3]


def test_a_standing_told_from_where_to_where_tells_the_hole() -> None:
    """ "So I've gone from one over to three over." """
    told = [said("stood_at", 1, 0.95, hole=2), said("running", 3, 0.97, hole=2)]
    holes = [tale(1, {5: 0.5, 6: 0.5}), tale(2, {6: 0.5, 5: 0.5}, mentions=told)]
    assert scores(reconcile(holes, Plan())) == [5, 6]


@pytest.mark.parametrize(("given", "strokes"), [(0, 4), (1, 5)])
def test_points_are_read_by_the_strokes_that_the_other_holes_show_as_given(given: int, strokes: int) -> None:
    """ "Two points" is a bogey for a player who has a stroke on every hole."""
    known = [tale(h, {4: 0.98, 5: 0.02}, mentions=[said("points", 2 + given, hole=h)]) for h in range(1, 6)]
    unsure = tale(6, {4: 0.5, 5: 0.5}, mentions=[said("points", 2, hole=6)])
    assert scores(reconcile([*known, unsure], Plan()))[-1] == strokes


@pytest.mark.parametrize(
    ("told", "strokes"),
    [
        ("Driver, fairway. I made a seven.", 7),
        ("Driver, fairway. Nine iron on the green. I made a six.", 6),
        # One that is told to its end says more than a slip of the tongue.
        ("Driver, fairway. Nine iron on the green, ten feet. Missed it, tapped in. Seven.", 4),
    ],
)
def test_a_tale_that_tells_little_yields_to_the_score(told: str, strokes: int) -> None:
    lines = [GREETING, "", "Hole one, a par five, 505.", told, "", AFTER]
    assert reason(transcript(lines), Plan()).scores[0].strokes == strokes


def test_a_score_of_which_no_stroke_is_told_is_the_score() -> None:
    lines = [GREETING, "", "Hole one, a par five, 505.", "I made a seven.", "", AFTER]
    found = reason(transcript(lines), Plan()).scores[0]
    assert found.strokes == 7 and found.confidence > 0.5

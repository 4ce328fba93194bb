"""The odds against two other ways to them: counting every outcome, and simulation."""

from __future__ import annotations

import itertools
from collections import Counter
from pathlib import Path

import numpy as np
import pytest
from support.truth import load, save_truth, truth_files

from reviewkit.model import Card, CardHole, HoleScore, Plan
from reviewkit.stats.odds import hole_spread, odds_of, prior, prior_tilt, round_spread, target_odds
from reviewkit.stats.play import Hole, Play

SCORES = Counter({(3, 0): 9, (3, 2): 1, (4, -1): 4, (4, 0): 20, (4, 5): 1, (5, -1): 6, (5, 0): 4})


def outcomes(par: int, tilt: float = 0.0) -> dict[int, float]:
    """The smoothed chances of one hole, from the prior's rows and the counts alone."""
    raw = {over: share * np.exp(tilt * over) for over, share in prior(par).items()}
    weights = {over: 10 * share / sum(raw.values()) for over, share in raw.items()}
    for (own, over), times in SCORES.items():
        if own == par:
            weights[over] = weights.get(over, 0) + times
    return {over: weight / sum(weights.values()) for over, weight in weights.items()}


@pytest.mark.parametrize("pars", [(3,), (4, 5), (3, 4, 4, 5), (5, 4, 3, 3, 4)], ids=str)
@pytest.mark.parametrize("target", [-9, -2, 0, 3, 99])
def test_odds_equal_counting_every_outcome(pars: tuple[int, ...], target: int) -> None:
    brute = 0.0
    for scores in itertools.product(*(outcomes(par).items() for par in pars)):
        if sum(over for over, _ in scores) <= target:
            brute += float(np.prod([chance for _, chance in scores]))
    assert round_spread(pars, SCORES).at_most(target) == pytest.approx(brute, abs=1e-12)


def test_odds_agree_with_simulation() -> None:
    pars = [4, 4, 3, 5, 4, 4, 3, 4, 5] * 2
    rng = np.random.default_rng(5)
    n = 200_000
    total = np.zeros(n, dtype=int)
    for par in pars:
        chances = outcomes(par)
        total += rng.choice(list(chances), p=list(chances.values()), size=n)
    spread = round_spread(pars, SCORES)
    for target in (-4, 0, 5, 10):
        share = (total <= target).mean()
        error = np.sqrt(max(share * (1 - share), 1e-6) / n)
        assert abs(spread.at_most(target) - share) < 4 * error
    assert spread.mean == pytest.approx(total.mean(), abs=4 * total.std() / np.sqrt(n))


def test_prior_is_a_distribution_and_own_scores_outweigh_it() -> None:
    for par in (3, 4, 5, 6):
        assert sum(prior(par).values()) == pytest.approx(1, abs=1e-12)
    many = hole_spread(4, {(4, 0): 100_000})
    assert many.chances[-many.low] == pytest.approx(1, abs=1e-3)
    assert hole_spread(None, SCORES).chances.sum() == pytest.approx(1, abs=1e-12)


@pytest.mark.parametrize("path", truth_files(), ids=lambda path: path.parent.name)
def test_a_finished_round_ends_sure(path: Path, tmp_path: Path) -> None:
    truth = load(path)
    rows = target_odds(save_truth(path, tmp_path / "round"))
    if truth["target"] is None:
        assert rows == ()
        return
    reached = sum(hole["to_par"] for hole in truth["holes"]) <= truth["target"]
    assert rows[-1].probability == pytest.approx(float(reached), abs=1e-12)
    assert [row.to_par for row in rows[1:]] == [hole["running_to_par"] for hole in truth["holes"]]
    assert all(0 <= row.probability <= 1 for row in rows)


def test_an_unfinished_round_counts_the_holes_to_come() -> None:
    """Two of three planned holes played, one of them without a known score: by hand from the chances."""
    card = Card((CardHole(1, 4), CardHole(2, 3), CardHole(3, 5)))
    holes = (
        Hole(HoleScore(1, 1, 0, 0, par=4, strokes=5), ()),
        Hole(HoleScore(2, 2, 0, 0, par=3), ()),
    )
    rows = odds_of(Play("made", holes, Plan(card, (1, 2, 3), target=1)), SCORES)
    assert round_spread((4, 3, 5), {}, prior_tilt((4, 3, 5), 1)).mean == pytest.approx(1.5, abs=1e-4)
    tilt = prior_tilt((4, 3, 5), 1)
    par3, par5 = outcomes(3, tilt), outcomes(5, tilt)
    by_hand = sum(a * b for (i, a), (j, b) in itertools.product(par3.items(), par5.items()) if 1 + i + j <= 1)
    assert rows[-1].probability == pytest.approx(by_hand, abs=1e-12)
    assert rows[-1].to_par is None
    assert rows[1].to_par == 1


def test_a_round_without_holes_keeps_the_first_row() -> None:
    rows = odds_of(Play("made", (), Plan(order=(1, 2), target=0)), {})
    assert len(rows) == 1
    assert 0 < rows[0].probability < 1

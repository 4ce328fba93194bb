"""Strokes gained: published arithmetic, the sum over a hole, and intervals that mean what they say."""

from __future__ import annotations

import csv
from collections import defaultdict
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from support.truth import load, save_truth, truth_files

from reviewkit.model import HoleScore, Plan, Shot
from reviewkit.model.values import CONTACTS, KINDS, LIES, RESULTS
from reviewkit.stats.benchmark import expected, table_rows
from reviewkit.stats.gained import StrokesGained, gained_of
from reviewkit.stats.play import Hole, Play, play_of

VECTORS = list(csv.DictReader((Path(__file__).parent / "sg_test_vectors.csv").open(encoding="utf-8")))


@pytest.fixture(scope="module")
def plays(tmp_path_factory: pytest.TempPathFactory) -> list[Play]:
    made = tmp_path_factory.mktemp("rounds")
    return [play_of(save_truth(path, made / load(path)["id"])) for path in truth_files()]


# Worked by hand from the published table (cases A and B); case C is a tour's own explanatory example, whose
# expectations are its own, so that only the subtraction is checked. Values marked from memory stay so.
@pytest.mark.parametrize("row", VECTORS, ids=lambda row: f"{row['case']}{row['shot']}")
def test_worked_examples(row: dict[str, str]) -> None:
    before, after = float(row["E_from"]), float(row["E_to"])
    if row["case"] != "C":
        assert at(row["from"]) == pytest.approx(before, abs=1e-9)
        assert at(row["to"]) == pytest.approx(after, abs=1e-9)
    assert before - after - int(row["strokes_charged"]) == pytest.approx(float(row["sg"]), abs=1e-9)


def at(spot: str) -> float:
    """Benchmark of "tee 400 yd" or "green 6 ft"; 0 when holed."""
    if spot == "holed":
        return 0.0
    lie, distance, unit = spot.split(" (")[0].split()
    return float(expected(lie, float(distance) / (3 if unit == "ft" else 1)))


def test_worked_example_as_a_round() -> None:
    shots = (
        Shot(1, 1, 0, 0, "tee", lie="tee", distance_yd=400, result="fairway"),
        Shot(1, 2, 0, 0, "approach", lie="fairway", distance_yd=150, result="sand"),
        Shot(1, 3, 0, 0, "bunker", lie="sand", distance_yd=15, result="green"),
        Shot(1, 4, 0, 0, "putt", lie="green", distance_yd=2, result="holed", holed=True),
    )
    gained = gained_of(play(Hole(HoleScore(1, 1, 0, 0, par=4, strokes=4), shots)))
    wanted = [float(row["sg"]) for row in VECTORS if row["case"] == "A"]
    assert [stroke.mean for stroke in gained.strokes] == pytest.approx(wanted, abs=1e-9)
    assert [stroke.category for stroke in gained.strokes] == [
        "off the tee",
        "approach",
        "around the green",
        "putting",
    ]
    assert all(stroke.exact and stroke.low == stroke.high for stroke in gained.strokes)


def test_out_of_bounds_costs_two_wherever_the_tee_is() -> None:
    shots = (
        Shot(1, 1, 0, 0, "tee", lie="tee", result="ob", penalty_strokes=1),
        Shot(1, 3, 0, 0, "tee", lie="tee", result="holed", holed=True),
    )
    gained = gained_of(play(Hole(HoleScore(1, 1, 0, 0, par=4, strokes=3), shots)))
    assert gained.strokes[0].mean == pytest.approx(-2.0, abs=1e-12)
    assert gained.strokes[0].exact


# Points of the putting table relayed by others than its author's book: the Putts Gained note (33 ft) and
# R. Minton's companion page (8.5 ft), as cited in the table's own rows.
@pytest.mark.parametrize(
    "row", [row for row in table_rows("strokes_gained_benchmark.csv") if row["from_memory"] == "no"]
)
def test_the_putting_table_agrees_with_relayed_points(row: dict[str, str]) -> None:
    assert at(f"green {row['distance']} ft") == pytest.approx(float(row["expected_strokes"]), abs=0.01)


def test_dips_of_the_published_table_are_kept() -> None:
    assert expected("tee", 140) < expected("tee", 120)
    assert expected("sand", 120) < expected("sand", 90)
    assert expected("trees", 120) < expected("trees", 80)


def telescopes(gained: StrokesGained) -> None:
    sums: dict[int, float] = defaultdict(float)
    for stroke in gained.strokes:
        sums[stroke.hole] += stroke.mean
        assert stroke.low <= stroke.high
    for hole in gained.holes:
        assert sums[hole.hole] == pytest.approx(hole.benchmark - hole.score, abs=1e-9)
        assert hole.mean == pytest.approx(hole.benchmark - hole.score, abs=1e-9)
    total = sum(skill.mean for skill in gained.categories)
    assert total == pytest.approx(gained.total.mean, abs=1e-9)


def test_sums_over_holes_are_benchmark_minus_score(plays: list[Play]) -> None:
    for one in plays:
        gained = gained_of(one)
        telescopes(gained)
        assert len(gained.holes) == len(one.holes)
        assert [hole.score for hole in gained.holes] == [hole.score.strokes for hole in one.holes]


@st.composite
def rounds(draw: st.DrawFn) -> Play:
    """Rounds as bad as a log can be: strokes missing, out of count, untold, holes without scores."""
    holes = []
    for number in range(1, draw(st.integers(0, 3)) + 1):
        score = draw(st.one_of(st.none(), st.integers(1, 12)))
        strokes = sorted(draw(st.sets(st.integers(1, 12), max_size=8)))
        shots = tuple(
            Shot(
                number,
                stroke,
                0.0,
                0.0,
                draw(st.sampled_from(KINDS)),
                lie=draw(st.sampled_from(("", *LIES))),
                distance_yd=draw(st.one_of(st.none(), st.floats(0, 650))),
                result=draw(st.sampled_from(RESULTS)),
                contact=draw(st.sampled_from(("", *CONTACTS))),
                penalty_strokes=draw(st.sampled_from((0, 0, 0, 1, 2))),
                holed=draw(st.booleans()),
            )
            for stroke in strokes
        )
        par = draw(st.one_of(st.none(), st.integers(3, 6)))
        putts = draw(st.one_of(st.none(), st.integers(0, 4)))
        holes.append(Hole(HoleScore(number, number, 0, 0, par=par, strokes=score, putts=putts), shots))
    return play(*holes)


@given(rounds())
def test_the_sum_holds_whatever_is_missing(one: Play) -> None:
    gained = gained_of(one)
    telescopes(gained)
    unscored = {h.number for h in one.holes if h.score.strokes is None}
    assert set(gained.left_out) <= unscored


def test_intervals_cover_what_full_information_says(plays: list[Play]) -> None:
    """Told distances hidden at random: the 80 % interval holds the full value in 75 to 90 % of strokes."""
    rng = np.random.default_rng(11)
    inside = []
    for one in plays:
        full = {(s.hole, s.stroke): s for s in gained_of(one).strokes}
        for share in (0.3, 0.6):
            for stroke in gained_of(hidden(one, share, rng)).strokes:
                known = full[stroke.hole, stroke.stroke]
                if known.exact and not stroke.exact:
                    inside.append(stroke.low - 1e-9 <= known.mean <= stroke.high + 1e-9)
    if len(inside) < 200:
        pytest.skip(f"only {len(inside)} hidden strokes: the evaluation rounds are not beside the checkout")
    print(f"coverage {np.mean(inside):.3f} of {len(inside)} strokes")
    assert 0.75 <= np.mean(inside) <= 0.90


def hidden(one: Play, share: float, rng: np.random.Generator) -> Play:
    def blank(shot: Shot) -> Shot:
        return replace(shot, distance_yd=None) if rng.random() < share else shot

    return replace(one, holes=tuple(replace(h, shots=tuple(map(blank, h.shots))) for h in one.holes))


def play(*holes: Hole) -> Play:
    return Play("made", holes, Plan())

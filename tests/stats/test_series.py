"""A series against one-liners over its rounds, and its stored summaries."""

from __future__ import annotations

import resource
import shutil
from dataclasses import replace
from pathlib import Path

import numpy as np
import pandas as pd
import pytest
from scipy import stats as scipy_stats
from support.truth import load, save_truth, truth_files

from reviewkit.log import open_round
from reviewkit.stats import gained_of, play_of, series
from reviewkit.stats.improve import lowered
from reviewkit.stats.odds import hole_spread
from reviewkit.stats.series import Series, series_of
from reviewkit.stats.stored import NAME, round_folders, summaries
from reviewkit.stats.stored import load as load_store
from reviewkit.stats.summary import summary_of


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("series")
    for path in truth_files():
        save_truth(path, made / load(path)["id"])
    return made


@pytest.fixture(scope="module")
def found(place: Path) -> Series:
    return series(open_round(path) for path in round_folders([place]))


def test_what_recurs_equals_an_independent_count(place: Path, found: Series) -> None:
    shots = pd.concat([open_round(path).shots.assign(round=path.name) for path in round_folders([place])])
    misses = shots[shots.club.notna() & shots.miss.notna()].groupby(["club", "miss"])
    wanted = {
        key: (rows["round"].nunique(), len(rows)) for key, rows in misses if rows["round"].nunique() > 1
    }
    sides = {"left", "right", "long", "short"}
    kinds = set(shots.kind)
    told = {
        (r.club, r.fault): (r.rounds, r.times)
        for r in found.recurring
        if r.fault in sides and r.club not in kinds
    }
    assert told == wanted


def test_practice_is_the_mean_loss_on_eighteen_holes(place: Path, found: Series) -> None:
    gains = [gained_of(play_of(open_round(path))) for path in round_folders([place])]
    for line in found.practice:
        losses = [
            -sum(s.mean for s in one.strokes if s.category == line.category) * 18 / len(one.holes)
            for one in gains
        ]
        assert line.lost == pytest.approx(np.mean(losses), abs=1e-9)
        if len(losses) > 1:
            low, high = scipy_stats.t.interval(0.8, len(losses) - 1, np.mean(losses), scipy_stats.sem(losses))
            assert (line.low, line.high) == pytest.approx((low, high), abs=1e-9)
    assert [line.lost for line in found.practice] == sorted((p.lost for p in found.practice), reverse=True)


def test_doubling_doubles(found: Series) -> None:
    hard = series_of(replace(summary, target=-3) for summary in found.rounds)
    assert hard.next_round is not None
    assert any(line.strokes is not None for line in hard.next_round.doublings)
    for line in hard.next_round.doublings:
        if line.strokes is not None:
            assert line.chance == pytest.approx(2 * hard.next_round.chance, rel=1e-3)


def test_lowering_a_spread_lowers_its_mean_by_as_much() -> None:
    spread = hole_spread(4, {(4, 0): 12, (4, 1): 9})
    for strokes in (0.0, 0.1, 0.5):
        assert lowered(spread, strokes).mean == pytest.approx(spread.mean - strokes, abs=1e-6)
        assert lowered(spread, strokes).chances.sum() == pytest.approx(1)


def test_rounds_stand_by_when_they_were_recorded(found: Series) -> None:
    dated = [
        replace(summary, played_at=f"2026-05-{30 - place:02d}T08:00:00")
        for place, summary in enumerate(found.rounds)
    ]
    assert series_of(dated).rounds == tuple(reversed(dated))
    undated = [*dated[:-1], replace(dated[-1], played_at="")]
    assert series_of(undated).rounds == tuple(undated)


def test_no_rounds_and_empty_rounds(tmp_path: Path) -> None:
    assert series_of([]) == Series((), (), (), (), None)
    folder = save_truth(truth_files()[0], tmp_path / "round")
    for table in (folder.holes_csv, folder.shots_csv):
        table.write_text(table.read_text(encoding="utf-8").splitlines()[0] + "\n", encoding="utf-8")
    empty = series_of([summary_of(play_of(open_round(folder.path)))])
    assert empty.rounds[0].score is None
    assert empty.practice == ()


def test_only_changed_rounds_are_read_again(place: Path, tmp_path: Path) -> None:
    shutil.copytree(place, tmp_path / "rounds")
    folders, store = round_folders([tmp_path / "rounds"]), tmp_path / NAME
    first = list(summaries(folders, store))
    assert {key: row[1] for key, row in load_store(store).items()} == {
        str(path.resolve()): summary for path, summary in zip(folders, first, strict=True)
    }
    text = (folders[0] / "holes.csv").read_text(encoding="utf-8").splitlines()
    (folders[0] / "holes.csv").write_text("\n".join(text[:-1]) + "\n", encoding="utf-8")
    shots = pd.read_csv(folders[0] / "shots.csv", dtype=str)
    shots[shots.hole != text[-1].split(",")[0]].to_csv(folders[0] / "shots.csv", index=False)
    again = list(summaries(folders, store))
    assert again[0].holes == first[0].holes - 1
    assert again[1:] == first[1:]
    store.write_bytes(b"not a table")
    assert list(summaries(folders, store)) == again


def test_a_thousand_stored_rounds_take_under_ten_seconds(place: Path, tmp_path: Path) -> None:
    """Bar: a thousand stored rounds with flat memory; the folders are links to a few real ones."""
    sources = round_folders([place])
    known = list(summaries(sources, tmp_path / NAME))
    for number in range(1000):
        copied = tmp_path / "many" / f"r{number:04d}"
        copied.mkdir(parents=True)
        for name in ("holes.csv", "shots.csv", "round.json"):
            (copied / name).hardlink_to(sources[number % len(sources)] / name)
    folders = round_folders([tmp_path / "many"])
    from reviewkit.stats import stored

    rows = {
        str(path.resolve()): (stored.stamp(path), known[number % len(sources)])
        for number, path in enumerate(folders)
    }
    stored.save(tmp_path / "many.parquet", rows)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    found = series_of(summaries(folders, tmp_path / "many.parquet"))
    grown = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
    print(f"1000 stored rounds: {grown:.0f} MB more at the peak")
    assert len(found.rounds) == 1000
    assert grown < 100

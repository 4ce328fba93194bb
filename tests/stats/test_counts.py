"""The counts of one round against independent one-liners over the folder's tables."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pandas as pd
import pytest
from support.truth import load, save_truth, truth_files

from reviewkit.log import RoundFolder
from reviewkit.stats import STATISTICS, figures

Tables = tuple[pd.DataFrame, pd.DataFrame]


@pytest.fixture(scope="module", params=truth_files(), ids=lambda path: path.parent.name)
def folder(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> RoundFolder:
    path: Path = request.param
    return save_truth(path, tmp_path_factory.mktemp(load(path)["id"]))


# Each statistic once more, written over the whole tables and sharing no code with the package.
# Definitions: the trade's, as cited beside each statistic.
INDEPENDENT: dict[str, Callable[[pd.DataFrame, pd.DataFrame], float]] = {
    "score": lambda h, s: h.strokes.sum(),
    "to_par": lambda h, s: (h.strokes - h.par).sum(),
    "score_by_par.par_4": lambda h, s: h[h.par == 4].strokes.mean(),
    "holes_by_score.birdie_or_better": lambda h, s: (h.strokes < h.par).sum(),
    "holes_by_score.double_or_worse": lambda h, s: (h.strokes >= h.par + 2).sum(),
    "damage": lambda h, s: (h.strokes - h.par - 1).clip(lower=0).sum(),
    "bounce_back": lambda h, s: ((h.to_par < 0) & (h.to_par.shift() > 0)).sum() / (h.to_par[:-1] > 0).sum(),
    "fairways": lambda h, s: s[(s.stroke == 1) & s.hole.isin(h[h.par >= 4].hole)].result.eq("fairway").mean(),
    "greens": lambda h, s: (
        s[s.result.isin(["green", "holed"])]
        .groupby("hole")
        .stroke.min()
        .le(h.set_index("hole").par - 2)
        .mean()
    ),
    "scrambling": lambda h, s: h[~h.green_in_regulation].to_par.le(0).mean(),
    "up_and_downs": lambda h, s: (
        s[s.kind.isin(["pitch", "chip", "bunker"]) | (s.kind.eq("putt") & s.lie.ne("green").fillna(True))]
        .groupby("hole")
        .stroke.min()
        .pipe(lambda first: h.set_index("hole").strokes.loc[first.index] - first <= 1)
        .mean()
    ),
    "sand_saves": lambda h, s: (
        s.merge(h[["hole", "strokes"]].rename(columns={"strokes": "out"}), on="hole")
        .query("kind == 'bunker'")
        .drop_duplicates("hole")
        .eval("out - stroke < 2")
        .mean()
    ),
    "putts": lambda h, s: ((s.kind == "putt") & (s.lie == "green")).sum(),
    "putts_a_hole.greens_hit": lambda h, s: h[h.green_in_regulation].putts.mean(),
    "one_putts": lambda h, s: s[s.lie == "green"].groupby("hole").size().reindex(h.hole).eq(1).mean(),
    "three_putts": lambda h, s: s[s.lie == "green"].groupby("hole").size().reindex(h.hole).ge(3).mean(),
    "first_putt": lambda h, s: s[s.lie == "green"].drop_duplicates("hole").distance_yd.mul(3).median(),
    "penalties": lambda h, s: h.strokes.sum() - len(s),
    "contact.fat": lambda h, s: s[s.kind != "putt"].contact.eq("fat").sum(),
    "misses.tee_left": lambda h, s: ((s.kind == "tee") & (s.miss == "left")).sum(),
    "misses_by_club.D_right": lambda h, s: ((s.club == "D") & (s.miss == "right")).sum(),
}


@pytest.mark.parametrize("name", INDEPENDENT)
def test_counts_equal_an_independent_count(folder: RoundFolder, name: str) -> None:
    expected = INDEPENDENT[name](folder.holes, folder.shots)
    found = {figure.name: figure.value for figure in figures(folder, [name.split(".")[0]])}
    value = found.get(name)
    if pd.isna(expected) or (expected == 0 and value is None):
        assert value is None
    else:
        assert value == pytest.approx(float(expected), abs=1e-12)


def test_every_statistic_has_a_definition_and_a_source(folder: RoundFolder) -> None:
    for statistic in STATISTICS.values():
        assert statistic.definition.endswith("."), statistic.name
        assert statistic.source, statistic.name
    for figure in figures(folder):
        assert figure.of is None or figure.value is None or figure.unit != "share" or 0 <= figure.value <= 1

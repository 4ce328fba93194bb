"""Cuts found in films whose cuts are known, and against PySceneDetect over the whole film."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewkit.errors import SourceError
from reviewkit.footage.cuts import Reach, find_cuts, merged
from reviewkit.footage.probe import probe
from tests.footage.films import film

DEMO = Path(__file__).parents[2] / "fixtures" / "rounds" / "demo" / "round.mp4"


@pytest.mark.parametrize("key_every", [12, 50, 1000])
def test_known_cuts_are_found_to_the_frame(tmp_path: Path, key_every: int) -> None:
    path = film(tmp_path / "a.mp4", (3.0, 2.4, 4.0, 1.6), key_every=key_every, tones=())
    assert find_cuts(path, [Reach(0.0, 11.0)]) == pytest.approx([3.0, 5.4, 9.4], abs=0.021)
    assert find_cuts(path, [Reach(4.0, 6.0), Reach(9.5, 10.5)]) == pytest.approx([5.4], abs=0.021)


def test_same_cuts_as_a_search_through_every_frame() -> None:
    """PySceneDetect's own detect() with the same detector over the demo's film."""
    from scenedetect import AdaptiveDetector, detect

    whole = [start.seconds for start, _ in detect(str(DEMO), AdaptiveDetector())][1:]
    assert find_cuts(DEMO, [Reach(0.0, probe(DEMO).duration_s)]) == pytest.approx(whole, abs=0.001)


def test_a_file_whose_clock_starts_late(tmp_path: Path) -> None:
    path = film(tmp_path / "a.ts", (3.0, 3.0), options=["-output_ts_offset", "7"])
    assert find_cuts(path, [Reach(0.0, 6.0)]) == pytest.approx([3.0], abs=0.06)


def test_a_film_without_cuts_and_sound_without_picture(tmp_path: Path) -> None:
    assert find_cuts(film(tmp_path / "a.mp4", (4.0,)), [Reach(0.0, 4.0)]) == []
    sound = film(tmp_path / "a.mp3")
    with pytest.raises(SourceError, match="--no-cuts"):
        find_cuts(sound, [Reach(0.0, 1.0)])


def test_stretches_that_touch_are_searched_once() -> None:
    assert merged([Reach(5, 9), Reach(0, 2), Reach(8, 12), Reach(2, 3)]) == [Reach(0, 3), Reach(5, 12)]

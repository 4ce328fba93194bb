"""Listening is kept: nothing is heard twice, a killed run goes on where it was. With the real model."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import numpy as np
import pytest

from reviewkit.errors import ModelError, ReviewkitError
from reviewkit.footage.sound import RATE, samples
from reviewkit.model import Segment
from reviewkit.speech import decode, weights
from reviewkit.speech.ahead import ahead
from reviewkit.speech.listener import Listener, Recording
from reviewkit.speech.windows import Window

DEMO = Path(__file__).parents[2] / "fixtures" / "rounds" / "demo" / "round.mp4"


@pytest.fixture(scope="module")
def tiny(tmp_path_factory: pytest.TempPathFactory) -> weights.Weights:
    try:
        return weights.find("tiny.en", tmp_path_factory.mktemp("models"), print)
    except ModelError as error:
        pytest.skip(str(error))


class Counter(decode.Decoder):
    """The real decoder, counting windows; dies as a killed process would after `lives` batches."""

    heard = 0
    lives = 99

    def __call__(self, windows: Sequence[Window]) -> list[tuple[Segment, ...]]:
        if not Counter.lives:
            raise KeyboardInterrupt
        Counter.lives -= 1
        Counter.heard += len(windows)
        return super().__call__(windows)


def listener(tiny: weights.Weights, root: Path, language: str = "en") -> Listener:
    compute = decode.Compute("cpu", "int8", 2, batch=2)
    return Listener(tiny, compute, language, "Hole 7, par 4, birdie", root)


def test_killed_and_resumed_hears_every_window_once(
    tiny: weights.Weights, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(decode, "Decoder", Counter)
    recordings = [
        Recording("first", 40.0, lambda: samples(DEMO, length_s=40.0)),
        Recording("second", 70.0, lambda: samples(DEMO, start_s=45.0, length_s=70.0)),
    ]
    once, told = [], []
    Counter.heard, Counter.lives = 0, 99
    once = listener(tiny, tmp_path / "a").hear(recordings, told.append)
    windows = Counter.heard
    assert windows >= 4
    assert told == sorted(told) and told[-1] == pytest.approx(110.0)

    Counter.heard, Counter.lives = 0, 1
    with pytest.raises(KeyboardInterrupt):
        listener(tiny, tmp_path / "b").hear(recordings, told.append)
    Counter.lives = 99
    again = listener(tiny, tmp_path / "b").hear(recordings, told.append)
    assert Counter.heard == windows
    words = [[word.text for s in segments for word in s.words] for segments in again]
    expected = [[word.text for s in segments for word in s.words] for segments in once]
    assert words == expected

    Counter.heard = 0
    kept = listener(tiny, tmp_path / "b").hear(recordings, told.append)
    assert (kept, Counter.heard) == (again, 0)
    other = Listener(tiny, decode.Compute("cpu", "int8", 2, 2), "en", "other hint", tmp_path / "b")
    other.hear(recordings[:1], told.append)
    assert Counter.heard > 0, "other settings must be heard anew"


def test_a_damaged_store_is_heard_again(tiny: weights.Weights, tmp_path: Path) -> None:
    recordings = [Recording("x", 12.0, lambda: samples(DEMO, length_s=12.0))]
    first = listener(tiny, tmp_path).hear(recordings, lambda _: None)
    kept = next(tmp_path.rglob("heard.json"))
    kept.write_text(kept.read_text(encoding="utf-8")[:40], encoding="utf-8")
    assert listener(tiny, tmp_path).hear(recordings, lambda _: None) == first


def test_trouble_with_the_sound_reaches_the_caller(tiny: weights.Weights, tmp_path: Path) -> None:
    def broken() -> Iterator[np.ndarray]:
        yield np.zeros(RATE, np.float32)
        raise ReviewkitError("the card was pulled out")

    with pytest.raises(ReviewkitError, match="pulled out"):
        listener(tiny, tmp_path).hear([Recording("x", 9.0, broken)], lambda _: None)


def test_english_weights_hear_english_only(tiny: weights.Weights, tmp_path: Path) -> None:
    recordings = [Recording("x", 12.0, lambda: samples(DEMO, length_s=12.0))]
    with pytest.raises(ModelError, match="English only"):
        listener(tiny, tmp_path, "de").hear(recordings, lambda _: None)


def test_ahead_stops_when_its_reader_leaves() -> None:
    made = []

    def items() -> Iterator[int]:
        for number in range(1000):
            made.append(number)
            yield number

    running = ahead(items(), room=3)
    assert [next(running), next(running)] == [0, 1]
    running.close()
    assert len(made) <= 7

"""Voice activity as a stream: the same as faster-whisper's own over the whole recording, and bounded."""

from __future__ import annotations

import itertools
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reviewkit.footage.sound import samples
from reviewkit.speech.voice import FRAME, RATE, Detector, Region, VoiceSettings, _Talk, regions
from reviewkit.speech.windows import WINDOW_S, pack

DEMO = Path(__file__).parents[2] / "fixtures" / "rounds" / "demo" / "round.mp4"


@pytest.fixture(scope="module")
def sound() -> np.ndarray:
    return np.concatenate(list(samples(DEMO)))


@pytest.mark.parametrize("chunk", [RATE * 30, 7_001])
def test_a_stream_finds_what_the_whole_recording_shows(sound: np.ndarray, chunk: int) -> None:
    """Against get_speech_timestamps of faster-whisper with the same settings, whatever the chunks."""
    from faster_whisper.vad import VadOptions, get_speech_timestamps

    chunks = (sound[at : at + chunk] for at in range(0, len(sound), chunk))
    ours = {(region.first, region.last) for region in regions(chunks, VoiceSettings())}
    options = VadOptions(max_speech_duration_s=30, min_silence_duration_ms=160)
    theirs = {(item["start"], item["end"]) for item in get_speech_timestamps(sound, options)}
    talk = sum(last - first for first, last in theirs)
    assert talk > 60 * RATE
    # Talk without a pause is split otherwise, and nothing else differs.
    assert len(ours & theirs) >= 0.9 * len(theirs)
    assert sum(last - first for first, last in ours) == pytest.approx(talk, rel=0.01)


def test_regions_hold_their_own_samples_and_never_overlap(sound: np.ndarray) -> None:
    found = list(regions(iter([sound]), VoiceSettings()))
    for region in found:
        assert np.array_equal(region.samples, sound[region.first : region.last])
        assert len(region.samples) <= 29.9 * RATE
    assert all(a.last <= b.first for a, b in itertools.pairwise(found))


def test_talk_that_lasts_to_the_end_is_kept(sound: np.ndarray) -> None:
    """Recordings that end with the talk or shortly after, not all of a whole number of frames."""
    first = next(iter(regions(iter([sound]), VoiceSettings())))
    talk = first.samples[: len(first.samples) - FRAME // 3]
    for cut in range(0, 6 * FRAME, FRAME // 2):
        assert list(regions(iter([talk[: len(talk) - cut]]), VoiceSettings())), cut


def test_silence_holds_no_talk() -> None:
    assert not list(regions(iter([np.zeros(RATE * 5, np.float32)]), VoiceSettings()))
    assert not list(regions(iter([]), VoiceSettings()))


def test_the_detector_keeps_its_state(sound: np.ndarray) -> None:
    part = sound[: 200 * FRAME]
    whole, pieces = Detector()(part), Detector()
    joined = np.concatenate([pieces(part[: 70 * FRAME]), pieces(part[70 * FRAME :])])
    assert np.allclose(whole, joined, atol=1e-4)


@given(st.lists(st.floats(0, 1), max_size=3000))
@settings(max_examples=20)
def test_pieces_of_talk_are_ordered_and_short_enough(probabilities: list[float]) -> None:
    talk = _Talk(VoiceSettings(longest_s=3.0))
    found = [piece for p in probabilities if (piece := talk.step(p))]
    last = talk.close()
    found += [last] if last else []
    for first, end in found:
        assert 0 <= first <= end <= len(probabilities)
        assert (end - first) * FRAME <= 3.0 * RATE
    assert all(a[1] <= b[0] for a, b in itertools.pairwise(found))
    loud = [n for n, p in enumerate(probabilities) if p >= 0.5]
    assert all(any(first <= n <= end for first, end in found) for n in loud)


@given(st.lists(st.tuples(st.integers(0, RATE * 60), st.integers(1, RATE * 29)), max_size=12))
def test_windows_hold_every_region_once_and_map_back(gaps: list[tuple[int, int]]) -> None:
    given_regions, at = [], 0
    for gap, length in gaps:
        given_regions.append(Region(at + gap, np.zeros(length, np.float32)))
        at += gap + length
    windows = list(pack(given_regions))
    assert [piece for w in windows for piece in w.pieces] == [(r.first, r.last) for r in given_regions]
    assert len({window.name for window in windows}) == len(windows)
    for window in windows:
        assert len(window.samples) <= WINDOW_S * RATE
        joined = 0
        for first, last in window.pieces:
            middle = (joined + (last - first) / 2) / RATE
            start, end = window.place(middle, middle)
            assert start == end == pytest.approx((first + last) / 2 / RATE)
            joined += last - first
        start, end = window.place(-1.0, 1e6)
        assert window.pieces[0][0] / RATE <= start <= end <= window.end_s

"""Real speech with a reference text: the public-domain readings in Debian's package pocketsphinx-testdata.

Five utterances from LibriVox' "Sense and Sensibility", 16 kHz, with their transcription as the package gives
it. Word error rate by jiwer. They are heard as one round of five clips, so that the joining is heard too.
"""

from __future__ import annotations

import re
from pathlib import Path

import jiwer
import pytest

from reviewkit.errors import ModelError
from reviewkit.footage.timeline import Timeline, join
from reviewkit.model import Plan, Transcript
from reviewkit.pipeline import Options, listening
from reviewkit.progress import Silence
from reviewkit.speech import weights

DATA = Path("/usr/share/pocketsphinx/test/data/librivox")
pytestmark = pytest.mark.skipif(
    not DATA.is_dir(), reason="no reference speech: apt-get install pocketsphinx-testdata"
)
BOUNDS = {"tiny.en": 0.06, "base": 0.06}
"""Measured: 0.042 and 0.014. Silence or a broken rate give 1.0, one lost clip 0.11 and more."""


def reference() -> dict[str, str]:
    lines = (DATA / "transcription").read_text(encoding="utf-8").splitlines()
    found = [re.fullmatch(r"<s> (.*?)\s*</s> \((.*)\)", line.strip()) for line in lines]
    return {match[2]: match[1] for match in found if match}


def plain(text: str) -> str:
    text = text.lower().replace("mr.", "mister").replace("-", " ")
    return " ".join(re.sub(r"[^a-z ]", "", text).split())


def hear(name: str) -> tuple[Timeline, Transcript]:
    timeline = join([DATA / f"{clip}.wav" for clip in reference()])
    return timeline, listening(timeline, Plan(), Options(model=name), Silence()).whole()


@pytest.mark.parametrize("name", list(BOUNDS))
def test_word_error_rate_of_read_speech(
    name: str, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache = tmp_path_factory.getbasetemp() / "cache"
    monkeypatch.setenv("REVIEWKIT_CACHE", str(cache))
    try:
        weights.find(name, cache / "models", print)
    except ModelError as error:
        pytest.skip(str(error))
    timeline, transcript = hear(name)
    said, heard = [], []
    for clip, text in zip(timeline.clips, reference().values(), strict=True):
        inside = [w.text for w in transcript.words if clip.offset_s <= w.start_s < clip.end_s]
        said.append(plain(text))
        heard.append(plain(" ".join(inside)))
    rate = jiwer.wer(said, heard)
    print(f"\nword error rate of {name} on read speech: {rate:.3f}")
    assert rate <= BOUNDS[name], list(zip(said, heard, strict=True))
    assert all(word.end_s <= timeline.duration_s for word in transcript.words)

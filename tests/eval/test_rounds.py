"""The committed rounds are what their scripts say, and a script that does not add up is refused."""

from __future__ import annotations

from pathlib import Path

import pytest
import webvtt
from scenedetect import ContentDetector, detect
from support.truth import fixture_rounds, load

from fixtures.makers.script import load_script
from tests.eval.rounds import find_unread, read_text

ROUNDS = [path.parent for path in fixture_rounds()]
CORPUS = [path.parent for path in fixture_rounds("corpus")]
TIMES = {"hole", "stroke", "at_s", "until_s"}


@pytest.mark.parametrize("folder", ROUNDS + CORPUS, ids=lambda folder: folder.name)
def test_truth_and_texts_are_what_the_script_says(folder: Path) -> None:
    script, truth = load_script(folder / "script.txt"), load(folder / "truth.json")
    said = [line for section in script.sections for line in section.lines]
    assert [line.text for line in said] == [spoken["text"] for spoken in truth["utterances"]]
    told = [stroke for line in said for stroke in line.strokes]
    kept = [{key: shot[key] for key in shot if key not in TIMES} for shot in truth["shots"]]
    assert told == kept
    scores = [(part.hole, part.par, part.score) for part in script.sections if part.name == "hole"]
    assert scores == [(hole["hole"], hole["par"], hole["strokes"]) for hole in truth["holes"]]
    # An independent reader of WebVTT sees the same cues.
    assert [cue.text for cue in webvtt.read(str(folder / "clean.vtt"))] == [line.text for line in said]
    for name in ("clean.vtt", "asr.json"):
        starts = [word.start_s for word in read_text(folder / name).words]
        assert starts == sorted(starts) and starts[-1] < truth["duration_s"]


def test_the_unread_rounds_are_there() -> None:
    unread = find_unread(CORPUS[0].parent)
    assert unread and unread < {folder.name for folder in CORPUS}


@pytest.mark.parametrize(
    ("wrong", "message"),
    [
        ("[hole 1 par 4 score 4]\nTap in.\n> putt -> holed\n", "1 strokes, score 4"),
        ("[hole 1 par 3 score 1]\nAce!\n> tee 7I 150 -> holed\n! running -1\n", "running -1"),
        ("[hole 1 par 3 score 1]\nAce!\n> tee 7I 150 -> holed\n! running -2 wrong\n", "running -2"),
        ("[hole 2 par 3 score 1]\nAce!\n> tee 7I 150 -> holed\n", "not in the order"),
        ("[hole 1 par 3 score 1]\nAce!\n> tee 7I 150 -> holed colour=red\n", "unknown mark"),
    ],
)
def test_a_script_that_does_not_add_up_is_refused(wrong: str, message: str, tmp_path: Path) -> None:
    path = tmp_path / "script.txt"
    path.write_text(f"id: x\nstyle: x\norder: 1-1\ntarget: 0\nunits: yd\n---\n{wrong}", encoding="utf-8")
    with pytest.raises(ValueError, match=message):
        load_script(path)


def test_the_demo_footage_is_cut_at_its_holes() -> None:
    """Source of the cuts found: PySceneDetect's content detector, which knows nothing of the round."""
    folder = next(folder for folder in ROUNDS if folder.name == "demo")
    truth = load(folder / "truth.json")
    scenes = detect(str(folder / "round.mp4"), ContentDetector())
    wanted = [hole["start_s"] for hole in truth["holes"]] + [truth["holes"][-1]["end_s"]]
    assert [start.seconds for start, _ in scenes[1:]] == pytest.approx(wanted, abs=0.5)
    assert scenes[-1][1].seconds == pytest.approx(truth["duration_s"], abs=0.5)

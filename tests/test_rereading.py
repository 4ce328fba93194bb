"""A round keeps what was heard and what was meant, and a new rule reaches the words kept."""

from __future__ import annotations

from pathlib import Path

import pysubs2

from reviewkit.export import Job, find, write
from reviewkit.log import RoundFolder
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan
from reviewkit.pipeline import Options, read_round
from reviewkit.rereading import again

HEARD = (
    "Hole one, a short par for, up the hill.",
    "Big dog off the tee, down the middle.",
    "Wedge to the green, and two pots for par.",
)


def told(folder: RoundFolder, out: Path) -> list[str]:
    """The lines of the round's subtitles, as another program reads them."""
    write(find("srt"), Job(folder), out)
    return [" ".join(event.plaintext.split()) for event in pysubs2.load(str(out))]


def test_what_was_meant_is_kept_beside_what_was_heard(tmp_path: Path) -> None:
    source = tmp_path / "round.srt"
    cues = [
        f"{n + 1}\n00:00:{n * 10:02},000 --> 00:00:{n * 10 + 5:02},000\n{text}\n\n"
        for n, text in enumerate(HEARD)
    ]
    source.write_text("".join(cues), encoding="utf-8")
    folder = read_round([source], tmp_path / "round", Plan(), Options())
    said = load_transcript(folder.transcript_json)
    assert tuple(" ".join(word.text for word in segment.words) for segment in said.segments) == HEARD
    assert {word.text: word.meant for word in said.words if word.meant is not None} == {
        "for,": "4,",
        "pots": "putts",
    }
    assert told(folder, tmp_path / "before.srt") == [
        "Hole one, a short par 4, up the hill.",
        HEARD[1],
        "Wedge to the green, and two putts for par.",
    ]
    (folder.path / "rules.toml").write_text(
        '[[repair]]\nheard = "big dog"\nmeant = "driver"\n', encoding="utf-8"
    )
    again(folder)
    assert told(folder, tmp_path / "after.srt")[1] == "Driver off the tee, down the middle."
    assert load_transcript(folder.transcript_json).words[9].text == "Big"

"""Timed text read strictly, and against independent readers of the same files."""

from __future__ import annotations

import itertools
from pathlib import Path

import pysubs2
import pytest
import webvtt

from reviewkit.errors import SourceError
from reviewkit.speech import timed_text

EVAL = Path(__file__).parents[2] / ".." / "shared" / "eval" / "dev"

VTT = """WEBVTT - a round

NOTE
the player says --> nothing here

STYLE
::cue { color: lime }

first
00:01.000 --> 00:04.000 align:start
<v Ada>Hole <b>three</b>,
par 4 &amp; downhill.

1:00:00.500 --> 1:00:02.000
Birdie.
""".replace("1:00:0", "01:00:0")

SRT = """1
00:00:01,000 --> 00:00:03,000
{\\an8}<i>Two putts</i>, par.

2
00:00:03,000 --> 00:00:04,500
[wind]
"""

# A tilde stands for the space that rolling captions put on an empty line.
ROLLING = """WEBVTT

00:00:01.000 --> 00:00:03.000
~
driver<00:00:01.500><c> down</c><00:00:02.000><c> the</c><00:00:02.400><c> left</c>

00:00:03.000 --> 00:00:03.010
driver down the left
~

00:00:03.010 --> 00:00:05.000
driver down the left
and<00:00:03.600><c> out</c>
""".replace("~", " ")


def write(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_webvtt(tmp_path: Path) -> None:
    heard = timed_text.read(write(tmp_path, "a.vtt", VTT))
    assert [" ".join(w.text for w in s.words) for s in heard.segments] == [
        "Hole three, par 4 & downhill.",
        "Birdie.",
    ]
    first = heard.segments[0].words
    assert (first[0].start_s, first[-1].end_s) == (1.0, 4.0)
    assert all(a.end_s == pytest.approx(b.start_s) for a, b in itertools.pairwise(first))
    assert heard.segments[1].start_s == 3600.5
    assert heard.duration_s == 3602.0


def test_subrip_leaves_markup_and_sounds_out(tmp_path: Path) -> None:
    heard = timed_text.read(write(tmp_path, "a.SRT", SRT))
    assert [word.text for word in heard.words] == ["Two", "putts,", "par."]
    assert heard.duration_s == 4.5


def test_rolling_captions_are_said_once_at_their_own_times(tmp_path: Path) -> None:
    words = timed_text.read(write(tmp_path, "a.vtt", ROLLING)).words
    assert [word.text for word in words] == ["driver", "down", "the", "left", "and", "out"]
    assert [word.start_s for word in words] == [1.0, 1.5, 2.0, 2.4, 3.01, 3.6]


HEAD = "WEBVTT\n\n"


@pytest.mark.parametrize(
    ("name", "text", "told"),
    [
        ("a.vtt", "00:01.000 --> 00:02.000\nHole one.\n", "does not begin with WEBVTT"),
        ("a.vtt", "WEBVTTX\n\n00:01.000 --> 00:02.000\nHole one.\n", "does not begin with WEBVTT"),
        ("a.vtt", HEAD + "00:01.000 --> 00:99.000\nHole one.\n", "line 3: '00:01.000 --> 00:99.000'"),
        ("a.vtt", HEAD + "00:01,000 --> 00:02,000\nHole one.\n", "line 3"),
        ("a.vtt", HEAD + "00:02.000 --> 00:01.000\nHole one.\n", "line 3: the cue ends before"),
        (
            "a.vtt",
            HEAD + "00:05.000 --> 00:06.000\na\n\n00:04.000 --> 00:07.000\nb\n",
            "line 6: the cue starts",
        ),
        ("a.vtt", HEAD + "Hole one, no times.\n", "line 3: no times"),
        ("a.vtt", HEAD, "holds no words"),
        ("a.srt", "1\n00:00:01,000 -> 00:00:02,000\nHole one.\n", "line 1: no times"),
        ("a.srt", "1\n00:00:0x,000 --> 00:00:02,000\nHole one.\n", "line 2"),
        ("a.srt", "", "holds no words"),
    ],
)
def test_what_is_broken_is_told_with_its_line(tmp_path: Path, name: str, text: str, told: str) -> None:
    with pytest.raises(SourceError) as error:
        timed_text.read(write(tmp_path, name, text))
    assert told in str(error.value)
    assert "\n" not in str(error.value)


def test_text_in_another_encoding(tmp_path: Path) -> None:
    path = tmp_path / "a.vtt"
    path.write_bytes("WEBVTT\n\n00:01.000 --> 00:02.000\nCafé\n".encode("latin-1"))
    with pytest.raises(SourceError, match="not UTF-8"):
        timed_text.read(path)


@pytest.mark.skipif(not EVAL.is_dir(), reason="the invented rounds are not beside this checkout")
@pytest.mark.parametrize("name", ["a1", "b3", "c5"])
def test_same_cues_as_independent_readers(tmp_path: Path, name: str) -> None:
    """webvtt-py for WebVTT; pysubs2 writes the SubRip that is read back."""
    source = EVAL / name / "clean.vtt"
    theirs = [(c.start_in_seconds, c.end_in_seconds, c.text.split()) for c in webvtt.read(str(source))]
    ours = timed_text.read(source).segments
    assert [[w.text for w in s.words] for s in ours] == [words for _, _, words in theirs]
    for segment, (start, end, _) in zip(ours, theirs, strict=True):
        assert start == pytest.approx(int(segment.start_s), abs=1)
        assert end == pytest.approx(int(segment.end_s), abs=1)
    subrip = tmp_path / "a.srt"
    pysubs2.load(str(source)).save(str(subrip))
    again = timed_text.read(subrip).segments
    assert [(s.start_s, s.end_s) for s in again] == [(s.start_s, s.end_s) for s in ours]

"""Single pictures of films, against the same frames decoded one by one by OpenCV."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import cv2
import numpy as np
import pytest

from reviewkit.errors import SourceError
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.looks import looks, picture_at

CARD = ["-f", "lavfi", "-i", "testsrc2=s=320x180:r=10:d=12"]
CODING = ["-c:v", "libx264", "-preset", "veryfast", "-bf", "2"]


@pytest.fixture(scope="module")
def films(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The same card with a key frame a second, with one only, turned, and in a stream that begins late."""
    home = tmp_path_factory.mktemp("looks")
    often, once, turned, late = (home / name for name in ("often.mp4", "once.mp4", "turned.mov", "late.mts"))
    run(["-y", *CARD, *CODING, "-g", "10", "-keyint_min", "10", "-sc_threshold", "0", often], often)
    run(["-y", *CARD, *CODING, "-g", "999", "-sc_threshold", "0", once], once)
    run(["-y", "-display_rotation", "90", "-i", often, "-c", "copy", turned], turned)
    run(["-y", "-i", often, "-c", "copy", late], late)
    return {"often": often, "once": once, "turned": turned, "late": late}


def frames(path: Path) -> list[Any]:
    """Every frame as OpenCV decodes and turns it."""
    video, found = cv2.VideoCapture(str(path)), []
    while (read := video.read())[0]:
        found.append(read[1])
    video.release()
    return found


def place(picture: Any, among: list[Any]) -> int:
    return int(np.argmin([np.abs(picture.astype(int) - other).mean() for other in among]))


@pytest.mark.parametrize("name", ["often", "turned", "late"])
def test_key_frames_in_the_stretch_are_seen_once_each(films: dict[str, Path], name: str) -> None:
    among = frames(films[name])
    moments = [3.4 + 0.3 * n for n in range(12)]
    seen = list(looks(films[name], moments, 3.2, 6.9, among[0].shape[1]))
    assert [place(picture, among) for _, picture in seen] == [40, 50, 60]
    assert [second for second, _ in seen] == pytest.approx([4.0, 5.0, 6.0], abs=0.11)
    for second, picture in seen:
        assert picture.shape == among[0].shape
        again = picture_at(films[name], second)
        assert np.abs(again.astype(int) - picture).mean() < 1.0


def test_pictures_are_as_wide_as_asked_for(films: dict[str, Path]) -> None:
    [(_, picture)] = looks(films["turned"], [2.5], 1.5, 2.6, 90)
    assert picture.shape == (160, 90, 3)


def test_a_stretch_without_a_key_frame_shows_its_middle(films: dict[str, Path]) -> None:
    [(second, picture)] = looks(films["once"], [5.0, 6.0, 7.0], 4.0, 8.0, 320)
    assert second == 6.0 and place(picture, frames(films["once"])) == 60


def test_what_has_no_picture_is_told(tmp_path: Path, films: dict[str, Path]) -> None:
    sound = tmp_path / "sound.m4a"
    run(["-y", "-f", "lavfi", "-i", "sine=d=1", "-c:a", "aac", sound], sound)
    with pytest.raises(SourceError, match="has no picture"):
        picture_at(sound, 0.5)

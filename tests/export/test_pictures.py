"""Pictures: the score card read as XML and pixels, stills from real footage with one sharp stretch."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from pathlib import Path

import cv2
import pytest
from hypothesis import given, settings
from PIL import Image
from support.hostile import small_round, titles
from support.truth import save_truth, truth_files

from reviewkit.errors import FolderError, SourceError
from reviewkit.export import Job, find, write
from reviewkit.export.base import one_line, shorten
from reviewkit.export.stills import stills_of
from reviewkit.footage.ffmpeg import run
from reviewkit.log import RoundFolder
from reviewkit.model import HoleScore, Round

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def scratch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("pictures")


@pytest.mark.parametrize("path", truth_files()[:4], ids=lambda p: p.parent.name)
def test_the_score_card_shows_every_hole_and_sum(tmp_path: Path, path: Path) -> None:
    job = Job(save_truth(path, tmp_path / "round"))
    write(find("card-svg"), job, tmp_path / "card.svg")
    write(find("card-png"), job, tmp_path / "card.png")
    root = ET.parse(tmp_path / "card.svg").getroot()
    texts = [item.text for item in root.iter(f"{SVG}text")]
    holes = job.folder.holes
    for column in ("hole", "par", "strokes"):
        for value in holes[column]:
            assert str(value) in texts
    for start in range(0, len(holes), 9):
        assert str(holes["strokes"][start : start + 9].sum()) in texts
    assert any(str(holes["strokes"].sum()) in str(text) for text in texts)
    size = tuple(int(root.attrib[name]) for name in ("width", "height"))
    picture = Image.open(tmp_path / "card.png")
    assert picture.size == size and len(picture.convert("L").getcolors() or ()) > 20


def test_frames_tell_scores_under_and_over_par_apart(tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path / "round")
    marks = ((3, "sure"), (4, "sure"), (5, "check"), (6, "sure"), (None, "check"))
    scores = tuple(
        HoleScore(
            n, n, n * 10.0, n * 10.0 + 9, 4, made, None if made is None else made - 4, None, status=status
        )
        for n, (made, status) in enumerate(marks, 1)
    )
    folder.save(Round(scores, ()), {"sources": []})
    write(find("card-svg"), Job(folder), tmp_path / "card.svg")
    root = ET.parse(tmp_path / "card.svg").getroot()
    frames = [box.attrib for box in root.iter(f"{SVG}rect") if float(box.attrib["width"]) == 64]
    assert [float(frame["rx"]) > 20 for frame in frames] == [True, False, False]
    assert [frame["fill"] == "none" for frame in frames] == [True, True, False]
    texts = [item.text for item in root.iter(f"{SVG}text")]
    assert "5?" in texts and "–" in texts and "4 of 5 scores known" in texts


@settings(max_examples=8)
@given(title=titles)
def test_hostile_course_names_stay_text(scratch: Path, title: str) -> None:
    folder = small_round(scratch / "round")
    folder.__dict__["meta"] = {**folder.meta, "plan": {"card": {"course": title}}}
    write(find("card-svg"), Job(folder), scratch / "card.svg")
    write(find("card-png"), Job(folder), scratch / "card.png")
    texts = [item.text for item in ET.parse(scratch / "card.svg").getroot().iter(f"{SVG}text")]
    assert texts[0] == shorten(one_line(title) or "Round", 60)
    assert {item.tag for item in ET.parse(scratch / "card.svg").getroot()} <= {
        f"{SVG}{n}" for n in ("title", "rect", "text")
    }


@pytest.fixture
def soft_film(tmp_path: Path) -> Path:
    """Thirty blurred seconds that are sharp from second 12 to 14 only."""
    path = tmp_path / "soft.mp4"
    blur = "gblur=sigma=8:enable='not(between(t,12,14))'"
    picture = ["-f", "lavfi", "-i", f"testsrc2=s=320x180:r=10:d=30,{blur}"]
    run(["-y", *picture, "-preset", "ultrafast", "-g", "10", path], path)
    return path


def filmed(tmp_path: Path, film: Path) -> Job:
    source: dict[str, object] = {"path": str(film), "offset_s": 0.0, "duration_s": 30.0}
    return Job(small_round(tmp_path / "round", (1.0, 9.0, 18.0), 30.0, sources=[source]))


def test_the_sharpest_frame_of_each_hole_is_found(tmp_path: Path, soft_film: Path) -> None:
    stills = stills_of(filmed(tmp_path, soft_film))
    assert [still.hole for still in stills] == [1, 2, 3]
    assert 12.0 <= stills[1].at_s <= 14.1
    assert stills[1].sharpness > 2 * max(stills[0].sharpness, stills[2].sharpness)


def test_contact_sheet_and_thumbnails_are_pictures(tmp_path: Path, soft_film: Path, footage: Path) -> None:
    job = filmed(tmp_path, soft_film)
    write(find("contact-sheet"), job, tmp_path / "sheet.jpg")
    sheet = cv2.imread(str(tmp_path / "sheet.jpg"))
    assert sheet.shape == (16 + 270 + 44 + 16, 16 + 3 * (480 + 16), 3)
    write(find("thumbnails"), job, tmp_path / "thumbs")
    names = sorted(path.name for path in (tmp_path / "thumbs").iterdir())
    assert len(names) == 3 and names[0] == "01-hole-02.jpg"
    source: dict[str, object] = {"path": str(footage), "offset_s": 0.0, "duration_s": 60.0}
    turned = Job(small_round(tmp_path / "turned", length_s=60.0, sources=[source]))
    write(find("thumbnails"), turned, tmp_path / "turned-thumbs")
    assert Image.open(next((tmp_path / "turned-thumbs").iterdir())).size == (180, 320)


def test_missing_footage_and_holes_are_told(tmp_path: Path) -> None:
    with pytest.raises(SourceError, match="has moved or gone"):
        write(find("contact-sheet"), Job(small_round(tmp_path / "round")), tmp_path / "x.jpg")
    bare = RoundFolder(tmp_path / "bare")
    bare.save(Round((), ()), {"sources": []})
    for name in ("card-svg", "card-png", "overlay-ass"):
        with pytest.raises(FolderError, match="has no hole"):
            write(find(name), Job(bare), tmp_path / "x")
    assert not (tmp_path / "x").exists()

"""Who may use the desk, what it serves, how fast it answers, and what it does with hostile talk."""

from __future__ import annotations

import json
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient
from support.desks import TOKEN, demo_round, with_footage

from reviewkit.desk.media import copy, media_of
from reviewkit.desk.server import build
from reviewkit.desk.session import Session
from reviewkit.desk.teach import teach
from reviewkit.errors import ReviewkitError
from reviewkit.footage.ffmpeg import run
from reviewkit.footage.probe import probe
from reviewkit.log import RoundFolder
from reviewkit.log.amended import publish
from reviewkit.log.amendments import load
from reviewkit.model import Plan
from reviewkit.pipeline import Options, read_round
from reviewkit.rereading import again, reread

TALK = """WEBVTT

00:01.000 --> 00:06.000
First hole, a 380 yard par 4, and I hit driver into the middle of the fairway.

00:07.000 --> 00:12.000
From 120 yards I hit a pigeon which onto the green, twelve feet.

00:13.000 --> 00:18.000
Two putts, that's a par.
"""
PORT = 45_454
HOST = {"host": f"127.0.0.1:{PORT}"}
OWN = {**HOST, "origin": f"http://127.0.0.1:{PORT}"}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> RoundFolder:
    return demo_round(tmp_path_factory.mktemp("desk"))


@pytest.fixture(scope="module")
def client(folder: RoundFolder) -> Iterator[TestClient]:
    session = Session(folder, again)
    with TestClient(build(session, TOKEN, PORT), base_url=f"http://127.0.0.1:{PORT}") as found:
        yield found


EDIT = {"action": "accept", "hole": 1, "stroke": None, "field": "par"}


@pytest.mark.parametrize(
    ("method", "path", "headers", "status"),
    [
        ("GET", f"/{TOKEN}/", HOST, 200),
        ("GET", "/", HOST, 404),
        ("GET", "/wrong-token/state", HOST, 404),
        ("GET", f"/{TOKEN}/state", {"host": "evil.example"}, 403),
        ("GET", f"/{TOKEN}/state", {"host": f"127.0.0.1.evil.example:{PORT}"}, 403),
        ("GET", f"/{TOKEN}/state", {**HOST, "origin": "http://evil.example"}, 403),
        ("POST", f"/{TOKEN}/amend", HOST, 403),
        ("POST", f"/{TOKEN}/amend", {**HOST, "origin": "null"}, 403),
        ("POST", f"/{TOKEN}/amend", {**OWN, "content-type": "text/plain"}, 403),
        ("POST", f"/{TOKEN}/amend", {**OWN, "content-length": "99999999"}, 413),
        ("GET", f"/{TOKEN}/static/..%2f..%2fsession.py", HOST, 404),
        ("GET", f"/{TOKEN}/static/desk.html", HOST, 404),
        ("GET", f"/{TOKEN}/media/7", HOST, 404),
        ("GET", f"/{TOKEN}/media/..%2f..%2fround.json", HOST, 404),
    ],
)
def test_only_its_own_page_on_this_machine_gets_in(
    client: TestClient, method: str, path: str, headers: dict[str, str], status: int
) -> None:
    sent = {"content-type": "application/json", **headers}
    answer = client.request(
        method, path, headers=sent, content=json.dumps(EDIT) if method == "POST" else None
    )
    assert answer.status_code == status
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    assert "unsafe" not in answer.headers["content-security-policy"]


def test_footage_answers_range_requests(client: TestClient, folder: RoundFolder) -> None:
    # RFC 9110, 14.4 and 15.3.7: a satisfied range is 206 with Content-Range, one out of reach is 416.
    whole = (folder.path.parent / "round.mp4").read_bytes()
    part = client.get(f"/{TOKEN}/media/0", headers={**HOST, "range": "bytes=1000-1999"})
    assert (part.status_code, part.content) == (206, whole[1000:2000])
    assert part.headers["content-range"] == f"bytes 1000-1999/{len(whole)}"
    assert client.get(f"/{TOKEN}/media/0", headers={**HOST, "range": "bytes=99999999-"}).status_code == 416


@pytest.mark.parametrize(
    "asked",
    [
        {"action": "set", "hole": 1, "stroke": None, "field": "strokes", "value": "x"},
        {"action": "set", "hole": 99, "stroke": None, "field": "strokes", "value": "4"},
        {"action": "set", "hole": "1", "stroke": None, "field": "strokes", "value": "4"},
        {"action": "set", "hole": 1, "stroke": None, "field": "strokes", "value": ["4"]},
        {"action": "split", "hole": 17, "at_s": -4},
        {"action": "launch"},
        {"action": "undo", "id": 12345},
        {},
    ],
)
def test_what_cannot_be_done_is_told_and_nothing_kept(
    client: TestClient, folder: RoundFolder, asked: dict[str, Any]
) -> None:
    before = load(folder)
    answer = client.post(f"/{TOKEN}/amend", headers=OWN, json=asked)
    assert answer.status_code == 422 and answer.json()["error"]
    assert load(folder) == before


def test_another_programs_correction_is_seen_and_none_is_lost(tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    one, two = Session(folder, again), Session(folder, again)
    hole = one.state()["holes"][0]["hole"]
    one.act({"action": "set", "hole": hole, "stroke": None, "field": "strokes", "value": "8"})
    two.act({"action": "set", "hole": hole, "stroke": None, "field": "par", "value": "5"})
    publish(folder, reread(folder), folder.meta)
    for desk in (one, two):
        row = desk.state()["holes"][0]
        assert (row["strokes"], row["par"]) == ("8", "5")


def test_teaching_writes_a_repair_that_the_next_reading_obeys(tmp_path: Path) -> None:
    words = tmp_path / "talk.vtt"
    words.write_text(TALK, encoding="utf-8")
    folder = read_round([words], tmp_path / "round", Plan(), Options())
    assert "PW" not in [shot.club for shot in reread(folder).shots]
    path = teach(folder, 'Pigeon "which"', "pitching wedge")
    teach(folder, "pigeon which", "pitching wedge")
    text = path.read_text(encoding="utf-8")
    assert text.count("[[repair]]") == 1
    assert 'heard = "pigeon which"' in text and 'meant = "pitching wedge"' in text
    assert "PW" in [shot.club for shot in reread(folder).shots]
    with pytest.raises(ReviewkitError):
        teach(folder, "<script>", "")


def test_a_copy_that_plays_is_made_on_request_with_progress(tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    (source,) = media_of(folder)
    assert source.original is not None and source.told()["plays"]
    odd = tmp_path / "odd.avi"
    run(["-i", str(source.original), "-t", "4", "-c:v", "mpeg4", "-c:a", "mp2", str(odd)], odd)
    folder = with_footage(folder.path, odd)
    assert media_of(folder)[0].told()["plays"] is False
    shares: list[float] = []
    copy(odd, tmp_path / "copy.mp4", 4.0, shares.append)
    assert shares == sorted(shares) and shares[-1] > 0.9

    client = TestClient(build(Session(folder, again), TOKEN, PORT), base_url=f"http://127.0.0.1:{PORT}")
    assert client.post(f"/{TOKEN}/copy/0", headers=OWN, json={}).status_code == 200
    until = time.monotonic() + 30
    while not (told := client.get(f"/{TOKEN}/state", headers=HOST).json()["media"][0])["copied"]:
        assert time.monotonic() < until
        time.sleep(0.05)
    assert told["plays"]
    made = probe(media_of(folder)[0].proxy)
    assert made.picture is not None and made.picture.codec == "h264" and abs(made.duration_s - 4) < 0.2


def test_a_clash_heads_the_doubts_until_the_person_decides(tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    session = Session(folder, again)
    hole, stroke = next((shot.hole, shot.stroke) for shot in session.shown.shots if shot.club)
    row = {"hole": hole, "stroke": stroke}
    session.act({"action": "set", **row, "field": "club", "value": "2H"})
    reading = json.loads((folder.path / "reading.json").read_text(encoding="utf-8"))
    for shot in reading["shots"]:
        if (shot["hole"], shot["stroke"]) == (hole, stroke):
            shot["club"] = "LW"
    (folder.path / "reading.json").write_text(json.dumps(reading), encoding="utf-8")
    first = session.state()["doubts"][0]
    assert (first["correction"], first["now"], first["others"]) == (1, "2H", ["LW"])
    mine = session.act({"action": "accept", **row, "field": "club"})
    assert all(doubt["correction"] is None for doubt in mine["doubts"])
    session.act({"action": "undo"})
    assert session.state()["doubts"][0]["correction"] == 1
    dropped = session.act({"action": "undo", "id": 1})
    assert all(doubt["correction"] is None for doubt in dropped["doubts"])
    clubs = {(shot.hole, shot.stroke): shot.club for shot in session.shown.shots}
    assert clubs[hole, stroke] == "LW"


def test_hostile_talk_stays_text(tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    path = folder.path / "reading.json"
    reading = json.loads(path.read_text(encoding="utf-8"))
    hostile = "<script>alert(1)</script>\u202eevil\x00"
    reading["shots"][0]["evidence"] = hostile
    reading["plan"]["card"]["course"] = hostile
    path.write_text(json.dumps(reading), encoding="utf-8")
    state = Session(folder, again).state()
    assert state["holes"][0]["shots"][0]["words"] == "<script>alert(1)</script>\ufffdevil\ufffd"
    assert "\u202e" not in json.dumps(state, ensure_ascii=False)
    shutil.rmtree(folder.path)

"""The report as it is opened: from disk, in a real browser, on phone and desktop, by day and by night."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest
from support.desks import chromium, demo_round, serious
from support.truth import load, round_of, truth_files

from reviewkit.log import RoundFolder
from reviewkit.log.amended import publish
from reviewkit.model import Card, Doubt, HoleScore, Plan, Round, Shot
from reviewkit.model.values import MISSES
from reviewkit.report import write_report, write_series_report
from reviewkit.report.series import series_of
from reviewkit.report.view import view_of
from reviewkit.report.words import club_name, score_mark, signed, to_par

HOSTILE = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>\u202egnp.exe\u2066\x00{{7*7}}"


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    with chromium() as found:
        yield found


def folder_of(path: Path, place: Path) -> RoundFolder:
    folder = RoundFolder(place)
    publish(folder, round_of(load(path)), {"sources": [], "plan": {"target": load(path).get("target")}})
    write_report(folder)
    return folder


def open_report(browser: Any, folder: RoundFolder, **options: Any) -> tuple[Any, list[str]]:
    page = browser.new_page(**options)
    complaints: list[str] = []
    address = folder.report_html.resolve().as_uri()
    page.on("console", lambda message: complaints.append(f"{message.type}: {message.text}"))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: None if request.url == address else complaints.append(request.url))
    page.on("dialog", lambda dialog: complaints.append("dialog"))
    page.goto(address)
    page.wait_for_timeout(100)
    return page, complaints


def test_footage_plays_at_the_second_that_is_clicked(browser: Any, tmp_path: Path) -> None:
    folder = demo_round(tmp_path)
    write_report(folder)
    page, complaints = open_report(browser, folder)
    assert complaints == [], "nothing is fetched before a click"
    start = float(folder.shots["start_s"].iloc[-1])
    page.locator(f"button[data-at='{start}']").first.focus()
    page.keyboard.press("Enter")
    page.wait_for_timeout(600)
    at, ready = page.evaluate("(v => [v.currentTime, v.readyState])(document.querySelector('video'))")
    assert ready >= 2 and start - 0.2 <= at <= start + 1.0, "it is playing on from there"
    page.keyboard.press("Escape")
    assert page.evaluate("document.activeElement.dataset.at") == str(start), "the focus comes back"
    assert page.evaluate("document.querySelector('video').paused")


@pytest.mark.parametrize(("scheme", "width"), [("light", 1280), ("dark", 360)])
def test_from_disk_it_is_silent_accessible_and_fits(
    browser: Any, tmp_path: Path, scheme: str, width: int
) -> None:
    path = max(truth_files(), key=lambda file: len(load(file)["holes"]))
    folder = folder_of(path, tmp_path)
    size = {"width": width, "height": 800}
    page, complaints = open_report(browser, folder, color_scheme=scheme, viewport=size, bypass_csp=True)
    assert complaints == []
    assert serious(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.emulate_media(media="print")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"


def test_hostile_talk_does_nothing(browser: Any, tmp_path: Path) -> None:
    shot = Shot(1, 1, 2.0, 3.0, "tee", evidence=HOSTILE)
    score = HoleScore(1, 1, 1.0, 9.0, 4, 4, 0, 0, confidence=0.5, doubts=(HOSTILE,))
    doubt = Doubt(1, 2.0, HOSTILE, HOSTILE, alternatives=(HOSTILE,))
    plan = Plan(card=Card(course=HOSTILE))
    folder = RoundFolder(tmp_path)
    publish(
        folder,
        Round((score,), (shot,), (doubt,), plan=plan),
        {"plan": {"card": {"course": HOSTILE}}, "sources": [{"path": "../../../etc/passwd\x00"}]},
    )
    write_report(folder)
    page, complaints = open_report(browser, folder)
    page.wait_for_timeout(200)
    assert complaints == []
    assert page.locator("img").count() == 0 and page.locator("script").count() == 1
    shown = page.inner_text("h1")
    assert "<script>alert(1)</script>" in shown and "{{7*7}}" in shown
    assert not re.search("[\u202a-\u202e\u2066-\u2069\x00]", folder.report_html.read_text(encoding="utf-8"))


def test_the_accessibility_check_itself_can_fail(browser: Any) -> None:
    page = browser.new_page()
    page.set_content('<p style="color:#999;background:#fff">pale</p><img src="data:,"><button></button>')
    assert {line.split(":")[0] for line in serious(page)} >= {"color-contrast", "image-alt", "button-name"}


class Cells(HTMLParser):
    """Visible and spoken text of the score cells of the card, in order."""

    def __init__(self) -> None:
        super().__init__()
        self.inside = False
        self.scores: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag == "span" and str(dict(attrs).get("class", "")).startswith("score ")

    def handle_endtag(self, tag: str) -> None:
        self.inside = False

    def handle_data(self, data: str) -> None:
        if self.inside and data.strip():
            self.scores.append(data.strip())


@pytest.mark.parametrize("path", truth_files()[:4], ids=lambda path: path.parent.name)
def test_the_card_shows_the_scores_of_the_folder(path: Path, tmp_path: Path) -> None:
    folder = folder_of(path, tmp_path)
    with folder.holes_csv.open(encoding="utf-8") as source:
        scores = [row["strokes"] for row in csv.DictReader(source)]
    cells = Cells()
    cells.feed(folder.report_html.read_text(encoding="utf-8").split('aria-labelledby="running"')[0])
    assert cells.scores == scores


@pytest.mark.parametrize(
    ("value", "mark"),
    [(-3, "rings"), (-2, "rings"), (-1, "ring"), (0, "plain"), (1, "box"), (2, "boxes"), (5, "boxes")],
)
def test_scores_carry_the_trades_marks(value: int, mark: str) -> None:
    # Circles below par, squares above, doubled from two on: the trade's notation, from memory.
    score = HoleScore(1, 1, 0.0, 1.0, 5, 5 + value, value)
    assert score_mark(score) == mark
    assert score_mark(replace(score, to_par=None)) == "plain"


def test_signs_are_true_minus_and_even_is_e() -> None:
    assert [to_par(value) for value in (-2, 0, 3, None)] == ["\u22122", "E", "+3", "–"]
    assert signed(-1.234) == "\u22121.23"


def test_a_round_with_nothing_known_still_makes_a_page(browser: Any, tmp_path: Path) -> None:
    folder = RoundFolder(tmp_path)
    publish(folder, Round((HoleScore(3, 1, 0.0, 5.0), HoleScore(4, 2, 5.0, 9.0)), ()), {"sources": []})
    write_report(folder)
    page, complaints = open_report(browser, folder, bypass_csp=True)
    assert complaints == [] and serious(page) == []
    assert "No stroke was told" in page.inner_text("main")


@pytest.mark.parametrize("scheme", ["dark"])
def test_a_series_page_is_silent_accessible_and_adds_up(browser: Any, tmp_path: Path, scheme: str) -> None:
    paths = truth_files()[:3]
    folders = [folder_of(path, tmp_path / path.parent.name) for path in paths]
    page_path = tmp_path / "series.html"
    write_series_report(folders, page_path)
    size = {"width": 360, "height": 800}
    page = browser.new_page(color_scheme=scheme, viewport=size, bypass_csp=True)
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on(
        "request",
        lambda request: complaints.append(request.url) if "series.html" not in request.url else None,
    )
    page.goto(page_path.as_uri())
    assert complaints == [] and serious(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    rows = page.locator("section:first-of-type tbody tr").all_inner_texts()
    truths = [load(path) for path in paths]
    for row, truth in zip(rows, truths, strict=True):
        strokes, final = sum(hole["strokes"] for hole in truth["holes"]), truth["holes"][-1]["running_to_par"]
        assert f"{strokes} ({to_par(final)})" in row


def test_a_fault_must_come_up_in_two_rounds_and_is_counted_over_all(tmp_path: Path) -> None:
    views = [view_of(folder_of(path, tmp_path / path.parent.name)) for path in truth_files()[:4]]
    found = series_of(views)
    shots = [(number, stroke.shot) for number, view in enumerate(views) for stroke in view.strokes]
    assert found.faults
    for fault in found.faults:
        name, _, what = fault.name.rpartition(" ")
        if what in MISSES:
            hit = [number for number, shot in shots if shot.miss == what and called(shot) == name]
            assert (fault.times, fault.rounds) == (len(hit), len(set(hit)))
            assert fault.rounds >= 2


def called(shot: Shot) -> str:
    return "putt" if shot.kind == "putt" else club_name(shot.club) or shot.kind

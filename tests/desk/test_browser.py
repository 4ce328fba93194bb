"""The desk in a real browser: jump, correct by keyboard, totals, reload, re-read, undo, drag."""

from __future__ import annotations

import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from support.desks import DEMO, chromium, demo_round, desk_of, keep_doubts, serious, with_footage

from reviewkit.log import RoundFolder, open_round
from reviewkit.log.amendments import load
from reviewkit.model import Doubt, Plan
from reviewkit.pipeline import Options, read_round


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    with chromium() as found:
        yield found


@pytest.fixture
def folder(tmp_path: Path) -> RoundFolder:
    return demo_round(tmp_path)


def open_page(browser: Any, address: str, **options: Any) -> tuple[Any, list[str]]:
    """A page whose console complaints and requests elsewhere are gathered."""
    page = browser.new_page(**options)
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on(
        "request", lambda request: None if request.url.startswith(address) else complaints.append(request.url)
    )
    page.goto(address)
    page.wait_for_selector("#card button")
    return page, complaints


def wait(page: Any, condition: str) -> None:
    """Until a condition holds; asked from outside, because the page's policy forbids evaluating text."""
    until = time.monotonic() + 10
    while not page.evaluate(condition):
        assert time.monotonic() < until, condition
        page.wait_for_timeout(20)


def seconds(page: Any) -> float:
    wait(page, "document.querySelector('video').readyState >= 2 && !document.querySelector('video').seeking")
    return float(page.evaluate("document.querySelector('video').currentTime"))


def total(page: Any) -> str:
    return str(page.inner_text("#total strong"))


def test_a_doubt_is_jumped_to_and_corrected_by_keyboard_alone(browser: Any, folder: RoundFolder) -> None:
    second, last = folder.holes["hole"].iloc[1], folder.holes["hole"].iloc[-1]
    moment = float(folder.holes["start_s"].iloc[1]) + 7.3
    worst = Doubt(int(second), moment, "The talk says otherwise.", "it's a 7", 0.9, alternatives=("7", "8"))
    keep_doubts(folder, [Doubt(int(last), 112.25, "Which par?", "", 0.4, field="par"), worst])
    with desk_of(folder) as (address, session):
        doubts = session.state()["doubts"]
        assert [doubt["hole"] for doubt in doubts] == [second, last], "worst first"
        page, complaints = open_page(browser, address)
        assert abs(seconds(page) - doubts[0]["at_s"]) <= 0.2, "opens at the worst doubt"
        page.keyboard.press("j")
        page.wait_for_timeout(200)
        assert abs(seconds(page) - doubts[1]["at_s"]) <= 0.2
        page.keyboard.press("k")
        before = total(page)
        page.keyboard.press("n")
        picked = page.inner_text(".readings [aria-checked=true]")
        assert picked == "7"
        page.keyboard.press("a")
        wait(page, f"document.querySelector('#total strong').textContent !== '{before}'")
        (row,) = load(folder)
        assert (row.action, row.hole, row.value) == ("set", doubts[0]["hole"], picked)

        assert session.settle()
        after = session.state()["total"]["to_par"]
        page.reload()
        page.wait_for_selector("#card button")
        assert total(page) == after, "a reload keeps it"
        assert page.inner_text(f'[data-key="card-{second}"] .score') == "7"

        read_round([DEMO / "asr.json"], folder.path, Plan(target=1), Options())
        with_footage(folder.path, folder.path.parent / "round.mp4")
        holes = open_round(folder.path).holes.set_index("hole")
        assert str(holes["strokes"][row.hole]) == picked, "a new read keeps it"
        page.reload()
        page.wait_for_selector("#card button")
        assert page.inner_text(f'[data-key="card-{second}"] .score') == "7"

        page.keyboard.press("u")
        wait(page, "document.querySelector('#undo').disabled")
        assert [row.action for row in load(folder)] == ["set", "undo"]
        assert complaints == []


def test_a_field_is_edited_in_place_and_what_is_wrong_is_told(browser: Any, folder: RoundFolder) -> None:
    with desk_of(folder) as (address, _):
        page, complaints = open_page(browser, address)
        page.keyboard.press("e")
        assert page.evaluate("document.activeElement.dataset.field") == "strokes"
        page.keyboard.type("9")
        page.keyboard.press("Enter")
        wait(page, "document.querySelector('#card [aria-current] .score').textContent === '9'")
        assert page.evaluate("document.activeElement.dataset.field") == "strokes", "the focus stays"
        page.fill("[data-key=hole-strokes]", "many")
        page.keyboard.press("Enter")
        page.wait_for_selector("#complaint:not([hidden])")
        assert "strokes 'many' is not a whole number" in page.inner_text("#complaint")
        assert [row.value for row in load(folder)] == ["9"]
        assert [text for text in complaints if "422" not in text] == []


def test_boundaries_are_dragged_joined_and_split(browser: Any, folder: RoundFolder) -> None:
    with desk_of(folder) as (address, session):
        page, complaints = open_page(browser, address)
        numbers = [hole["hole"] for hole in session.state()["holes"]]
        second = numbers[1]

        def drag(selector: str, to_s: float) -> None:
            track = page.locator(".track").bounding_box()
            handle = page.locator(selector).bounding_box()
            page.mouse.move(handle["x"] + handle["width"] / 2, handle["y"] + handle["height"] / 2)
            page.mouse.down()
            length = max(session.state()["holes"][-1]["end_s"], 118.5)
            page.mouse.move(track["x"] + to_s / length * track["width"], track["y"] + 10, steps=5)
            page.mouse.up()

        start = session.state()["holes"][1]["start_s"]
        drag(f"[data-hole='{second}']", start + 4)
        wait(page, "document.querySelector('#work').textContent.startsWith('1 correction')")
        assert abs(session.state()["holes"][1]["start_s"] - (start + 4)) < 0.5
        drag(f"[data-hole='{second}']", session.state()["holes"][0]["start_s"] - 1)
        wait(page, f"!document.querySelector('[data-key=\"card-{second}\"]')")
        assert [hole["hole"] for hole in session.state()["holes"]] == [numbers[0], *numbers[2:]]
        drag(".spare", start)
        page.wait_for_selector(f'[data-key="card-{second}"]')
        assert [row.action for row in load(folder)] == ["set", "merge", "split"]
        assert complaints == []


@pytest.mark.parametrize(("scheme", "width"), [("light", 1280), ("dark", 390)])
def test_axe_finds_nothing_serious(browser: Any, folder: RoundFolder, scheme: str, width: int) -> None:
    with desk_of(folder) as (address, _):
        size = {"width": width, "height": 900}
        page, _ = open_page(browser, address, color_scheme=scheme, viewport=size, bypass_csp=True)
        assert serious(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width

"""A round folder with footage beside it, a desk that serves it, and a browser to look at it."""

from __future__ import annotations

import contextlib
import json
import shutil
import socket
import threading
import time
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest
import uvicorn

from reviewkit.desk.server import build
from reviewkit.desk.session import Session
from reviewkit.files import content_hash
from reviewkit.log import RoundFolder, open_round
from reviewkit.model import Plan
from reviewkit.pipeline import Options, read_round
from reviewkit.rereading import again

DEMO = Path(__file__).parents[2] / "fixtures" / "rounds" / "demo"
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
TOKEN = "test-token"


def demo_round(place: Path) -> RoundFolder:
    """The demo's misheard words read into `place`/round, with its footage beside it."""
    shutil.copyfile(DEMO / "round.mp4", place / "round.mp4")
    read_round([DEMO / "asr.json"], place / "round", Plan(target=1), Options())
    return with_footage(place / "round", place / "round.mp4")


def with_footage(path: Path, footage: Path) -> RoundFolder:
    """Name the footage in round.json, as a read of the footage itself would."""
    meta = json.loads((path / "round.json").read_text(encoding="utf-8"))
    meta["sources"] = [
        {
            "path": f"../{footage.name}",
            "sha256": content_hash(footage),
            "offset_s": 0.0,
            "in_s": 0.0,
            "duration_s": 118.5,
        }
    ]
    (path / "round.json").write_text(json.dumps(meta), encoding="utf-8")
    return open_round(path)


def keep_doubts(folder: RoundFolder, doubts: list[Any]) -> None:
    """Put these doubts into the reading, so that a test does not hang on what the reader doubts today."""
    path = folder.path / "reading.json"
    reading = json.loads(path.read_text(encoding="utf-8"))
    reading["doubts"] = [asdict(doubt) for doubt in doubts]
    path.write_text(json.dumps(reading), encoding="utf-8")


@contextlib.contextmanager
def desk_of(folder: RoundFolder) -> Iterator[tuple[str, Session]]:
    """The address of a running desk and its session."""
    bound = socket.socket()
    bound.bind(("127.0.0.1", 0))
    port = bound.getsockname()[1]
    session = Session(folder, again)
    session.start()
    config = uvicorn.Config(build(session, TOKEN, port), log_level="error", lifespan="off")
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, kwargs={"sockets": [bound]}, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)
    try:
        yield f"http://127.0.0.1:{port}/{TOKEN}/", session
    finally:
        session.settle()
        server.should_exit = True
        thread.join(5)


@contextlib.contextmanager
def chromium() -> Iterator[Any]:
    """A headless Chromium of the system, driven by playwright; skips where there is none."""
    if CHROMIUM is None:
        pytest.skip("no chromium on PATH (apt-get install chromium)")
    playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    with playwright.sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=CHROMIUM, args=["--headless", "--no-sandbox", "--disable-gpu"]
        )
        try:
            yield browser
        finally:
            browser.close()


def serious(page: Any) -> list[str]:
    """Serious and critical violations that axe-core finds on a page, in short."""
    axe = pytest.importorskip("axe_playwright_python.base", reason="axe-playwright-python is not installed")
    page.evaluate(axe.AXE_FILE_PATH.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run()")
    return [
        f"{rule['id']}: {rule['nodes'][0]['html'][:120]} ({rule['nodes'][0].get('failureSummary', '')[:200]})"
        for rule in found["violations"]
        if rule["impact"] in ("serious", "critical")
    ]

"""One open desk: the reading, the corrections so far, and what follows from both.

An edit is kept in amendments.csv and answered from the reading at hand at once; reading the rest anew with it
as a fact, and writing the tables and pages, goes on in the background.
"""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping
from typing import Any

from reviewkit.desk.requests import corrections_for
from reviewkit.desk.state import state_of
from reviewkit.errors import ReviewkitError
from reviewkit.log import RoundFolder
from reviewkit.log.amend_apply import Clash, apply
from reviewkit.log.amended import READING_NAME, base_reading
from reviewkit.log.amendments import append, load
from reviewkit.model import Amendment, Round

Again = Callable[[RoundFolder], None]
"""Reads the round anew from its words with every correction, and writes tables and pages."""


class Session:
    """The round in `folder` as one or more browser windows see it. Safe to use from several threads."""

    def __init__(self, folder: RoundFolder, again: Again) -> None:
        self.folder = folder
        self._again = again
        self._guard = threading.Lock()
        self._wake = threading.Event()
        self._pending = 0
        self._done = 0
        self._complaint = ""
        self._stamp: tuple[float, ...] = ()
        self._thread: threading.Thread | None = None
        self._refresh()

    def start(self) -> None:
        """Work in the background from now on; the thread ends with the program."""
        self._thread = threading.Thread(target=self._work, name="reading anew", daemon=True)
        self._thread.start()

    @property
    def version(self) -> str:
        """Changes whenever what `state` tells may have changed."""
        return f"{'/'.join(map(str, self._files()))}:{self._done}:{self.busy}"

    @property
    def busy(self) -> bool:
        return self._done < self._pending

    def state(self) -> dict[str, Any]:
        """Everything the page shows, as plain data."""
        with self._guard:
            if self._stamp != self._files():
                self._refresh()
            return self._told()

    def act(self, asked: Mapping[str, Any]) -> dict[str, Any]:
        """Carry out one request of the page and return the new state. Raises ReviewkitError."""
        with self._guard:
            if self._stamp != self._files():
                self._refresh()
            append(self.folder, corrections_for(asked, self.shown, self.amendments))
            self._refresh()
            self._pending += 1
            told = self._told()
        self._prod()
        return told

    def read_again(self) -> None:
        """Ask for a new reading, as after a new rule."""
        with self._guard:
            self._pending += 1
        self._prod()

    def settle(self, timeout_s: float = 30.0) -> bool:
        """Wait until the background work is done; False when it takes longer."""
        waiting = threading.Event()
        for _ in range(int(timeout_s * 50)):
            if not self.busy:
                return True
            waiting.wait(0.02)
        return False

    def _told(self) -> dict[str, Any]:
        told = state_of(self.folder, self.shown, self.clashes, self.amendments)
        return {**told, "version": self.version, "busy": self.busy, "complaint": self._complaint}

    def _refresh(self) -> None:
        self._stamp = self._files()
        self.folder = RoundFolder(self.folder.path)
        self.base: Round = base_reading(self.folder)
        self.amendments: tuple[Amendment, ...] = load(self.folder)
        shown, clashes = apply(self.base, self.amendments)
        self.shown: Round = shown
        self.clashes: tuple[Clash, ...] = clashes

    def _files(self) -> tuple[float, ...]:
        """When the files under the desk last changed, by this desk or by another program."""
        paths = (self.folder.path / READING_NAME, self.folder.amendments_csv, self.folder.round_json)
        return tuple(path.stat().st_mtime_ns if path.exists() else 0 for path in paths)

    def _prod(self) -> None:
        """Wake the background work, and begin it anew where a fault has ended it."""
        self._wake.set()
        if self._thread is not None and not self._thread.is_alive():
            self.start()

    def _work(self) -> None:
        while True:
            self._wake.wait()
            self._wake.clear()
            self._pass()

    def _pass(self) -> None:
        """One new reading. A fault that is no told error goes on to the terminal."""
        asked = self._pending
        complaint = "Reading the rest anew failed; the terminal says why. Your corrections are kept."
        try:
            self._again(RoundFolder(self.folder.path))
            complaint = ""
        except ReviewkitError as error:
            complaint = str(error)
        finally:
            self._complaint, self._done = complaint, asked

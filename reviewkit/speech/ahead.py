"""A generator run ahead of its reader in a thread, so that decoding and listening overlap."""

from __future__ import annotations

import queue
import threading
from collections.abc import Generator, Iterable
from typing import TypeVar

Item = TypeVar("Item")
_WAIT_S = 0.2


def ahead(items: Iterable[Item], room: int) -> Generator[Item, None, None]:
    """Yield `items`, of which up to `room` are made before they are asked for.

    What the items raise is raised here, in its place. Leaving early stops the thread at its next item.
    """
    made: queue.Queue[tuple[Item | None, BaseException | None]] = queue.Queue(maxsize=room)
    stop = threading.Event()

    def put(item: Item | None, error: BaseException | None) -> bool:
        while not stop.is_set():
            try:
                made.put((item, error), timeout=_WAIT_S)
                return True
            except queue.Full:
                continue
        return False

    def work() -> None:
        try:
            for item in items:
                if not put(item, None):
                    return
        except BaseException as error:
            put(None, error)
        else:
            put(None, StopIteration())

    thread = threading.Thread(target=work, name="ahead", daemon=True)
    thread.start()
    try:
        while True:
            item, error = made.get()
            if isinstance(error, StopIteration):
                return
            if error is not None:
                raise error
            yield item  # type: ignore[misc]
    finally:
        stop.set()
        thread.join()

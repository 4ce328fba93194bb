"""The house rules over the syntax trees: who may import whom, and how long things may grow."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "reviewkit"
BASE = {"model", "errors", "timecode", "files"}
# The rooms in the order of the flow, each with the rooms it may use besides BASE.
ROOMS: dict[str, set[str]] = {
    "model": set(),
    "footage": set(),
    "speech": set(),
    "language": set(),
    "holes": set(),
    "shots": set(),
    "scoring": set(),
    "log": set(),
    "stats": {"log"},
    "export": {"log", "stats", "footage"},
    "report": {"log", "stats"},
    "desk": {"log", "stats", "report", "footage", "pipeline"},
}
# Expensive libraries and the only rooms that may load them.
HEAVY = {
    "faster_whisper": {"speech"},
    "av": {"footage"},
    "cv2": {"footage", "export"},
    "ffmpeg": {"footage", "export"},
    "scenedetect": {"footage"},
    "pandas": {"log", "stats", "export", "report", "desk", "cli"},
    "matplotlib": {"report", "export"},
}
MODULES = sorted(PACKAGE.rglob("*.py"))


def imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield from (f"{node.module}.{name.name}" for name in node.names)


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_rooms_import_only_what_they_may(path: Path) -> None:
    room = path.relative_to(PACKAGE).parts[0]
    for name in imported(ast.parse(path.read_text(encoding="utf-8"))):
        parts = name.split(".")
        if room in ROOMS and parts[0] == "reviewkit" and len(parts) > 1:
            allowed = ROOMS[room] | BASE | {room, "__version__"}
            assert parts[1] in allowed, f"{room} may not import {name}"
        if parts[0] in HEAVY and room in ROOMS:
            assert room in HEAVY[parts[0]], f"{room} may not import {parts[0]}"


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_modules_and_functions_stay_small(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert len(text.splitlines()) <= 300, "split the module"
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef):
            assert node.end_lineno is not None
            assert node.end_lineno - node.lineno < 60, f"split {node.name}"

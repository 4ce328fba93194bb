"""`reviewkit doctor`: what is there, what is missing and the command that mends it."""

from __future__ import annotations

import importlib.metadata
import os
import platform
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass

import click

from reviewkit import __version__
from reviewkit.errors import ReviewkitError


@dataclass(frozen=True, slots=True)
class Finding:
    """One line: what was looked for, what was found, and how to mend it. `needed` is False for extras."""

    what: str
    found: str
    mend: str = ""
    needed: bool = True

    @property
    def mark(self) -> str:
        return "ok" if not self.mend else "MISSING" if self.needed else "-"


@click.command()
def command() -> None:
    """Say what is installed, what is missing and how to mend it. Exit 1 when reading cannot work."""
    findings = list(look())
    width = max(len(item.what) for item in findings)
    for item in findings:
        click.echo(f"{item.mark:<8}{item.what:<{width}}  {item.found}")
        if item.mend:
            click.echo(f"{'':<8}{'':<{width}}  mend it with: {item.mend}")
    if any(item.mark == "MISSING" for item in findings):
        sys.exit(1)


def look() -> Iterator[Finding]:
    """Everything that reading needs, then what makes it faster or adds to it."""
    yield Finding("reviewkit", f"{__version__} on Python {platform.python_version()}, {cores()} cores")
    yield ffmpeg()
    for name in ("faster-whisper", "ctranslate2", "av", "scenedetect"):
        yield package(name, f"pip install {name}")
    yield from weights()
    yield gpu()
    yield package("distributed", "pip install 'reviewkit[cluster]'", needed=False)
    yield cache()


def ffmpeg() -> Finding:
    from reviewkit.footage.ffmpeg import find_ffmpeg

    try:
        path = find_ffmpeg()
        told = subprocess.run([path, "-version"], capture_output=True, text=True, check=False).stdout
    except (ReviewkitError, OSError) as error:
        return Finding("ffmpeg", str(error), "pip install imageio-ffmpeg")
    version = re.search(r"version (\S+)", told)
    if not version:
        return Finding("ffmpeg", f"{path} does not run", "pip install --force-reinstall imageio-ffmpeg")
    return Finding("ffmpeg", f"{version[1]} ({path})")


def package(name: str, mend: str, needed: bool = True) -> Finding:
    try:
        return Finding(name, importlib.metadata.version(name))
    except importlib.metadata.PackageNotFoundError:
        return Finding(name, "not installed", mend, needed)


def weights() -> Iterator[Finding]:
    from reviewkit.cache import cache_dir
    from reviewkit.speech.weights import WHEELS, installed

    try:
        found = installed(cache_dir() / "models")
    except ReviewkitError as error:
        yield Finding("speech weights", error.problem, error.remedy)
        return
    for item in found:
        yield Finding(f"weights {item.name}", f"{item.source} ({item.path})")
    if not found:
        yield Finding("speech weights", "none", "pip install 'reviewkit[offline-model]'")
        return
    for name in WHEELS.keys() - {item.name for item in found}:
        yield Finding(
            f"weights {name}", "not installed", "pip install 'reviewkit[offline-model]'", needed=False
        )


def gpu() -> Finding:
    try:
        import ctranslate2

        count = ctranslate2.get_cuda_device_count()
    except (ImportError, RuntimeError) as error:
        return Finding("GPU", str(error).splitlines()[0], "pip install ctranslate2", needed=False)
    if count:
        return Finding("GPU", f"{count} CUDA device(s): read uses them unless --device cpu")
    return Finding("GPU", "none found, the speech model runs on the CPU")


def cache() -> Finding:
    from reviewkit.cache import cache_dir

    place = cache_dir()
    size = sum(path.stat().st_size for path in place.rglob("*") if path.is_file()) if place.is_dir() else 0
    return Finding("cache", f"{place} ({size / 1e6:.0f} MB; safe to delete)")


def cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1

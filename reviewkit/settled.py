"""What was heard again, kept in the cache: other rules and corrections do not make it another matter."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from pathlib import Path

from reviewkit import __version__
from reviewkit.cache import cache_dir
from reviewkit.errors import FolderError
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import Plan, Transcript
from reviewkit.speech.manner import AGAIN


def recall(heard: Transcript, plan: Plan) -> Transcript | None:
    """The words with the hearings that they were settled with before, None where they were not."""
    try:
        return replace(heard, again=load_transcript(_place(heard, plan)).again)
    except FolderError:
        return None


def keep(settled: Transcript, plan: Plan) -> Transcript:
    """`settled` as it is read back from now on; itself where nothing was listened to again."""
    if not settled.again:
        return settled
    save_transcript(_place(settled, plan), settled)
    return recall(settled, plan) or settled


def _place(heard: Transcript, plan: Plan) -> Path:
    return cache_dir() / "settled" / f"{_key(heard, plan)}.json"


def _key(heard: Transcript, plan: Plan) -> str:
    words = [(word.text, f"{word.start_s:.3f}", f"{word.end_s:.3f}") for word in heard.words]
    text = repr((__version__, AGAIN, plan, sorted(heard.settings.items()), words))
    return hashlib.sha256(text.encode()).hexdigest()[:32]

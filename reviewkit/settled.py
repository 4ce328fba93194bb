"""What a second listening decided, kept in the cache: the same words and plan are not pondered again."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from pathlib import Path

from reviewkit import __version__
from reviewkit.cache import cache_dir
from reviewkit.errors import FolderError
from reviewkit.files import content_hash
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import Plan, Transcript

_RULES = "rules_sha256"


def recall(heard: Transcript, plan: Plan, rules: Path | None) -> Transcript | None:
    """The words as they were settled before, None where they were not.

    After a change of rules the words that were taken stay, but how sure they make a score is not known any
    more: what the new rules say of them counts alone.
    """
    try:
        kept = load_transcript(_place(heard, plan))
    except FolderError:
        return None
    again = kept.again
    if kept.settings.get(_RULES) != _hash(rules):
        again = tuple(replace(stretch, odds={}) for stretch in again)
    return replace(kept, settings=heard.settings, again=again)


def keep(heard: Transcript, settled: Transcript, plan: Plan, rules: Path | None) -> Transcript:
    """`settled` as it is read back from now on; `heard` itself where nothing was listened to again."""
    if not settled.again:
        return heard
    save_transcript(_place(heard, plan), replace(settled, settings={_RULES: _hash(rules)}))
    return recall(heard, plan, rules) or settled


def _hash(rules: Path | None) -> str:
    return content_hash(rules) if rules and rules.is_file() else ""


def _place(heard: Transcript, plan: Plan) -> Path:
    return cache_dir() / "settled" / f"{_key(heard, plan)}.json"


def _key(heard: Transcript, plan: Plan) -> str:
    words = [(word.text, f"{word.start_s:.3f}", f"{word.end_s:.3f}") for word in heard.words]
    text = repr((__version__, plan, sorted(heard.settings.items()), words))
    return hashlib.sha256(text.encode()).hexdigest()[:32]

"""Reading a round anew from the words that its folder keeps: no footage, no listening."""

from __future__ import annotations

from pathlib import Path

from reviewkit.language.meant import as_meant
from reviewkit.log import RoundFolder
from reviewkit.log.amended import base_reading, publish
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import Round
from reviewkit.pipeline import confirmed, own_rules, write_pages
from reviewkit.reasoning import reason


def again(folder: RoundFolder) -> None:
    """Reason over the transcript with every correction as fact, and write tables and pages.

    What misheard words read as is brought up to date too. A folder without a transcript keeps its reading,
    and only the corrections are worked in. Raises ReviewkitError.
    """
    reading = reread(folder)
    _mend(folder)
    publish(folder, reading, {name: value for name, value in folder.meta.items() if name != "schema"})
    write_pages(folder)


def reread(folder: RoundFolder) -> Round:
    """The uncorrected reading that follows from the words, the plan and the confirmed facts."""
    base = base_reading(folder)
    if not folder.transcript_json.exists():
        return base
    settings = folder.meta.get("settings") or {}
    cuts = [float(cut) for cut in settings.get("cuts") or ()]
    transcript = load_transcript(folder.transcript_json)
    return reason(transcript, base.plan, _rules(folder), cuts, confirmed(folder))


def _mend(folder: RoundFolder) -> None:
    if folder.transcript_json.exists():
        kept = load_transcript(folder.transcript_json)
        mended = as_meant(kept, _rules(folder))
        if mended != kept:
            save_transcript(folder.transcript_json, mended)


def _rules(folder: RoundFolder) -> Path | None:
    """The rules file that the round is read with, besides the package's own."""
    named = str((folder.meta.get("settings") or {}).get("rules") or "")
    return Path(named) if named else own_rules(folder)

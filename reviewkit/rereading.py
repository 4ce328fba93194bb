"""Reading a round anew from the words that its folder keeps: no footage, no listening."""

from __future__ import annotations

from pathlib import Path

from reviewkit.log import RoundFolder
from reviewkit.log.amended import base_reading, publish
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Round
from reviewkit.pipeline import confirmed, own_rules, write_pages
from reviewkit.reasoning import reason


def again(folder: RoundFolder) -> None:
    """Reason over the transcript with every correction as fact, and write tables and pages.

    A folder without a transcript keeps its reading, and only the corrections are worked in. Raises
    ReviewkitError.
    """
    publish(folder, reread(folder), {name: value for name, value in folder.meta.items() if name != "schema"})
    write_pages(folder)


def reread(folder: RoundFolder) -> Round:
    """The uncorrected reading that follows from the words, the plan and the confirmed facts."""
    base = base_reading(folder)
    if not folder.transcript_json.exists():
        return base
    settings = folder.meta.get("settings") or {}
    named = str(settings.get("rules") or "")
    own = Path(named) if named else own_rules(folder)
    cuts = [float(cut) for cut in settings.get("cuts") or ()]
    transcript = load_transcript(folder.transcript_json)
    return reason(transcript, base.plan, own, cuts, confirmed(folder))

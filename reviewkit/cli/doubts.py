"""`reviewkit doubts`: what is doubtful."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from reviewkit.model import Doubt


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option("--as", "form", type=click.Choice(["text", "json"]), default="text")
def command(round_folder: Path, form: str) -> None:
    """What is doubtful in ROUND, worst first: where, the words it rests on, other readings."""
    from reviewkit.log import open_round
    from reviewkit.log.amended import doubts

    found = doubts(open_round(round_folder))
    if form == "json":
        click.echo(json.dumps([asdict(doubt) for doubt in found], indent=1, ensure_ascii=False))
        return
    if not found:
        click.echo("Nothing to check.")
        return
    count = "1 doubt" if len(found) == 1 else f"{len(found)} doubts"
    click.echo(f"{count}, worst first. Settle them with: reviewkit desk {round_folder}\n")
    for place, doubt in enumerate(found, start=1):
        click.echo("\n".join(told(place, doubt)))


def told(place: int, doubt: Doubt) -> list[str]:
    """The lines that show one doubt; what was said goes without marks that could disturb a terminal."""
    from reviewkit.log.amendments import plain
    from reviewkit.timecode import clock

    row = f"hole {doubt.hole}" + (f" stroke {doubt.stroke}" if doubt.stroke is not None else "")
    lines = [f"{place}. {clock(doubt.at_s)}  {row}, {doubt.field}: {plain(doubt.text)}"]
    if doubt.words:
        lines.append(f'   "{plain(doubt.words)}"')
    if doubt.alternatives:
        lines.append(f"   or {', '.join(plain(text) for text in doubt.alternatives)}")
    return lines

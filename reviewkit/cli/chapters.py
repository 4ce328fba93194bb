"""`reviewkit chapters`: print the round's chapters, or write them into the footage."""

from __future__ import annotations

from pathlib import Path

import click

EXISTING = click.Path(exists=True, dir_okay=False, path_type=Path)


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option(
    "--into", type=click.Path(path_type=Path), help="Write the footage with chapters: .mp4, .mkv, .mov."
)
@click.option(
    "--footage", type=EXISTING, multiple=True, help="Footage to use, when it has moved; once a clip."
)
@click.option(
    "--title", default="", metavar="TEXT", help="Title template, such as 'Hole {hole}[, par {par}]'."
)
@click.option("--scores", is_flag=True, help="Say the score in the titles (gives the ending away).")
def command(
    round_folder: Path, into: Path | None, footage: tuple[Path, ...], title: str, scores: bool
) -> None:
    """Print the timestamp list of ROUND, or write its chapters --into a copy of the footage.

    The copy keeps every picture and sound packet, rotation and tags; nothing is encoded again.
    """
    from reviewkit.cli.export import tell
    from reviewkit.export import Choices, Job
    from reviewkit.export.description import lines_of
    from reviewkit.log import open_round

    job = Job(open_round(round_folder), Choices(title=title, scores=scores))
    if into is None:
        text, notes = lines_of(job)
        click.echo(text, nl=False)
        tell(notes)
        return
    from reviewkit.export.into_footage import write_into

    tell(write_into(job, into, footage))
    click.echo(f"Wrote {into}")

"""`reviewkit export`: write a round out in any of the registry's formats."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

import click

from reviewkit.errors import ReviewkitError
from reviewkit.export.registry import BY_NAME, FORMATS, Format

EXISTING = click.Path(exists=True, dir_okay=False, path_type=Path)


class NamesInHelp(click.Command):
    """Help that lists the formats from the registry, one line each."""

    def format_epilog(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Formats"):
            formatter.write_dl([(item.name, item.line) for item in FORMATS])


@click.command(cls=NamesInHelp)
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option(
    "--as", "names", type=click.Choice([*BY_NAME, "all"]), multiple=True, metavar="FORMAT", help="May repeat."
)
@click.option("--out", type=click.Path(path_type=Path), help="Folder to write to; ROUND/export by default.")
@click.option(
    "--title", default="", metavar="TEXT", help="Title template, such as 'Hole {hole}[, par {par}]'."
)
@click.option("--scores", is_flag=True, help="Say the score in titles (gives the ending away).")
@click.option(
    "--footage", type=EXISTING, multiple=True, help="Footage to use, when it has moved; once a clip."
)
@click.option("--rate", default="", metavar="RATE", help="Frame rate of markers and overlays: 25, 29.97df…")
@click.option("--size", default="1920x1080", metavar="WxH", help="Size of overlays in pixels.")
def command(
    round_folder: Path,
    footage: tuple[Path, ...],
    names: tuple[str, ...],
    out: Path | None,
    title: str,
    scores: bool,
    rate: str,
    size: str,
) -> None:
    """Write ROUND out in one or more formats, or --as all that its folder allows."""
    from reviewkit.export import Choices, Job, write
    from reviewkit.log import open_round

    if not names:
        raise click.UsageError("Name at least one format: --as FORMAT (reviewkit export --help lists them).")
    folder = open_round(round_folder)
    job = Job(folder, Choices(title=title, scores=scores, rate=rate, size=pixels(size), footage=footage))
    home = out or folder.path / "export"
    for chosen in formats(names):
        path = home / chosen.file
        try:
            tell(f"{chosen.name}: {note}" for note in write(chosen, job, path))
        except ReviewkitError as error:
            # Asked for by name, a format that cannot be written is an error; among all, it is a note.
            if "all" not in names or chosen.name in names or not chosen.needs:
                raise
            tell([f"{chosen.name} left out: {error}"])
            continue
        click.echo(f"Wrote {path}")


def formats(names: Iterable[str]) -> list[Format]:
    """The formats named, each once, in the registry's order; `all` is those that take seconds."""
    return [item for item in FORMATS if item.name in names or ("all" in names and not item.slow)]


def pixels(size: str) -> tuple[int, int]:
    """Width and height from `1920x1080`. Raises ReviewkitError."""
    width, _, height = size.lower().partition("x")
    if not (
        width.isdecimal() and height.isdecimal() and 16 <= int(width) <= 8192 and 16 <= int(height) <= 8192
    ):
        raise ReviewkitError(f"'{size}' is not a size in pixels.", "Write it like 1920x1080.")
    return int(width), int(height)


def tell(notes: Iterable[str]) -> None:
    """Notes on standard error, so that what is printed can be piped."""
    for note in notes:
        click.echo(f"note: {note}", err=True)

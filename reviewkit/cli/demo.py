"""`reviewkit demo`: the main job on a short invented round that comes with the package."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reviewkit.errors import FileError

if TYPE_CHECKING:
    import pandas as pd

PACKAGE = Path(__file__).parents[1]
PLACES = (
    PACKAGE / "demo_media" / "round.mp4",
    PACKAGE.parent / "fixtures" / "rounds" / "demo" / "round.mp4",
)
"""Where the footage lies in an installed package, and in a checkout."""
COLUMNS = ("hole", "par", "strokes", "running_to_par", "putts", "penalty_strokes", "confidence", "status")


@click.command()
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("reviewkit-demo"),
    show_default=True,
    metavar="FOLDER",
    help="Folder for the footage and its round folder.",
)
@click.pass_context
def command(ctx: click.Context, out: Path) -> None:
    """Put a two-minute video of four invented holes into FOLDER and read it, as `reviewkit read` does."""
    from reviewkit.cli.read import command as read
    from reviewkit.log import open_round

    footage, folder = out / "round.mp4", out / "round"
    place(footage)
    click.echo(f"Footage: {footage}")
    ctx.invoke(read, sources=(footage,), out=folder)
    click.echo("")
    for line in lines(open_round(folder).holes):
        click.echo(line)
    click.echo(f"\nThe round on one page: {folder / 'report.html'}")
    click.echo(f"Where the strokes went: reviewkit stats {folder}")


def place(footage: Path) -> None:
    """Copy the demo's footage to `footage`, whole. Raises FileError."""
    from reviewkit.files import whole

    source = next((path for path in PLACES if path.is_file()), None)
    if source is None:
        raise FileError(PLACES[0], "is missing.", "Install reviewkit again, with --force-reinstall.")
    with whole(footage) as part:
        shutil.copyfile(source, part)


def lines(holes: pd.DataFrame) -> Iterator[str]:
    """The card as read, a line a hole; a cell that is not known stays empty."""
    from reviewkit.timecode import clock

    heads = [name.removesuffix("_to_par").removesuffix("_strokes") for name in COLUMNS]
    yield "start  " + "  ".join(heads)
    cells = holes[list(COLUMNS)].astype("string").fillna("")
    for start_s, values in zip(holes["start_s"], cells.itertuples(index=False), strict=True):
        row = "  ".join(cell.rjust(len(head)) for cell, head in zip(values, heads, strict=True))
        yield f"{clock(start_s):>5}  {row}"

"""`reviewkit clips`: holes, strokes and reels as files of their own."""

from __future__ import annotations

from pathlib import Path

import click

from reviewkit.errors import ReviewkitError

EXISTING = click.Path(exists=True, dir_okay=False, path_type=Path)


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option("--holes", is_flag=True, help="Every hole.")
@click.option("--hole", "numbers", type=int, multiple=True, help="One hole by its number; may repeat.")
@click.option("--stroke", "strokes", multiple=True, metavar="HOLE.STROKE", help="One stroke, such as 7.2.")
@click.option(
    "--best", type=click.IntRange(0), default=0, metavar="N", help="The N strokes that gained most."
)
@click.option("--worst", type=click.IntRange(0), default=0, metavar="N", help="The N strokes that lost most.")
@click.option("--reel", is_flag=True, help="All of them one after another in one file.")
@click.option(
    "--pad", type=click.FloatRange(0), default=1.0, show_default=True, help="Seconds kept around each."
)
@click.option("--upright", is_flag=True, help="Crop to 9:16.")
@click.option("--exact", is_flag=True, help="Cut at the very frame, which encodes again.")
@click.option(
    "--footage", type=EXISTING, multiple=True, help="Footage to use, when it has moved; once a clip."
)
@click.option("--out", type=click.Path(path_type=Path), help="Folder to write to; ROUND/clips by default.")
def command(
    round_folder: Path,
    holes: bool,
    numbers: tuple[int, ...],
    strokes: tuple[str, ...],
    best: int,
    worst: int,
    reel: bool,
    pad: float,
    upright: bool,
    exact: bool,
    footage: tuple[Path, ...],
    out: Path | None,
) -> None:
    """Cut clips from ROUND's footage.

    Where a key frame lies within two seconds before a clip, the clip begins there and its pictures are copied
    as they are; otherwise it is encoded.
    """
    from reviewkit.export.clips import Wanted, picks_of, write_clips, write_reel
    from reviewkit.export.footage import timeline_of
    from reviewkit.footage.cut import Look
    from reviewkit.log import open_round

    folder = open_round(round_folder)
    wanted = Wanted(holes, numbers, tuple(map(pair, strokes)), best, worst)
    picks = picks_of(folder, wanted)
    timeline = timeline_of(folder, footage)
    look, home = Look(upright, exact), out or folder.path / "clips"
    if reel:
        written = iter([write_reel(timeline, picks, home, pad, look)])
    else:
        written = write_clips(timeline, picks, home, pad, look)
    for path, copied in written:
        click.echo(f"Wrote {path} ({'copied' if copied else 'encoded'})")


def pair(text: str) -> tuple[int, int]:
    """(7, 2) from `7.2`. Raises ReviewkitError."""
    hole, _, stroke = text.partition(".")
    if not (hole.isdecimal() and stroke.isdecimal()):
        raise ReviewkitError(f"'{text}' is not a stroke.", "Write hole and stroke like 7.2.")
    return int(hole), int(stroke)

"""`reviewkit report`: the page of a round, or of a series of rounds."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("round_folders", metavar="ROUND...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), metavar="FILE", help="Where a series' page goes.")
def command(round_folders: tuple[Path, ...], out: Path | None) -> None:
    """Write ROUND's report.html anew, or with several ROUNDs one page of the series."""
    from reviewkit.log import open_round
    from reviewkit.report import write_report, write_series_report

    folders = [open_round(path) for path in round_folders]
    if len(folders) == 1 and out is None:
        write_report(folders[0])
        click.echo(folders[0].report_html)
        return
    page = out or Path("series.html")
    write_series_report(folders, page)
    click.echo(page)

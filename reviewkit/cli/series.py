"""`reviewkit series`: several rounds together."""

from __future__ import annotations

from pathlib import Path

import click

LONGEST = 12
"""Recurring faults that a person is shown; programs get all of them."""


@click.command()
@click.argument("folders", metavar="FOLDER...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--as", "form", type=click.Choice(["text", "csv", "json", "markdown"]), default="text")
@click.option("--store", type=click.Path(path_type=Path), help="Summaries' file  [FOLDER/series.parquet]")
@click.option("--no-store", is_flag=True, help="Keep no summaries between calls.")
@click.option(
    "--plots",
    type=click.Path(path_type=Path),
    help="Also draw scores and practice into this folder.",
)
def command(
    folders: tuple[Path, ...], form: str, store: Path | None, no_store: bool, plots: Path | None
) -> None:
    """All rounds in FOLDER...: results, trends, what recurs, what to practise, the next round's chance.

    A FOLDER is a round folder or one with rounds below it. Rounds stand by when they were recorded if all of
    them say so, else by path.
    """
    from reviewkit.stats.pages import series_tables
    from reviewkit.stats.series import series_of
    from reviewkit.stats.stored import NAME, round_folders, summaries
    from reviewkit.stats.table import render

    found = round_folders(folders)
    kept = None if no_store else store or folders[0] / NAME
    series = series_of(summaries(found, kept))
    most = LONGEST if form in ("text", "markdown") else None
    click.echo(render(series_tables(series, most), form), nl=False)
    if plots:
        from reviewkit.report.plot_odds import SUFFIXES, save_plot
        from reviewkit.report.plot_series import plot_practice, plot_scores

        for name, figure in (("scores", plot_scores(series)), ("practice", plot_practice(series))):
            for suffix in SUFFIXES:
                save_plot(figure, plots / f"{name}{suffix}")

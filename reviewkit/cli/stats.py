"""`reviewkit stats`: the figures of one round."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.argument("names", metavar="[STATISTIC]...", nargs=-1)
@click.option("--as", "form", type=click.Choice(["text", "csv", "json", "markdown"]), default="text")
@click.option("--explain", is_flag=True, help="Add each figure's definition and source.")
def command(round_folder: Path, names: tuple[str, ...], form: str, explain: bool) -> None:
    """Where the strokes went in ROUND: all statistics, or those named."""
    from reviewkit.log import open_round
    from reviewkit.stats import figures
    from reviewkit.stats.table import figure_data, figure_table, render

    found = figures(open_round(round_folder), names)
    table = figure_data(found) if form in ("csv", "json") else figure_table(found, explain)
    click.echo(render([table], form), nl=False)

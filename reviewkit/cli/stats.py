"""`reviewkit stats`: the figures of one round."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from reviewkit.log import RoundFolder
    from reviewkit.stats.table import Table

VIEWS = ("figures", "holes", "strokes", "clubs", "odds", "conditions")


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.argument("names", metavar="[STATISTIC]...", nargs=-1)
@click.option(
    "--show",
    "views",
    type=click.Choice([*VIEWS, "all"]),
    multiple=True,
    default=["figures"],
    show_default=True,
    help="What to show; may be given several times.",
)
@click.option("--as", "form", type=click.Choice(["text", "csv", "json", "markdown"]), default="text")
@click.option("--explain", is_flag=True, help="Add each figure's definition and source.")
@click.option(
    "--plot", type=click.Path(path_type=Path), help="Also draw the odds of the target into a .svg or .png."
)
@click.option("--list", "listing", is_flag=True, help="List the statistics by name; ROUND is not read.")
def command(
    round_folder: Path,
    names: tuple[str, ...],
    views: tuple[str, ...],
    form: str,
    explain: bool,
    plot: Path | None,
    listing: bool,
) -> None:
    """Where the strokes went in ROUND: all statistics, or those named.

    Figures rest on what was told; the last column says on how much of it.
    """
    from reviewkit.log import open_round
    from reviewkit.stats import STATISTICS
    from reviewkit.stats.table import Table, render

    if listing:
        rows = tuple((item.group, item.name, item.definition) for item in STATISTICS.values())
        click.echo(render([Table("", ("group", "name", "definition"), rows)], form), nl=False)
        return
    folder = open_round(round_folder)
    wanted = VIEWS if "all" in views else views
    tables = [_table(folder, view, names, form, explain) for view in wanted]
    click.echo(render(tables, form), nl=False)
    if plot:
        _draw(folder, plot)


def _draw(folder: RoundFolder, path: Path) -> None:
    from reviewkit.errors import FolderError
    from reviewkit.report.plot_odds import plot_odds, save_plot
    from reviewkit.stats import target_odds

    rows = target_odds(folder)
    if not rows:
        raise FolderError(folder.path, "has no target to draw.", "Read the round again with --target.")
    save_plot(plot_odds(rows, folder.path.name), path)


def _table(folder: RoundFolder, view: str, names: tuple[str, ...], form: str, explain: bool) -> Table:
    from reviewkit.stats import figures, pages, play_of, strokes_gained, target_odds
    from reviewkit.stats.clubs import clubs
    from reviewkit.stats.conditions import approaches_in, conditions_of
    from reviewkit.stats.table import figure_data, figure_table

    if view == "holes":
        return pages.hole_table(strokes_gained(folder))
    if view == "strokes":
        return pages.stroke_table(strokes_gained(folder))
    if view == "clubs":
        return pages.club_table(clubs([play_of(folder)]))
    if view == "odds":
        return pages.odds_table(target_odds(folder))
    if view == "conditions":
        return pages.condition_table(approaches_in(play_of(folder), conditions_of(folder)))
    found = figures(folder, names)
    return figure_data(found) if form in ("csv", "json") else figure_table(found, explain)

"""`reviewkit read`: the main job."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reviewkit.errors import FolderError
from reviewkit.plan import DEVICES, NAME, SORTS, Wish, load_wish, parse_order, parse_target

if TYPE_CHECKING:
    from reviewkit.log import RoundFolder
    from reviewkit.pipeline import Options


@click.command()
@click.argument("sources", nargs=-1, required=True, metavar="SOURCE...", type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), metavar="ROUND", help="Round folder to write.")
@click.option("--sort", type=click.Choice(SORTS), help="Join clips as given, or by recording time.")
@click.option("--card", type=click.Path(path_type=Path), metavar="FILE", help="Course card, TOML or CSV.")
@click.option("--order", metavar="HOLES", help="Holes in order of play, such as 7-18,1-6.")
@click.option("--target", metavar="SCORE", help="Target to par, such as -6, +3 or E.")
@click.option("--units", type=click.Choice(["yd", "m"]), help="Of distances told without a unit.")
@click.option("--model", metavar="NAME|PATH", help="Speech weights; by default the best at hand.")
@click.option("--device", type=click.Choice(DEVICES), help="Where the speech model runs.")
@click.option("--language", metavar="CODE", help="Language spoken, such as en, or auto.")
@click.option("--rules", type=click.Path(path_type=Path), metavar="FILE", help="Your own keyword rules.")
@click.option("--cuts/--no-cuts", default=None, help="Look for cuts in the picture near hole starts.")
@click.option("--again/--no-again", default=None, help="Listen again to holes doubtful or hard to hear.")
def command(
    sources: tuple[Path, ...],
    out: Path | None,
    sort: str | None = None,
    card: Path | None = None,
    order: str | None = None,
    target: str | None = None,
    units: str | None = None,
    model: str | None = None,
    device: str | None = None,
    language: str | None = None,
    rules: Path | None = None,
    cuts: bool | None = None,
    again: bool | None = None,
) -> None:
    """Read SOURCE into a round folder.

    SOURCE is one or more video or sound files of one round, or one timed text (.vtt, .srt, words .json).
    Every option may also stand in a round.toml beside the first SOURCE. Without --out the folder lies beside
    the first SOURCE and has its name.
    """
    from reviewkit.card import load_card
    from reviewkit.cli.progress import progress
    from reviewkit.pipeline import read_round

    typed = Wish(
        order=None if order is None else parse_order(order),
        target=None if target is None else parse_target(target),
        units=units,
        language=language,
        card=None if card is None else load_card(card),
        model=model,
        device=device,
        rules=rules,
        sort=sort,
        cuts=cuts,
        again=again,
    )
    wish = beside(sources[0], typed)
    folder = read_round(sources, out or beside_folder(sources[0]), wish.plan(), options_of(wish), progress())
    click.echo("\n".join(summary(folder)))


def beside(source: Path, typed: Wish) -> Wish:
    """What was typed, over the round.toml beside `source` where there is one."""
    path = source.parent / NAME
    return typed.over(load_wish(path)) if path.is_file() else typed


def beside_folder(source: Path) -> Path:
    """The round folder without --out. Raises FolderError where a folder of that name holds something else."""
    source = source if source.name else source.absolute()
    folder = source.with_suffix("") if source.suffix else source.with_name(f"{source.name}-round")
    known = ("round.json", "transcript.json", "amendments.csv")
    if folder.is_dir() and any(folder.iterdir()) and not any((folder / name).exists() for name in known):
        raise FolderError(folder, "is no round folder and not empty.", "Choose another with --out.")
    return folder


def options_of(wish: Wish) -> Options:
    """The pipeline's options that a wish asks for."""
    from reviewkit.pipeline import Options

    return Options(
        model=wish.model or "",
        device=wish.device or "auto",
        rules=wish.rules,
        by_time=wish.sort == "time",
        cuts=wish.cuts is not False,
        again=wish.again is not False,
    )


def summary(folder: RoundFolder) -> list[str]:
    """What was read, in a few lines: holes, score, what to check, where it is."""
    holes = folder.holes
    if holes.empty:
        return ["No holes were heard.", f"Round folder: {folder.path}"]
    known = holes["to_par"].notna()
    line = f"{len(holes)} holes"
    if known.any():
        strokes, to_par = int(holes["strokes"].sum()), int(holes["to_par"][known].sum())
        line += f", {strokes} strokes, {f'{to_par:+d}' if to_par else 'level par'}"
    if not known.all():
        line += f" ({int((~known).sum())} without a score or par)"
    doubts = folder.meta["doubts"]
    checks = int((holes["status"] == "check").sum())
    lines = [line + "."]
    if checks:
        worth = "1 hole" if checks == 1 else f"{checks} holes"
        lines.append(f"{worth} to check. See why with: reviewkit doubts {folder.path}")
    elif doubts:
        lines.append(f"No hole to check. What was said otherwise: reviewkit doubts {folder.path}")
    return [*lines, f"Round folder: {folder.path}"]

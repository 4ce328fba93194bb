"""`reviewkit batch`: every round of a folder."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reviewkit.cli.read import beside, beside_folder, options_of
from reviewkit.errors import ReviewkitError
from reviewkit.plan import DEVICES, Wish

if TYPE_CHECKING:
    from reviewkit.batching import Job, Outcome


@click.command()
@click.argument("folder", metavar="FOLDER", type=click.Path(path_type=Path))
@click.option("--scheduler", metavar="ADDRESS", help="Dask scheduler to read on, such as tcp://host:8786.")
@click.option("--model", metavar="NAME|PATH", help="Speech weights; by default the best at hand.")
@click.option("--device", type=click.Choice(DEVICES), help="Where the speech model runs.")
@click.option("--rules", type=click.Path(path_type=Path), metavar="FILE", help="Your own keyword rules.")
def command(
    folder: Path, scheduler: str | None, model: str | None, device: str | None, rules: Path | None
) -> None:
    """Read every round in FOLDER.

    A round is a folder in FOLDER with video in it, else with sound, else with one timed text; clips come in
    the order of their names. Options may stand in its round.toml. Its reading goes where `reviewkit read`
    puts it.

    What was read before is read again only when something has changed. A round that fails does not stop the
    others; failures are listed at the end, and the exit code is then 1.
    """
    from reviewkit.batching import Outcome, is_read, read_here, rounds_in
    from reviewkit.cli.progress import progress

    typed = Wish(model=model, device=device, rules=None if rules is None else rules.absolute())
    outcomes: list[Outcome] = []
    jobs: list[Job] = []
    rounds = rounds_in(folder)

    def told(outcome: Outcome) -> None:
        outcomes.append(outcome)
        click.echo(f"[{len(outcomes)}/{len(rounds)}] {outcome.name}: {outcome.state}")

    for name, sources in rounds.items():
        try:
            job = job_of(name, sources, typed)
        except ReviewkitError as error:
            told(Outcome(name, "failed", str(error)))
            continue
        if is_read(job):
            told(Outcome(name, "kept"))
        else:
            jobs.append(job)
    if jobs and scheduler:
        from reviewkit.cluster import read_on

        read_on(scheduler, jobs, told)
    else:
        read_here(jobs, progress(), told)
    sys.exit(finish(outcomes))


def job_of(name: str, sources: tuple[Path, ...], typed: Wish) -> Job:
    """What `reviewkit read` would do with these sources in their order. Raises ReviewkitError."""
    from reviewkit.batching import Job, check_sources

    check_sources(sources)
    wish = beside(sources[0], typed)
    return Job(name, sources, beside_folder(sources[0]), wish.plan(), options_of(wish))


def finish(outcomes: list[Outcome]) -> int:
    """Print how many rounds fared how, then a line a failure; the exit code."""
    counts = {state: sum(item.state == state for item in outcomes) for state in ("read", "kept", "failed")}
    click.echo(f"{counts['read']} read, {counts['kept']} kept as they were, {counts['failed']} failed.")
    for item in outcomes:
        if item.state == "failed":
            click.echo(f"{item.name}: {item.why}", err=True)
    return 1 if counts["failed"] else 0

"""`reviewkit desk`: confirm and correct on a local page."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.option(
    "--port", type=click.IntRange(0, 65535), default=0, help="Loopback port; a free one by default."
)
@click.option("--open/--no-open", "browse", default=True, help="Open it in the browser.")
def command(round_folder: Path, port: int, browse: bool) -> None:
    """Confirm and correct ROUND on a page that only this machine can reach. Ctrl+C ends it."""
    from reviewkit.desk import serve
    from reviewkit.log import open_round
    from reviewkit.rereading import again

    def told(address: str) -> None:
        click.echo(f"The desk is at {address}\nCorrections are kept at once. Ctrl+C ends it.")
        if browse:
            click.launch(address)

    serve(open_round(round_folder), again, port, told)

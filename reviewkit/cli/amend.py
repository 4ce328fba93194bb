"""`reviewkit amend`: corrections from scripts, the same as the desk makes."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from reviewkit.errors import ReviewkitError

if TYPE_CHECKING:
    from reviewkit.model import Amendment

FORMS = {
    "accept": "accept ROW [FIELD]",
    "set": "set ROW FIELD VALUE",
    "add": "add HOLE.STROKE kind=putt [COLUMN=VALUE...]",
    "delete": "delete ROW",
    "move": "move HOLE.STROKE HOLE.PLACE",
    "split": "split HOLE TIME [par=4]",
    "merge": "merge HOLE NEIGHBOUR",
    "undo": "undo [ID]",
    "list": "list",
}


@click.command(epilog="Forms: " + "; ".join(FORMS.values()) + ".")
@click.argument("round_folder", metavar="ROUND", type=click.Path(path_type=Path))
@click.argument("action", type=click.Choice(list(FORMS)))
@click.argument("words", nargs=-1, metavar="[WORD]...")
@click.option("--keep", is_flag=True, help="Only keep the correction; the next read works it in.")
def command(round_folder: Path, action: str, words: tuple[str, ...], keep: bool) -> None:
    """Correct ROUND. A ROW is a hole (7) or a stroke of it (7.2)."""
    from reviewkit.desk.requests import corrections_for
    from reviewkit.log import open_round
    from reviewkit.log.amend_apply import apply
    from reviewkit.log.amended import base_reading
    from reviewkit.log.amendments import append, load

    folder = open_round(round_folder)
    made = load(folder)
    if action == "list":
        click.echo("\n".join(told(row, made) for row in made) or "No corrections.")
        return
    seen, _ = apply(base_reading(folder), made)
    request = asked(action, words)
    for row in append(folder, corrections_for(request, seen, made)):
        click.echo(told(row, (*made, row)))
    if not keep:
        from reviewkit.rereading import again

        again(folder)


def asked(action: str, words: tuple[str, ...]) -> dict[str, Any]:
    """The request that the words mean. Raises ReviewkitError where they do not fit the action's form."""
    try:
        return _asked(action, words)
    except (IndexError, ValueError) as error:
        if isinstance(error, ReviewkitError):
            raise
        raise ReviewkitError(
            f"'{' '.join((action, *words))}' is not understood.", f"Write: {FORMS[action]}"
        ) from error


def _asked(action: str, words: tuple[str, ...]) -> dict[str, Any]:
    from reviewkit import timecode

    if action == "undo":
        return {"action": action, "id": int(words[0]) if words else None}
    hole, stroke = place(words[0])
    row: dict[str, Any] = {"action": action, "hole": hole, "stroke": stroke}
    rest = words[1:]
    match action:
        case "accept":
            return row | {"field": rest[0] if rest else ""}
        case "set":
            return row | {"field": rest[0], "value": rest[1]}
        case "add":
            columns = dict(word.split("=", 1) for word in rest)
            at = columns.pop("at", None)
            return row | {"columns": columns, "at_s": timecode.parse(at) if at else None}
        case "move":
            to_hole, spot = place(rest[0])
            return row | {"to_hole": to_hole, "place": spot or 1}
        case "split":
            columns = dict(word.split("=", 1) for word in rest[1:])
            return row | {"at_s": timecode.parse(rest[0]), "columns": columns}
        case "merge":
            return row | {"other": int(rest[0])}
        case _:
            return row


def place(text: str) -> tuple[int, int | None]:
    """`7` or `7.2` as hole and stroke."""
    hole, dot, stroke = text.partition(".")
    return int(hole), int(stroke) if dot else None


def told(row: Amendment, made: tuple[Amendment, ...]) -> str:
    """One correction as a line, with whether it counts."""
    from reviewkit.log.amendments import in_force

    where = f"hole {row.hole}" if row.hole is not None else ""
    where += f" stroke {row.stroke}" if row.stroke is not None else ""
    change = f"{row.field} {row.value}".strip() + (f" (was {row.was})" if row.field and row.was else "")
    gone = "" if row.action == "undo" or row in in_force(made) else "  undone"
    return f"{row.id}  {row.action} {where} {change}".rstrip() + gone

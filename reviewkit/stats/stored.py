"""Summaries of rounds kept in one Parquet file, so that only new or changed rounds are read again."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

from reviewkit.errors import FolderError
from reviewkit.files import whole
from reviewkit.log import RoundFolder, open_round
from reviewkit.stats.play import play_of
from reviewkit.stats.summary import VERSION, Fault, Made, RoundSummary, Skill, Value, played_at, summary_of

NAME = "series.parquet"
PARTS = {"made": Made, "skills": Skill, "faults": Fault, "values": Value}


def round_folders(places: Sequence[Path]) -> tuple[Path, ...]:
    """Every round folder at or below `places`, by path. Raises FolderError for a place without one."""
    found: dict[Path, None] = {}
    for place in places:
        inside = sorted(path.parent for path in place.rglob("round.json"))
        if not inside:
            raise FolderError(place, "holds no round folder.", "Read rounds into it with: reviewkit read")
        found.update(dict.fromkeys(inside))
    return tuple(found)


def summaries(
    folders: Sequence[Path],
    store: Path | None = None,
    progress: Callable[[int, int], None] = lambda done, of: None,
) -> Iterator[RoundSummary]:
    """A summary a folder, in order; those that `store` holds for unchanged folders are not computed again.

    Folders are opened one at a time. A store of another version, or one that cannot be read, is made anew.
    """
    kept = load(store) if store else {}
    fresh: dict[str, tuple[str, RoundSummary]] = {}
    for done, path in enumerate(folders):
        key, mark = str(path.resolve()), stamp(path)
        old = kept.get(key)
        summary = old[1] if old and old[0] == mark else _summarise(path)
        fresh[key] = (mark, summary)
        progress(done + 1, len(folders))
        yield summary
    if store and fresh != kept:
        save(store, fresh)


def _summarise(path: Path) -> RoundSummary:
    folder = open_round(path)
    return summary_of(play_of(folder), played_at(folder))


def stamp(path: Path) -> str:
    """Changes when the folder's tables do: sizes and times of change, and the summary's version."""
    folder = RoundFolder(path)
    try:
        states = [file.stat() for file in (folder.holes_csv, folder.shots_csv, folder.round_json)]
    except OSError as error:
        raise FolderError(path, "lacks one of its tables.", "Read the round again.") from error
    return ":".join([str(VERSION), *(f"{state.st_size}.{state.st_mtime_ns}" for state in states)])


def save(path: Path, rows: dict[str, tuple[str, RoundSummary]]) -> None:
    """Write the store whole."""
    import pyarrow as pa
    import pyarrow.parquet as pq

    data = [{"path": key, "stamp": mark, **asdict(summary)} for key, (mark, summary) in rows.items()]
    with whole(path) as part:
        pq.write_table(pa.Table.from_pylist(data, schema=_schema()), part)


def load(path: Path) -> dict[str, tuple[str, RoundSummary]]:
    """Path of a round folder -> stamp and summary; nothing for a store that is missing or not one."""
    import pyarrow as pa
    import pyarrow.parquet as pq

    if not path.is_file():
        return {}
    try:
        with pq.ParquetFile(path) as source:
            if source.schema_arrow != _schema():
                return {}
            return {
                row["path"]: (row["stamp"], _summary(row))
                for batch in source.iter_batches(batch_size=64)
                for row in batch.to_pylist()
            }
    except (pa.ArrowException, OSError):
        return {}


def _summary(row: dict[str, Any]) -> RoundSummary:
    parts = {name: tuple(part(**item) for item in row[name]) for name, part in PARTS.items()}
    plain = {name: row[name] for name in RoundSummary.__slots__ if name not in PARTS}
    return RoundSummary(**{**plain, **parts, "planned": tuple(row["planned"])})


def _schema() -> Any:
    import pyarrow as pa

    whole_number, real, text = pa.int32(), pa.float64(), pa.string()
    parts = {
        "made": {"par": whole_number, "to_par": whole_number, "times": whole_number},
        "skills": {"category": text, "mean": real, "low": real, "high": real, "strokes": whole_number},
        "faults": {"club": text, "fault": text, "times": whole_number, "cost": real},
        "values": {"name": text, "value": real},
    }
    fields: list[tuple[str, Any]] = [(name, text) for name in ("path", "stamp", "name", "played_at")]
    fields += [(name, whole_number) for name in ("holes", "score", "to_par", "target", "gained_holes")]
    fields.append(("planned", pa.list_(whole_number)))
    fields += [(name, pa.list_(pa.struct(list(part.items())))) for name, part in parts.items()]
    return pa.schema(fields)

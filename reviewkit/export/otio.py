"""OpenTimelineIO timeline: the footage cut at the holes, with markers, written by OpenTimelineIO itself."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

from reviewkit.export.base import Job
from reviewkit.export.frames import Rate
from reviewkit.export.markers import Marker, Piece, markers_of, pieces_of
from reviewkit.files import whole


def write(job: Job, path: Path) -> Sequence[str]:
    import opentimelineio as otio

    with whole(path) as part:
        otio.adapters.write_to_file(timeline(job), str(part), adapter_name="otio_json")
    return ()


def timeline(job: Job) -> Any:
    """The round as an opentimelineio Timeline of one video track, starting at 0."""
    import opentimelineio as otio

    rate, pieces = pieces_of(job)
    markers = markers_of(job)
    track = otio.schema.Track(name="Round", kind=otio.schema.TrackKind.Video)
    for piece in pieces:
        clip = _clip(piece, rate)
        inside = [item for item in markers if piece.first <= rate.frame(item.start_s) < piece.last]
        clip.markers.extend(_marker(item, piece, rate) for item in inside)
        track.append(clip)
    line = otio.schema.Timeline(name=job.folder.path.resolve().name, tracks=[track])
    line.global_start_time = _time(0, rate)
    return line


def _clip(piece: Piece, rate: Rate) -> Any:
    import opentimelineio as otio

    reference = otio.schema.MissingReference()
    if piece.path is not None:
        reference = otio.schema.ExternalReference(target_url=piece.path.as_uri())
        reference.name = piece.path.name
    return otio.schema.Clip(
        name=piece.chapter.title,
        media_reference=reference,
        source_range=otio.opentime.TimeRange(
            _time(piece.source_first, rate), _time(piece.last - piece.first, rate)
        ),
    )


def _marker(marker: Marker, piece: Piece, rate: Rate) -> Any:
    import opentimelineio as otio

    first = rate.frame(marker.start_s)
    length = max(min(rate.frame(marker.end_s), piece.last) - first, 0)
    start = piece.source_first + first - piece.first
    return otio.schema.Marker(
        name=marker.name,
        marked_range=otio.opentime.TimeRange(_time(start, rate), _time(length, rate)),
        color=marker.colour,
        metadata={
            "round": {"kind": marker.kind, "hole": marker.hole, "stroke": marker.stroke, "note": marker.note}
        },
    )


def _time(frame: int, rate: Rate) -> Any:
    import opentimelineio as otio

    return otio.opentime.RationalTime(frame, float(rate.fps))

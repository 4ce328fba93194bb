"""Every format by name: the one place that the command line, the docs and the tests read."""

from __future__ import annotations

import importlib
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from reviewkit.errors import ReviewkitError
from reviewkit.export.base import Job, Writer


@dataclass(frozen=True, slots=True)
class Format:
    """`name` is what is asked for, `file` the usual file name (ending in `/`: a folder of files).

    `module` is the module of this folder that holds `write`; it loads when the format is used. `needs` is
    what must be at hand: "", "footage" or "words". `slow` formats encode video and are left out of `all`.
    """

    name: str
    file: str
    module: str
    line: str
    needs: str = ""
    slow: bool = False


FORMATS = (
    Format("description", "description.txt", "description", "Timestamp list for a video's description."),
    Format("chapters-vtt", "chapters.vtt", "chapters_vtt", "WebVTT chapters for a web player."),
    Format("chapters-json", "chapters.json", "chapters_json", "JSON chapters 1.2 for a podcast feed."),
    Format("ffmetadata", "chapters.ffmeta", "ffmetadata", "FFMETADATA chapters for ffmpeg."),
    Format("matroska", "chapters.xml", "matroska", "Matroska chapter XML for mkvmerge."),
    Format("srt", "subtitles.srt", "subtitle_srt", "SubRip subtitles of the narration.", "words"),
    Format("vtt", "subtitles.vtt", "subtitle_vtt", "WebVTT subtitles of the narration.", "words"),
    Format("ass", "subtitles.ass", "subtitle_ass", "Advanced SubStation subtitles, with a style.", "words"),
    Format("otio", "round.otio", "otio", "OpenTimelineIO: footage cut at the holes, with markers."),
    Format("edl", "round.edl", "edl", "CMX 3600 edit list: an event a hole, markers as comments."),
    Format("markers", "markers.csv", "marker_csv", "Markers of holes and strokes as a CSV list."),
    Format("csv", "csv/", "table_csv", "Holes, strokes and statistics as CSV, a file a table."),
    Format("parquet", "parquet/", "table_parquet", "The same tables as Parquet."),
    Format("json", "tables.json", "table_json", "The same tables as one JSON file, with its JSON Schema."),
    Format("markdown", "tables.md", "table_markdown", "The same tables as Markdown."),
    Format("xlsx", "tables.xlsx", "table_xlsx", "The same tables as a workbook, a sheet a table."),
    Format("card-svg", "score-card.svg", "score_card_svg", "Score card picture as SVG."),
    Format("card-png", "score-card.png", "score_card_png", "Score card picture as PNG."),
    Format(
        "contact-sheet", "contact-sheet.jpg", "contact_sheet", "The sharpest frame of each hole.", "footage"
    ),
    Format("thumbnails", "thumbnails/", "thumbnails", "Candidates for the video's cover.", "footage"),
    Format("overlay-ass", "overlay.ass", "overlay_ass", "Running score as styled text over the video."),
    Format("overlay-png", "overlay/", "overlay_png", "Running score as transparent PNG files with a list."),
    Format("overlay-webm", "overlay.webm", "overlay_webm", "Running score as transparent WebM.", slow=True),
    Format(
        "overlay-mov", "overlay.mov", "overlay_mov", "Running score as ProRes 4444 with alpha.", slow=True
    ),
    Format("burned", "burned.mp4", "burned", "The footage with the running score in it.", "footage", True),
)
BY_NAME = {item.name: item for item in FORMATS}


def find(name: str) -> Format:
    """The format called `name`, or ReviewkitError with the names there are."""
    if name not in BY_NAME:
        raise ReviewkitError(f"there is no format '{name}'.", f"Formats: {', '.join(BY_NAME)}.")
    return BY_NAME[name]


def write(chosen: Format, job: Job, path: Path) -> Sequence[str]:
    """Write one format to `path` and return its notes."""
    writer: Writer = importlib.import_module(f"reviewkit.export.{chosen.module}").write
    return writer(job, path)

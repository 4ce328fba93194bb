"""From what a page shows to one self-contained file.

Templates escape everything; a content policy in the page lets only its own style and script run.
"""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Sequence
from functools import cache
from pathlib import Path

from jinja2 import Environment, PackageLoader, StrictUndefined

from reviewkit import __version__
from reviewkit.files import write_text
from reviewkit.log import RoundFolder
from reviewkit.report import charts, misses, series, series_charts, words
from reviewkit.report.view import RoundView, view_of
from reviewkit.timecode import clock

PAGE = Path(__file__).parent / "page"


def write_report(folder: RoundFolder) -> None:
    """Write report.html of the round in `folder`."""
    write_text(folder.report_html, report_page(view_of(folder)))


def report_page(view: RoundView) -> str:
    """The page of one round."""
    style, script = asset("paper.css") + asset("report.css"), asset("report.js")
    clips = [
        {"url": clip.url, "start": clip.start_s, "end": clip.end_s, "in": clip.in_s} for clip in view.clips
    ]
    template = environment().get_template("report.html")
    return template.render(
        view=view,
        clubs=misses.by_club(stroke.shot for stroke in view.strokes),
        charts=charts,
        picture=misses.picture,
        clips=json.dumps(clips),
        style=style,
        script=script,
        policy=policy(style, script),
        version=__version__,
    )


def write_series_report(folders: Sequence[RoundFolder], path: Path) -> None:
    """Write one page about several rounds, in the order given, to `path`."""
    style = asset("paper.css") + asset("report.css")
    page = environment().get_template("series.html")
    text = page.render(
        series=series.series_of([view_of(folder) for folder in folders]),
        categories=series.TOLD,
        charts=series_charts,
        picture=misses.picture,
        reached=series.reached,
        share=series.share,
        style=style,
        policy=policy(style, ""),
        version=__version__,
    )
    write_text(path, text)


def policy(style: str, script: str) -> str:
    """Content policy: this style and script by their hashes, footage beside the page, nothing else."""
    return (
        f"default-src 'none'; style-src {_hash(style)}; script-src {_hash(script)}; "
        "media-src 'self' file:; img-src data:; base-uri 'none'; form-action 'none'"
    )


def _hash(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


@cache
def asset(name: str) -> str:
    """A style or script as the page holds it."""
    return (PAGE / name).read_text(encoding="utf-8")


@cache
def environment() -> Environment:
    """Templates with the report's words; a name that the template misspells is an error."""
    found = Environment(
        loader=PackageLoader("reviewkit.report", "page"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    found.filters |= {
        "said": words.said,
        "clock": clock,
        "to_par": words.to_par,
        "signed": words.signed,
        "score_name": words.score_name,
        "score_mark": words.score_mark,
        "club_name": words.club_name,
        "distance": words.distance,
        "result_name": words.result_name,
    }
    return found

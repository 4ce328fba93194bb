"""The main job: footage or timed text in, a round folder out, the rooms in their order."""

from __future__ import annotations

import importlib.metadata
import os
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from reviewkit import __version__
from reviewkit.cache import footage_hash
from reviewkit.errors import FolderError, SourceError
from reviewkit.files import content_hash
from reviewkit.footage.probe import require
from reviewkit.footage.timeline import Clip, Timeline, join
from reviewkit.language.meant import as_meant
from reviewkit.log import RoundFolder
from reviewkit.log.amend_apply import facts_for
from reviewkit.log.amended import READING_NAME, base_reading, publish
from reviewkit.log.amendments import hole_facts, load
from reviewkit.log.transcript import load_transcript, save_transcript
from reviewkit.model import HoleFact, Plan, Round, Transcript
from reviewkit.progress import Progress, Silence
from reviewkit.reasoning import reason
from reviewkit.round_cuts import cuts_near
from reviewkit.second_listening import listen_again
from reviewkit.settled import keep, recall
from reviewkit.speech import timed_text

if TYPE_CHECKING:
    from reviewkit.listening import Listening

WORDS_JSON = ".json"
TEXTS = (*timed_text.FORMATS, WORDS_JSON)
"""Suffixes of sources that are words already."""


@dataclass(frozen=True, slots=True)
class Options:
    """How to read, apart from the plan. `model` is a name, a folder or empty for the best weights at hand.

    `cuts` looks for cuts in the picture, `again` listens a second time to what is doubtful.
    """

    model: str = ""
    device: str = "auto"
    rules: Path | None = None
    by_time: bool = False
    cuts: bool = True
    again: bool = True


def read_round(
    sources: Sequence[Path], out: Path, plan: Plan, options: Options, progress: Progress | None = None
) -> RoundFolder:
    """Read `sources` into the round folder `out`, made or brought up to date; a person's corrections stay.

    Nothing is written to `out` before everything has been heard. Raises ReviewkitError and its kin.
    """
    progress = progress or Silence()
    folder = RoundFolder(out)
    check_writable(out)
    text = timed_text_in(sources)
    timeline = Timeline(()) if text else _timeline(sources, options)
    transcript = read_text(text) if text else listening(timeline, plan, options, progress).whole()
    transcript, reading, cuts = _reason(transcript, timeline, plan, options, folder, progress)
    save_transcript(folder.transcript_json, as_meant(transcript, options.rules or own_rules(folder)))
    meta: dict[str, Any] = {
        "sources": [_source(clip, out) for clip in timeline.clips],
        "timed_text": {"path": _from(out, text), "sha256": content_hash(text)} if text else None,
        "duration_s": round(transcript.duration_s, 3),
        "left_out": [_from(out, media.path) for media in timeline.left_out],
        "plan": asdict(plan),
        "settings": {
            "model": transcript.model,
            "rules": str(options.rules.resolve()) if options.rules else "",
            "cuts": list(cuts),
            "again": options.again,
            "speech": dict(transcript.settings),
        },
        "versions": versions(),
    }
    publish(folder, reading, meta)
    write_pages(folder)
    return folder


def own_rules(folder: RoundFolder) -> Path | None:
    """The rules that the round has learned at the desk, unless it is read with rules of the user's choice."""
    path = folder.path / "rules.toml"
    return path if path.is_file() else None


def confirmed(folder: RoundFolder) -> tuple[HoleFact, ...]:
    """What a person has confirmed, placed by the reading that the folder keeps."""
    made = load(folder)
    if made and (folder.path / READING_NAME).exists():
        return facts_for(base_reading(folder), made)
    return hole_facts(made)


def timed_text_in(sources: Sequence[Path]) -> Path | None:
    """The one timed text among the sources, or None. Raises SourceError when it does not stand alone."""
    texts = [path for path in sources if path.suffix.lower() in TEXTS]
    if texts and len(sources) > 1:
        raise SourceError(texts[0], "is timed text among other sources.", "Give it alone, or the footage.")
    for number, path in enumerate(sources):
        if path in sources[:number]:
            raise SourceError(path, "is given twice.", "Name each file once.")
    return texts[0] if texts else None


def read_text(path: Path) -> Transcript:
    """The words of a timed text or words JSON. Raises SourceError."""
    require(path)
    if path.suffix.lower() != WORDS_JSON:
        return timed_text.read(path)
    try:
        transcript = load_transcript(path)
    except FolderError as error:
        raise SourceError(
            path, "is not a words JSON.", "Give segments with words and their times."
        ) from error
    if not transcript.words:
        raise SourceError(path, "holds no words.", "Read the footage itself.")
    return transcript


def listening(timeline: Timeline, plan: Plan, options: Options, progress: Progress) -> Listening:
    """What hears the clips of a timeline as `options` say."""
    from reviewkit.listening import Listening

    return Listening(timeline, plan, options.model, options.device, progress)


def check_writable(out: Path) -> None:
    """Raise FolderError, before any work, when a folder at `out` cannot be made or written."""
    place = out
    while not place.exists() and place != place.parent:
        place = place.parent
    if not place.is_dir():
        raise FolderError(out, f"cannot be a folder: {place} is a file.", "Choose another --out.")
    if not os.access(place, os.W_OK | os.X_OK):
        raise FolderError(out, "cannot be written.", "Choose a folder you may write to with --out.")


def versions() -> dict[str, str]:
    """Versions of what the reading rests on."""
    names = ("faster-whisper", "ctranslate2", "av", "scenedetect")
    return {"reviewkit": __version__, **{name: importlib.metadata.version(name) for name in names}}


def write_pages(folder: RoundFolder) -> None:
    """Write the files of the folder that follow from its tables: chapters and the report."""
    from reviewkit.export import write_default_chapters
    from reviewkit.report import write_report

    write_default_chapters(folder)
    write_report(folder)


def _timeline(sources: Sequence[Path], options: Options) -> Timeline:
    for path in sources:
        require(path)
    return join(sources, options.by_time)


def _reason(
    heard: Transcript,
    timeline: Timeline,
    plan: Plan,
    options: Options,
    folder: RoundFolder,
    progress: Progress,
) -> tuple[Transcript, Round, tuple[float, ...]]:
    """The words with all their hearings, the reading and the cuts it goes by.

    Where there is sound, a first reading says what to listen to again; where there is picture, the reading
    says near which moments to look for cuts.
    """
    rules, facts, cuts = options.rules or own_rules(folder), confirmed(folder), timeline.seams

    def read(transcript: Transcript) -> Round:
        return reason(transcript, plan, rules, cuts, facts)

    again = options.again and bool(timeline.clips)
    words = (recall(heard, plan) if again else None) or heard
    reading = read(words)
    if again and words is heard:
        hear = listening(timeline, plan, options, progress).stretches
        words = keep(listen_again(heard, reading, hear), plan)
        reading = read(words) if words is not heard else reading
    if options.cuts and any(clip.media.picture for clip in timeline.clips):
        with progress.stage("Looking for cuts", timeline.duration_s) as done:
            cuts = cuts_near(timeline, [span.start_s for span in reading.spans])
            done(timeline.duration_s)
        if cuts != timeline.seams:
            reading = read(words)
    return words, reading, cuts


def _source(clip: Clip, out: Path) -> dict[str, Any]:
    media = clip.media
    return {
        "path": _from(out, media.path),
        "sha256": footage_hash(media),
        "sha256_of": "file" if media.track is None else "sound",
        "offset_s": round(clip.offset_s, 3),
        "in_s": round(clip.in_s, 3),
        "duration_s": round(clip.length_s, 3),
        "fps": round(media.picture.fps, 3) if media.picture else None,
        "timecode": media.timecode,
        "recorded_at": media.recorded_at.isoformat() if media.recorded_at else None,
    }


def _from(out: Path, path: Path) -> str:
    """`path` as seen from the round folder, so that both can move together; absolute on another drive."""
    try:
        return Path(os.path.relpath(path.resolve(), out.resolve())).as_posix()
    except ValueError:
        return str(path.resolve())

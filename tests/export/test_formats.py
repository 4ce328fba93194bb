"""The pages of docs that follow from code are current, and the registry is sound."""

from __future__ import annotations

import importlib
from pathlib import Path

import pytest
from support.hostile import small_round

from reviewkit.errors import ReviewkitError
from reviewkit.export import FORMATS, Job, find, write
from reviewkit.export.dictionary import data_dictionary, with_table
from reviewkit.log.transcript import save_transcript
from reviewkit.model import Segment, Transcript, Word

DOCS = Path(__file__).parents[2] / "docs"
REFRESH = "run: python -m reviewkit.export.dictionary docs"


def test_the_data_dictionary_is_current() -> None:
    assert (DOCS / "data-dictionary.md").read_text(encoding="utf-8") == data_dictionary(), REFRESH


def test_the_table_of_formats_is_current() -> None:
    page = (DOCS / "formats.md").read_text(encoding="utf-8")
    assert with_table(page) == page, REFRESH


@pytest.mark.parametrize("chosen", FORMATS, ids=lambda item: item.name)
def test_each_format_is_one_module_with_a_writer(chosen) -> None:  # type: ignore[no-untyped-def]
    module = importlib.import_module(f"reviewkit.export.{chosen.module}")
    assert callable(module.write) and module.__doc__
    assert chosen.line.endswith(".") and len(chosen.line) <= 64
    assert [item.name for item in FORMATS].count(chosen.name) == 1
    assert [item.file for item in FORMATS].count(chosen.file) == 1


@pytest.mark.parametrize(
    "chosen", [item for item in FORMATS if not item.needs and not item.slow], ids=lambda i: i.name
)
def test_each_format_needs_no_footage_unless_it_says_so(tmp_path: Path, chosen) -> None:  # type: ignore[no-untyped-def]
    job = Job(small_round(tmp_path / "round"))
    path = tmp_path / "out" / chosen.file
    write(chosen, job, path)
    assert path.is_dir() == chosen.file.endswith("/")
    first = {item: item.read_bytes() for item in path.parent.rglob("*") if item.is_file()}
    write(chosen, job, path)
    assert first and (chosen.name in ("xlsx",) or first == {item: item.read_bytes() for item in first})


@pytest.mark.parametrize("name", ["srt", "vtt", "ass"])
def test_subtitles_need_the_words_alone(tmp_path: Path, name: str) -> None:
    job = Job(small_round(tmp_path / "round"))
    save_transcript(job.folder.transcript_json, Transcript((Segment((Word("Fore!", 1.0, 1.5),)),)))
    write(find(name), job, tmp_path / "out")
    assert "Fore!" in (tmp_path / "out").read_text(encoding="utf-8")


def test_an_unknown_format_is_told() -> None:
    with pytest.raises(ReviewkitError, match=r"no format 'papyrus'\. Formats: description, "):
        find("papyrus")

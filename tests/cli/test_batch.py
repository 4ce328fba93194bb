"""`reviewkit batch` here and on two real Dask workers: what is read, kept, failed, and read again."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from reviewkit.batching import read_one, rounds_in
from reviewkit.cli.batch import command, job_of
from reviewkit.cluster import clips_of, hear_clip
from reviewkit.errors import ModelError, ReviewkitError, SourceError
from reviewkit.footage import ffmpeg
from reviewkit.log import open_round
from reviewkit.log.transcript import load_transcript
from reviewkit.model import Plan
from reviewkit.plan import Wish
from reviewkit.speech import decode, weights

FIXTURES = Path(__file__).parents[2] / "fixtures" / "rounds"
TALKS = sorted(FIXTURES.glob("*/clean.vtt"))


@pytest.fixture
def season(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Every fixture round as timed text, a broken text, a broken round.toml and a folder with two texts."""
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path / "cache"))
    for talk in TALKS:
        place = tmp_path / "season" / talk.parent.name
        place.mkdir(parents=True)
        shutil.copy(talk, place / "talk.vtt")
    broken = {
        "broken/talk.vtt": "WEBVTT\n\n00:01.000 --> 00:61.000\nPar 4.\n",
        "toml/round.toml": "hole = 3\n",
    }
    broken |= {"toml/talk.vtt": "", "two/a.vtt": "", "two/b.srt": "", "empty/notes.txt": "none"}
    for name, text in broken.items():
        path = tmp_path / "season" / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path / "season"


@pytest.fixture(scope="module")
def cluster(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """A scheduler with two workers in processes of their own, and the cache that they use."""
    distributed = pytest.importorskip("distributed", reason="the cluster extra is not installed")
    place = tmp_path_factory.mktemp("cluster")
    before = os.environ.get("REVIEWKIT_CACHE")
    os.environ["REVIEWKIT_CACHE"] = str(place / "cache")
    try:
        with distributed.LocalCluster(
            n_workers=2,
            threads_per_worker=1,
            processes=True,
            dashboard_address=None,
            local_directory=str(place),
        ) as started:
            yield started.scheduler_address, place / "cache"
    finally:
        if before is None:
            del os.environ["REVIEWKIT_CACHE"]
        else:
            os.environ["REVIEWKIT_CACHE"] = before


def batch(*args: object) -> Result:
    """The run; anything but an exit or a told error is raised."""
    done = CliRunner().invoke(command, [str(arg) for arg in args])
    if done.exception is not None and not isinstance(done.exception, SystemExit | ReviewkitError):
        raise done.exception
    return done


def states(done: Result) -> dict[str, str]:
    lines = [line.split("] ", 1)[1] for line in done.stdout.splitlines() if line.startswith("[")]
    return dict(line.split(": ") for line in lines)


def expected(good: str) -> dict[str, str]:
    return {talk.parent.name: good for talk in TALKS} | dict.fromkeys(("broken", "toml", "two"), "failed")


def check_two_runs(season: Path, *more: str) -> None:
    """A first run reads what it can; a second only what has been mended or changed since."""
    first = batch(season, *more)
    assert states(first) == expected("read") and first.exit_code == 1
    told = first.stderr.splitlines()[-3:]
    assert sorted(line.split(":")[0] for line in told) == ["broken", "toml", "two"]
    assert any("broken/talk.vtt: line 3:" in line for line in told)
    assert any("round.toml" in line for line in told)
    assert any("several timed texts (a.vtt, b.srt)" in line for line in told)
    assert "Traceback" not in first.output
    for talk in TALKS:
        assert len(open_round(season / talk.parent.name / "talk").holes) > 2
    kept = {path: path.stat().st_mtime_ns for path in season.glob("*/talk/*.csv")}
    shutil.copy(TALKS[0], season / "broken" / "talk.vtt")
    (season / "two" / "b.srt").unlink()
    shutil.copy(TALKS[1], season / "two" / "a.vtt")
    (season / "toml" / "round.toml").unlink()
    shutil.copy(TALKS[2], season / "toml" / "talk.vtt")
    (season / TALKS[0].parent.name / "round.toml").write_text('target = "+1"\n', encoding="utf-8")
    second = batch(season, *more)
    mended = dict.fromkeys(("broken", "toml", "two", TALKS[0].parent.name), "read")
    assert states(second) == expected("kept") | mended and second.exit_code == 0
    unchanged = {path: time for path, time in kept.items() if TALKS[0].parent.name not in path.parts}
    assert all(path.stat().st_mtime_ns == time for path, time in unchanged.items())
    assert set(states(batch(season, *more)).values()) == {"kept"}


def test_rounds_are_read_here_and_only_what_is_missing_again(season: Path) -> None:
    check_two_runs(season)
    (season / TALKS[1].parent.name / "talk" / "round.json").unlink()
    assert states(batch(season))[TALKS[1].parent.name] == "read"


def test_rounds_are_read_on_two_workers(
    season: Path, cluster: tuple[str, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    import distributed

    address, cache = cluster
    monkeypatch.setenv("REVIEWKIT_CACHE", str(cache))
    check_two_runs(season, "--scheduler", address)
    with distributed.Client(address) as client:
        logs = client.run_on_scheduler(lambda dask_scheduler: list(dask_scheduler.transition_log))
    done = [entry for entry in logs if entry[2] == "memory" and "read-" in str(entry[0])]
    assert len(done) >= len(TALKS), "the rounds were tasks of the cluster"


def test_a_round_rests_on_what_the_tasks_of_its_clips_heard(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("REVIEWKIT_CACHE", str(tmp_path / "cache"))
    try:
        weights.find("tiny.en", tmp_path / "cache" / "models", print)
    except ModelError as error:
        pytest.skip(str(error))
    talk, wind = tmp_path / "r" / "1.wav", tmp_path / "r" / "2.wav"
    talk.parent.mkdir()
    ffmpeg.run(["-y", "-t", "15", "-i", str(FIXTURES / "demo" / "narration.opus"), talk], talk)
    ffmpeg.run(["-y", "-f", "lavfi", "-i", "anoisesrc=color=pink:amplitude=0.05:duration=8", wind], wind)
    job = job_of("r", (talk, wind), Wish(model="tiny.en", device="cpu", again=False))
    clips = clips_of(job)
    assert clips == [talk, wind]
    for clip in clips:
        hear_clip(clip, job.plan, job.options)

    def not_again(*args: object) -> None:
        raise AssertionError("heard again")

    monkeypatch.setattr(decode, "Decoder", not_again)
    read_one(job)
    assert len(load_transcript(open_round(job.out).transcript_json).words) > 20
    with pytest.raises(AssertionError, match="heard again"):
        hear_clip(talk, Plan(names=("Quillback",)), job.options)


def test_workers_that_differ_are_told_before_any_work(
    season: Path, cluster: tuple[str, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    done = batch(season, "--scheduler", cluster[0])
    assert isinstance(done.exception, ReviewkitError) and "cache is" in str(done.exception)
    assert not list(season.glob("*/talk"))


def test_no_cluster_is_told(season: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("reviewkit.cluster.ANSWER_S", 1)
    for address in ("tcp://127.0.0.1:9", "nonsense://x"):
        pytest.importorskip("distributed")
        assert "No Dask scheduler answers at" in str(batch(season, "--scheduler", address).exception)
    monkeypatch.setitem(sys.modules, "distributed", None)
    told = str(batch(season, "--scheduler", "tcp://127.0.0.1:9").exception)
    assert "reviewkit[cluster]" in told


def test_what_counts_as_a_round(tmp_path: Path) -> None:
    names = [
        "r2/clip10.MP4",
        "r2/clip2.mp4",
        "r2/talk.vtt",
        "r10/a.wav",
        "r10/a.srt",
        "r3/a.srt",
        "r3/a.json",
    ]
    names += ["done/round.json", "done/x.mp4", "half/transcript.json", "notes/a.txt", "r4/.hidden.mp4"]
    for name in names:
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).touch()
    found = {name: [path.name for path in sources] for name, sources in rounds_in(tmp_path).items()}
    assert list(found.items()) == [("r2", ["clip2.mp4", "clip10.MP4"]), ("r3", ["a.srt"]), ("r10", ["a.wav"])]


@pytest.mark.parametrize(
    ("name", "told"), [("gone", "is not a folder"), ("", "holds no folder with footage")]
)
def test_a_folder_without_rounds_is_told(tmp_path: Path, name: str, told: str) -> None:
    assert told in str(batch(tmp_path / name).exception)
    assert not isinstance(batch(tmp_path / name).exception, SourceError)

"""Finding and running ffmpeg.

The one on PATH comes first; otherwise the one that the `imageio-ffmpeg` wheel carries. There may be no
ffprobe: `footage.probe` asks PyAV instead.
"""

from __future__ import annotations

import contextlib
import functools
import re
import shutil
import subprocess
import tempfile
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import IO, cast

from reviewkit.errors import ReviewkitError, SourceError

_UNFIT = re.compile(r"tag for codec (\S+) in stream|\] (\S+) only supported in|Could not write header")
QUIET = ("-hide_banner", "-nostdin", "-loglevel", "error")


@functools.cache
def find_ffmpeg() -> str:
    """Path of the ffmpeg program. Raises ReviewkitError when there is none."""
    on_path = shutil.which("ffmpeg")
    if on_path:
        return on_path
    try:
        import imageio_ffmpeg

        return str(imageio_ffmpeg.get_ffmpeg_exe())
    except (ImportError, RuntimeError) as error:
        raise ReviewkitError("ffmpeg is not installed.", "Run: pip install imageio-ffmpeg") from error


def run(arguments: Sequence[str | Path], about: Path | str) -> None:
    """Run ffmpeg with `arguments` (after its name and the quiet flags, which come first).

    Give `-y` yourself where the output may exist, as it does inside `files.whole`. `about` is the file that a
    failure is told of: SourceError with ffmpeg's own last line.
    """
    command = [find_ffmpeg(), *QUIET, *map(str, arguments)]
    done = subprocess.run(command, stdin=subprocess.DEVNULL, capture_output=True, check=False)
    if done.returncode:
        raise _failure(about, done.stderr)


@contextlib.contextmanager
def stream(arguments: Sequence[str | Path], about: Path | str) -> Iterator[IO[bytes]]:
    """Run ffmpeg while its standard output is read: `arguments` must end in a pipe such as `-f f32le -`.

    Leaving the block early ends ffmpeg. Read to the end, a failure is SourceError as in `run`.
    """
    command = [find_ffmpeg(), *QUIET, *map(str, arguments)]
    with tempfile.TemporaryFile() as complaints:
        process = subprocess.Popen(
            command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=complaints
        )
        output = cast("IO[bytes]", process.stdout)
        try:
            yield output
            at_end = not output.read(1)
            if at_end and process.wait():
                complaints.seek(0)
                raise _failure(about, complaints.read())
        finally:
            output.close()
            process.kill()
            process.wait()


def _failure(about: Path | str, stderr: bytes) -> SourceError:
    text = stderr.decode("utf-8", "replace").strip()
    unfit = _UNFIT.search(text)
    if unfit:
        kind = unfit.group(1) or unfit.group(2) or "this footage"
        problem = f"cannot hold {kind} as it is: this kind of file has no place for it."
        return SourceError(about, problem, "Name it .mkv, which holds nearly everything.")
    lines = text.splitlines()
    reason = lines[-1] if lines else "no reason given"
    return SourceError(about, f"ffmpeg failed ({reason}).", "Check that the file plays, then try again.")

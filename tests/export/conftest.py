"""Small footage, made here by ffmpeg: a moving test picture with tones, a key frame a second."""

from __future__ import annotations

from pathlib import Path

import pytest

from reviewkit.footage.ffmpeg import run

SECONDS = 60


@pytest.fixture(scope="session")
def footage(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A minute as a phone leaves it: turned by 90 degrees, two sound tracks, an old chapter, tags, a time
    code. Upright picture of 180 x 320 at 25 frames a second."""
    home = tmp_path_factory.mktemp("footage")
    flat, turned, old = home / "flat.mp4", home / "turned.mp4", home / "old.ffmeta"
    old.write_text(f";FFMETADATA1\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND={SECONDS}000\ntitle=old\n")
    picture = ["-f", "lavfi", "-i", f"testsrc2=s=320x180:r=25:d={SECONDS}"]
    sounds = [part for hz in (440, 880) for part in ("-f", "lavfi", "-i", f"sine={hz}:d={SECONDS}")]
    coding = ["-c:v", "libx264", "-preset", "ultrafast", "-g", "25", "-keyint_min", "25", "-c:a", "aac"]
    tags = ["-metadata:s:a:1", "language=fra", "-timecode", "10:00:00:00"]
    maps = ["-map", "0", "-map", "1", "-map", "2"]
    run(["-y", *picture, *sounds, *maps, *coding, *tags, flat], about=flat)
    tags = ["-metadata", "com.apple.quicktime.make=Meadow", "-metadata", "title=Back nine"]
    tags += ["-metadata", "creation_time=2024-05-01T09:30:00Z", "-movflags", "use_metadata_tags"]
    sources = ["-display_rotation", "90", "-i", flat, "-i", old]
    run(
        ["-y", *sources, "-map", "0:v", "-map", "0:a", "-map_chapters", "1", "-c", "copy", *tags, turned],
        turned,
    )
    return turned

"""Footage of many kinds, as cameras and recorders leave it: twelve seconds each, made by ffmpeg.

The picture is a moving test card, the sound noise, so that any moment of either can be told from any other.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from reviewkit.footage.ffmpeg import run

SECONDS = 12
CARD = ("-f", "lavfi", "-i", f"testsrc2=s=160x90:r=25:d={SECONDS}")
NOISE = ("-f", "lavfi", "-i", f"anoisesrc=d={SECONDS}:r=48000:seed=5:a=0.3")
H264 = ("-c:v", "libx264", "-preset", "ultrafast", "-g", "25", "-keyint_min", "25")
REORDERED = ("-c:v", "libx264", "-preset", "veryfast", "-bf", "3", "-g", "25", "-keyint_min", "25")
HEVC = ("-c:v", "libx265", "-preset", "ultrafast", "-g", "25", "-x265-params", "log-level=error:keyint=25")
PCM, AAC = ("-c:a", "pcm_s16le"), ("-c:a", "aac")
KINDS: dict[str, tuple[str, ...]] = {
    "pcm.mov": (*H264, *PCM),
    "prores.mov": ("-c:v", "prores_ks", "-profile:v", "0", *PCM),
    "phone.mov": (*HEVC, "-tag:v", "hvc1", *AAC),
    "hevc.mkv": (*HEVC, *AAC),
    "fragments.mp4": (*H264, *AAC, "-movflags", "frag_keyframe+empty_moov+default_base_moof"),
    "reordered.mp4": (*REORDERED, *AAC),
    "uneven.mp4": ("-vf", "select='mod(n,7)*mod(n,3)'", "-fps_mode", "vfr", *H264, *AAC),
    "flac.mkv": (*H264, "-c:a", "flac"),
    "camcorder.mts": (*REORDERED, "-c:a", "ac3"),
    "motion.avi": ("-c:v", "mjpeg", "-c:a", "pcm_u8"),
    "web.webm": ("-c:v", "libvpx", "-deadline", "realtime", "-cpu-used", "8", "-c:a", "libopus"),
}
TURNS = {"turned-90.mov": "90", "turned-180.mp4": "180", "turned-270.mp4": "270"}


@dataclass(frozen=True, slots=True)
class Sources:
    """Files in `home`, each made when it is first asked for."""

    home: Path

    def make(self, name: str) -> Path:
        path = self.home / name
        if path.exists():
            return path
        if name in KINDS:
            run(["-y", *CARD, *NOISE, *KINDS[name], path], path)
        elif name in TURNS:
            plain = self.make("phone.mov" if name.endswith(".mp4") else "pcm.mov")
            tags = ["-metadata", "com.apple.quicktime.make=Meadow", "-movflags", "use_metadata_tags"]
            run(["-y", "-display_rotation", TURNS[name], "-i", plain, "-c", "copy", *tags, path], path)
        elif name == "tracks.mp4":
            maps = [part for n in (0, 1, 1, 1) for part in ("-map", str(n))]
            sound = ["-c:a:0", "aac", "-c:a:1", "libmp3lame", "-c:a:2", "aac"]
            tags = ["-metadata:s:a:0", "language=eng", "-metadata:s:a:1", "language=fra"]
            default = ["-disposition:a:0", "0", "-disposition:a:1", "default"]
            run(["-y", *CARD, *NOISE, *maps, *H264, *sound, *tags, *default, path], path)
        elif name == "attached.mkv":
            plain, words, font = self.make("reordered.mp4"), self.home / "words.srt", self.home / "face.ttf"
            words.write_text("1\n00:00:01,000 --> 00:00:05,000\nFore!\n")
            font.write_bytes(bytes(range(256)))
            kind = ["-metadata:s:t", "mimetype=font/ttf"]
            run(
                ["-y", "-i", plain, "-i", words, "-c", "copy", "-c:s", "srt", "-attach", font, *kind, path],
                path,
            )
        elif name == "cover.mp4":
            still = ["-f", "lavfi", "-i", "color=red:s=64x64:d=0.04"]
            streams = ["-map", "0", "-map", "1", "-c", "copy", "-c:v:1", "png", "-frames:v:1", "1"]
            cover = ["-disposition:v:1", "attached_pic"]
            run(["-y", "-i", self.make("reordered.mp4"), *still, *streams, *cover, path], path)
        return path


NAMES = (*KINDS, *TURNS, "tracks.mp4", "attached.mkv", "cover.mp4")

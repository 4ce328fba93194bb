"""Still pictures as video at an even rate: each encoded once, its packet repeated."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path


def hold(source: Path, frames: Sequence[int], fps: Fraction, out: Path) -> None:
    """Write the pictures of `source`, whose codec must be all key frames, each for so many `frames`.

    Raises ValueError when `source` holds another number of pictures than `frames` names.
    """
    import av

    with av.open(str(source)) as given, av.open(str(out), "w") as made:
        stream = given.streams.video[0]
        copy = made.add_stream_from_template(stream)
        copy.time_base = 1 / fps
        # The kind of ProRes stands in the tag, which a template does not carry over.
        copy.codec_context.codec_tag = stream.codec_context.codec_tag
        at = 0
        packets = [bytes(packet) for packet in given.demux(stream) if packet.size]
        for data, count in zip(packets, frames, strict=True):
            for _ in range(count):
                packet = av.Packet(data)
                packet.stream, packet.time_base = copy, 1 / fps
                packet.pts = packet.dts = at
                packet.duration, packet.is_keyframe = 1, True
                made.mux(packet)
                at += 1

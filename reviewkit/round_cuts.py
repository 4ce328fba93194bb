"""The cuts of a round near given moments: the seams between its clips, and hard cuts found in them.

What was searched is kept in the cache, so that a reading with other rules does not decode the picture again.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence

from reviewkit.cache import cache_dir, footage_hash
from reviewkit.files import write_text
from reviewkit.footage.cuts import SETTINGS, Reach, find_cuts, merged
from reviewkit.footage.probe import Media
from reviewkit.footage.timeline import Clip, Timeline

BEFORE_S, AFTER_S = 5.0, 1.0
"""How far before and after a hole's first words a cut can be the hole's beginning."""


def cuts_near(timeline: Timeline, moments: Sequence[float]) -> tuple[float, ...]:
    """Times on the round's timeline of cuts within reach of `moments` and of all seams, ascending."""
    stretches: dict[Clip, list[Reach]] = {}
    for moment in moments:
        for clip, start_s, end_s in timeline.spans(moment - BEFORE_S, moment + AFTER_S):
            if clip.media.picture is not None:
                stretches.setdefault(clip, []).append(Reach(start_s, end_s))
    found = set(timeline.seams)
    for clip, wanted in stretches.items():
        for second in _kept_or_found(clip.media, merged(wanted)):
            if clip.in_s < second < clip.out_s:
                found.add(second - clip.in_s + clip.offset_s)
    return tuple(sorted(found))


def _kept_or_found(media: Media, stretches: Sequence[Reach]) -> list[float]:
    key = f"{SETTINGS}\n" + "\n".join(f"{item.start_s:.3f} {item.end_s:.3f}" for item in stretches)
    name = hashlib.sha256(key.encode()).hexdigest()[:16]
    kept = cache_dir() / "cuts" / footage_hash(media)[:24] / f"{name}.json"
    if kept.is_file():
        return [float(second) for second in json.loads(kept.read_text(encoding="ascii"))]
    found = find_cuts(media.path, stretches)
    write_text(kept, json.dumps(found))
    return found

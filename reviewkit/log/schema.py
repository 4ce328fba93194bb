"""The columns of the round folder: the contract that other programs read, in one place.

Readers, writers, the data dictionary in docs and the tests follow from these tables.
"""

from __future__ import annotations

from dataclasses import dataclass

from reviewkit.model import values

SCHEMA_VERSION = 1


@dataclass(frozen=True, slots=True)
class Column:
    """One column. `dtype` is the pandas dtype it is read as; all of them can hold a missing value."""

    name: str
    dtype: str
    meaning: str
    unit: str = ""
    values: tuple[str, ...] = ()


HOLES = (
    Column("hole", "Int64", "number on the course card"),
    Column("play_order", "Int64", "1 for the first hole played"),
    Column("start_s", "Float64", "where the talk turns to the hole", "s"),
    Column("end_s", "Float64", "where the next hole or the closing words begin", "s"),
    Column("par", "Int64", "par, from the card or as told", "strokes"),
    Column("strokes", "Int64", "score on the hole, penalty strokes included", "strokes"),
    Column("to_par", "Int64", "strokes minus par", "strokes"),
    Column("running_to_par", "Int64", "sum of to_par so far, in order of play", "strokes"),
    Column("putts", "Int64", "strokes made from the putting green", "strokes"),
    Column("penalty_strokes", "Int64", "penalty strokes on the hole", "strokes"),
    Column("fairway_hit", "boolean", "tee shot at rest in the fairway; par 4 and longer only"),
    Column("green_in_regulation", "boolean", "on the putting surface in par minus two strokes or fewer"),
    Column("confidence", "Float64", "probability that strokes is right", "0 to 1"),
    Column("status", "string", "whether a person should look", values=values.STATUSES),
    Column("doubts", "string", "plain words, why a person should look"),
)

SHOTS = (
    Column("hole", "Int64", "number on the course card"),
    Column("stroke", "Int64", "number of the stroke on the hole, penalty strokes before it counted"),
    Column("start_s", "Float64", "start of the words that tell it", "s"),
    Column("end_s", "Float64", "end of the words that tell it", "s"),
    Column("kind", "string", "what sort of stroke", values=values.KINDS),
    Column(
        "club", "string", "club, a wedge's loft in degrees as a number, empty for putts", values=values.CLUBS
    ),
    Column("lie", "string", "where the ball lay before the stroke", values=values.LIES),
    Column("distance_yd", "Float64", "to the hole before the stroke, for putts too", "yd"),
    Column("result", "string", "where the ball came to rest", values=values.RESULTS),
    Column("miss", "string", "side of the target it missed on", values=values.MISSES),
    Column("contact", "string", "how the ball was struck", values=values.CONTACTS),
    Column("penalty_strokes", "Int64", "penalty strokes this stroke incurred", "strokes"),
    Column("holed", "boolean", "the ball went in"),
    Column("told", "boolean", "false when the stroke is inferred, not told"),
    Column("confidence", "Float64", "probability that the stroke is as written", "0 to 1"),
    Column("evidence", "string", "the words it rests on"),
)

AMENDMENTS = (
    Column("id", "Int64", "1 for the first correction; never used twice"),
    Column("made_at", "string", "when, UTC, ISO 8601"),
    Column("action", "string", "what was done"),
    Column("hole", "Int64", "hole as numbered when it was made"),
    Column("stroke", "Int64", "stroke as numbered when it was made; empty for the hole itself"),
    Column("at_s", "Float64", "time of the corrected row, to find it again", "s"),
    Column("field", "string", "column that was corrected"),
    Column("value", "string", "new value"),
    Column("was", "string", "old value"),
    Column("words", "string", "evidence of the corrected row, to find it again"),
)

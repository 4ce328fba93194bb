"""A reading of two holes with one doubt, and corrections numbered as the folder would."""

from __future__ import annotations

from reviewkit.log.amendments import Correction
from reviewkit.model import Amendment, Doubt, HoleScore, Round, Shot

FIRST = (
    Shot(
        1, 1, 27.0, 33.0, "tee", "D", "tee", 362.0, "fairway", evidence="Driver, left centre of the fairway"
    ),
    Shot(
        1,
        2,
        34.0,
        40.0,
        "approach",
        "GW",
        "fairway",
        118.0,
        "green",
        evidence="smooth gap wedge, eighteen feet",
    ),
    Shot(1, 3, 40.5, 45.0, "putt", "", "green", 6.0, "green", told=False, evidence="Two putts"),
    Shot(1, 4, 40.5, 45.0, "putt", "", "green", None, "holed", holed=True, told=False, evidence="Two putts"),
)
SECOND = (
    Shot(2, 1, 55.0, 58.0, "tee", "D", "tee", 505.0, "rough", "right", evidence="I block it dead right"),
    Shot(2, 2, 59.0, 65.0, "layup", "6I", "rough", None, "fairway", evidence="lay up with a six iron"),
    Shot(
        2, 3, 66.0, 72.0, "approach", "", "fairway", 102.0, "green", evidence="this wedge, one hop and sits"
    ),
    Shot(2, 4, 73.0, 77.0, "putt", "", "green", 2.0, "holed", holed=True, evidence="and center cut"),
)
DOUBT = Doubt(2, 46.0, "The total says birdie.", "one under", 0.8, alternatives=("5",))
READING = Round(
    scores=(
        HoleScore(1, 1, 20.0, 46.0, 4, 4, 0, 0, 2, 0, True, True, 0.95, "sure"),
        HoleScore(
            2, 2, 46.0, 85.0, 5, 4, -1, -1, 1, 0, False, True, 0.6, "check", ("The total says birdie.",)
        ),
    ),
    shots=FIRST + SECOND,
    doubts=(DOUBT,),
)


def made(*corrections: Correction) -> tuple[Amendment, ...]:
    return tuple(
        Amendment(number, "2024-05-04T10:00:00+00:00", *(getattr(item, name) for name in item.__slots__))
        for number, item in enumerate(corrections, start=1)
    )

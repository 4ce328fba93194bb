"""Strokes in order, told or implied, from the mentions of one hole."""

from reviewkit.shots.assemble import Telling, clubs_told_last, shots, tell

__all__ = ["Telling", "clubs_told_last", "shots", "tell"]

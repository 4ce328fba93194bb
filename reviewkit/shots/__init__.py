"""Strokes in order, told or implied, from the mentions of one hole."""

from reviewkit.shots.assemble import Telling, shots, tell

__all__ = ["Telling", "shots", "tell"]

"""The round folder: what is written, what is read back, and a person's corrections."""

from reviewkit.log.folder import RoundFolder, open_round

__all__ = ["RoundFolder", "open_round"]

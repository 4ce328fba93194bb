"""Where each hole begins and which one it is, decoded over the whole round."""

from reviewkit.holes.decode import decode, pars
from reviewkit.holes.evidence import of_hole

__all__ = ["decode", "of_hole", "pars"]

"""Where each hole begins and which one it is, decoded over the whole round."""

from reviewkit.holes.decode import decode, pars
from reviewkit.holes.signs import from_tee, of_hole

__all__ = ["decode", "from_tee", "of_hole", "pars"]

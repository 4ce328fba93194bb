"""Where each hole begins and which one it is, decoded over the whole round."""

from reviewkit.holes.decode import decode, pars

__all__ = ["decode", "pars"]

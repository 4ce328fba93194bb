"""A hole as a table of probabilities over par and strokes, and what golf alone says about it."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
import numpy.typing as npt

from reviewkit.model.values import PARS

__all__ = ["PARS", "STROKES", "TO_PARS", "Array", "Table", "at_par", "at_strokes", "at_to_par", "prior"]

STROKES = tuple(range(1, 21))
"""Scores on one hole that the sums tell apart; 20 stands for 20 and worse."""

TO_PARS = range(STROKES[0] - PARS[-1], STROKES[-1] - PARS[0] + 1)
"""What a hole's score to par may be."""

Array = npt.NDArray[np.float64]
Table = Array
"""Shape (len(PARS), len(STROKES)): likelihood or probability of (par, strokes)."""

PAR_SHARE = {3: 0.22, 4: 0.555, 5: 0.22, 6: 0.005}
"""A course of par 72 has four par 3s, ten par 4s and four par 5s as a rule."""

TO_PAR_SHARE = {-3: 0.001, -2: 0.01, -1: 0.1, 0: 0.34, 1: 0.29, 2: 0.14, 3: 0.06, 4: 0.03, 5: 0.015}
"""Scores to par over players from scratch to beginner, rounded; each worse one is half as likely."""


def prior() -> Table:
    """What is expected of a hole before a word is heard."""
    table = np.zeros((len(PARS), len(STROKES)))
    for i, par in enumerate(PARS):
        for j, strokes in enumerate(STROKES):
            to_par = strokes - par
            share = TO_PAR_SHARE.get(to_par, 0.0)
            if to_par > 5:
                share = TO_PAR_SHARE[5] / 2 ** (to_par - 5)
            table[i, j] = PAR_SHARE[par] * share
    return table


def at_par(shares: Mapping[int, float]) -> Table:
    """A column of likelihoods by par, to multiply a table with."""
    return np.array([[shares.get(par, 0.0)] for par in PARS])


def at_strokes(shares: Mapping[int, float]) -> Table:
    """A row of likelihoods by strokes, to multiply a table with; what lies beyond the last counts as it."""
    row = np.zeros((1, len(STROKES)))
    for strokes, share in shares.items():
        if strokes >= 1:
            row[0, min(strokes, STROKES[-1]) - 1] += share
    return row


def at_to_par(shares: Mapping[int, float], other: float) -> Table:
    """Likelihoods by score to par; `other` is that of any score not named."""
    return np.array([[shares.get(strokes - par, other) for strokes in STROKES] for par in PARS])

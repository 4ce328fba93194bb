"""One reconciled score a hole: strokes told, score words and running totals read together."""

from reviewkit.scoring.card import keep_card
from reviewkit.scoring.counting import next_stroke, stableford, taken
from reviewkit.scoring.reconcile import Reconciled, reconcile

__all__ = ["Reconciled", "keep_card", "next_stroke", "reconcile", "stableford", "taken"]

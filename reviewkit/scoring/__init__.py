"""One reconciled score a hole: strokes told, score words and running totals read together."""

from reviewkit.scoring.card import as_told, keep_card
from reviewkit.scoring.reconcile import Reconciled, reconcile

__all__ = ["Reconciled", "as_told", "keep_card", "reconcile"]

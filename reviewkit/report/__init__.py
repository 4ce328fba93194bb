"""Pages that open from disk: one round, or a series of them."""

from reviewkit.report.render import write_report

__all__ = ["write_report"]

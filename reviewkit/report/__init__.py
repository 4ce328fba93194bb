"""Pages that open from disk: one round, or a series of them."""

from reviewkit.report.render import write_report, write_series_report

__all__ = ["write_report", "write_series_report"]

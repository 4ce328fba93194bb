"""Footage: clips on one timeline, their sound as a stream, their cuts and frames."""

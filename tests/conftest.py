"""One profile for property tests: few examples, no deadline, so that a busy machine fails none of them."""

from __future__ import annotations

from hypothesis import HealthCheck, settings

settings.register_profile(
    "house", deadline=None, max_examples=40, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("house")

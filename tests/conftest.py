"""Property tests: the same few examples each run, no deadline, so that nothing but a change fails them.

`HYPOTHESIS_PROFILE=search pytest` looks at random, and longer.
"""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

slow = [HealthCheck.too_slow]
settings.register_profile(
    "house", deadline=None, derandomize=True, max_examples=40, suppress_health_check=slow
)
settings.register_profile("search", deadline=None, max_examples=1000, suppress_health_check=slow)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "house"))

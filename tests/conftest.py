"""What all tests share: property tests draw the same examples every time and are never timed."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("bendbook", deadline=None, derandomize=True, max_examples=60)
settings.load_profile("bendbook")

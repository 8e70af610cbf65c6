"""What can go wrong while a built site is finished, said so that it can be mended."""

from __future__ import annotations


class FinishError(Exception):
    """The site could not be finished; the message says what to do."""

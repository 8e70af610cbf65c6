"""When a batter must decide.

References
----------
[1] R. K. Adair, The Physics of Baseball: of the four tenths of a second of a fast pitch the swing itself
    takes about 150 ms; before it come 100 for seeing, 75 for making sense of it and 25 for deciding.
"""

from __future__ import annotations

SWING_TIME = 0.150
"""Time from the start of a swing until the bat meets the ball [s] [1]_."""


def commit_time(flight_time: float, swing_time: float = SWING_TIME) -> float:
    """Return when after release a swing at a ball of this flight time must start [s]; never below 0."""
    return max(0.0, flight_time - swing_time)

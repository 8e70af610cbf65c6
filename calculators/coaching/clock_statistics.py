"""Clocks summed up: the middle of a set of clock values and how far they scatter.

Clocks are hours from 0 to 12 on a dial, so 11:50 and 12:10 are neighbours and their plain average of 6:00
would be wrong. They are averaged as directions instead.

References
----------
[1] Mardia K.V. and Jupp P.E., Directional Statistics, 2000, sections 2.2 and 2.3: mean direction, mean
    resultant length and circular standard deviation.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from calculators.coaching.clock_faces import FULL_TURN, turn_between

_RADIANS = 2 * math.pi / FULL_TURN
_NO_DIRECTION = 1e-12


def mean_clock(clocks: Sequence[float]) -> float | None:
    """Return the mean direction of clocks [hours, 0 to 12] [1]_; None where they cancel or there are none."""
    east, north = _resultant(clocks)
    if math.hypot(east, north) <= _NO_DIRECTION:
        return None
    return (math.atan2(east, north) / _RADIANS) % FULL_TURN


def agreement(clocks: Sequence[float]) -> float:
    """Return how well clocks agree: 1 all the same, 0 all over the dial (mean resultant length [1]_)."""
    return min(1.0, math.hypot(*_resultant(clocks)))


def clock_deviation(clocks: Sequence[float]) -> float:
    """Return the circular standard deviation of clocks [hours] [1]_; infinite where they cancel.

    For clocks within an hour or two of each other it is near the ordinary standard deviation.
    """
    length = agreement(clocks)
    return math.sqrt(max(0.0, -2 * math.log(length))) / _RADIANS if length > _NO_DIRECTION else math.inf


def unrolled(clocks: Sequence[float], middle: float) -> list[float]:
    """Return clocks as hours before (negative) or after `middle`, so that they can be ordered on a line."""
    return [turn_between(middle, clock) for clock in clocks]


def _resultant(clocks: Sequence[float]) -> tuple[float, float]:
    if not clocks:
        return 0.0, 0.0
    angles = [clock * _RADIANS for clock in clocks]
    return math.fsum(map(math.sin, angles)) / len(angles), math.fsum(map(math.cos, angles)) / len(angles)

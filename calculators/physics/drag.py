"""How strongly the air slows the ball.

The drag coefficient is held at one value. Measurements scatter around it with seam height, seam
position and spin, and no published curve is known to do better for pitches [1]_, [2]_.

References
----------
[1] A. M. Nathan, Am. J. Phys. 76 (2008) 119: little dependence on speed, much scatter.
[2] B. Smith, A. Sciacchitano, "Baseball drag measurements in free flight", Appl. Sci. 12 (2022) 1416.
[3] D. Kagan, A. M. Nathan, "Simplified models for the drag coefficient of a pitched baseball",
    Phys. Teach. 52 (2014) 278.
"""

from __future__ import annotations

import math

from calculators.physics.quantity import N, maths_for

STANDARD_DRAG = 0.35
"""C_D of a pitched ball, 70 to 95 mph."""

DRAG_SPREAD = 0.05
"""How far C_D may be off, either way (estimate)."""


def speed_after(distance: N, speed: N, slowing: float) -> N:
    """Return the speed after `distance` [m] on a level line with drag alone.

    speed: at the start, in any unit. slowing: air grip x C_D [1/m].
    """
    return speed * math.e ** (-slowing * distance)


def time_over(distance: N, speed: N, slowing: float) -> N:
    """Return the time [s] to cover `distance` [m] from `speed` [m/s] with drag alone.

    slowing: air grip x C_D [1/m], above zero.
    """
    return (math.e ** (slowing * distance) - 1.0) / (slowing * speed)


def coefficient_from_speeds(first: N, second: N, distance: N, air_grip: float) -> N:
    """Return C_D from two speeds (same unit) measured `distance` [m] apart on a level line [3]_."""
    fraction: N = maths_for(first).log(first / second)
    return fraction / (air_grip * distance)

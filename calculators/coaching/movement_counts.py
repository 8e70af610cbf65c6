"""Ways in which movement is counted, turned into this handbook's own: by spin alone, over the whole flight.

References
----------
[1] A. M. Nathan, note on finding the spin axis from a pitch's path, 2015, revised 2020. The older count is
    half the push times the square of the time over the last forty feet.
"""

from __future__ import annotations

from typing import Literal

from calculators.physics.aim import pitch_to
from calculators.physics.drag import time_over
from calculators.physics.flight import PLATE_FRONT, Conditions
from calculators.physics.movement import Movement, fall
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT
from calculators.physics.vectors import Vector

LAST_FORTY_FEET = 40 * FOOT

Count = Literal["whole", "forty", "gravity"]
"""whole: by spin alone, over the whole flight. forty: by spin alone, over the last forty feet. gravity: the
drop below the line on which the ball left the hand, gravity included; sideways as for whole."""


def whole_flight(
    counted: Movement[float],
    how: Count,
    crossing: tuple[float, float],
    position: Vector[float],
    speed: float,
    conditions: Conditions,
) -> Movement[float]:
    """Return movement by spin alone over the whole flight, from movement counted another way.

    crossing: where the pitch crossed the plate's front edge, toward the catcher's right and up [m].
    position [m] and speed [m/s]: at release.
    Raises OutOfReachError (see aim) where a ball without spin does not get to the plate.
    """
    if how == "forty":
        factor = forty_feet_factor(position[1], speed, conditions)
        return Movement(factor * counted.across, factor * counted.up)
    if how == "gravity":
        plain_fall = _plain_fall(crossing, position, speed, conditions)
        return Movement(counted.across, counted.up + plain_fall)
    return counted


def forty_feet_factor(release: float, speed: float, conditions: Conditions) -> float:
    """Return how much larger the count over the whole flight is than that over the last forty feet [1]_.

    release: its distance from the plate's rear tip [m]. speed: there [m/s].
    A steady push moves the ball by half its size times the square of the time.
    """
    if release <= LAST_FORTY_FEET:
        return 1.0
    slowing = conditions.air_grip * conditions.drag
    whole = time_over(release - PLATE_FRONT, speed, slowing)
    before = time_over(release - LAST_FORTY_FEET, speed, slowing)
    return (whole / (whole - before)) ** 2


def _plain_fall(
    crossing: tuple[float, float], position: Vector[float], speed: float, conditions: Conditions
) -> float:
    """Return how far gravity alone drops a ball below the line on which it leaves the hand [m]."""
    return fall(pitch_to(crossing, position, speed, Spin(0.0, 0.0, 1.0), conditions))

"""What spin does to a pitch: movement, and how the ball comes over the plate.

Movement is where the ball crosses the plate minus where a ball without spin would have crossed it, with the
same release and the same drag, over the whole flight. Other counts exist (over the last forty feet only, or
against a straight line, which adds gravity) and give other numbers for the same pitch.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic

from calculators.physics.flight import Flight, Moment, Release
from calculators.physics.quantity import N, maths_for
from calculators.physics.vectors import length, times


@dataclass(frozen=True)
class Movement(Generic[N]):
    """Movement [m]: `across` toward the catcher's right, `up`; both signed."""

    across: N
    up: N

    @property
    def amount(self) -> N:
        """How far the ball was moved, whichever way [m]."""
        return (self.across**2 + self.up**2) ** 0.5


def spinless(release: Release[N]) -> Release[N]:
    """Return the companion of a pitch: the same release without spin."""
    return Release(release.position, release.velocity, times(release.spin, 0.0))


def movement(pitch: Moment[N], companion: Moment[N]) -> Movement[N]:
    """Return the movement from the moments in which a pitch and its spinless companion cross the plate."""
    return Movement(pitch.position[0] - companion.position[0], pitch.position[2] - companion.position[2])


def fall(flight: Flight[N]) -> N:
    """Return how far the ball ends below the line on which it left the hand [m]; gravity included."""
    start, end = flight.start, flight.end
    _, vy, vz = start.velocity
    return start.position[2] + (end.position[1] - start.position[1]) * vz / vy - end.position[2]


def veer(flight: Flight[N]) -> N:
    """Return how far the ball ends to the catcher's right of the line on which it left the hand [m]."""
    start, end = flight.start, flight.end
    vx, vy, _ = start.velocity
    return end.position[0] - start.position[0] - (end.position[1] - start.position[1]) * vx / vy


def speed(moment: Moment[N]) -> N:
    """Return the speed [m/s]."""
    return length(moment.velocity)


def steepness(moment: Moment[N]) -> N:
    """Return the angle of the path against level [rad]; negative on the way down."""
    _, vy, vz = moment.velocity
    angle: N = maths_for(vz).atan2(vz, -vy)
    return angle


def slant(moment: Moment[N]) -> N:
    """Return the sideways angle of the path [rad]; positive when it heads to the catcher's right."""
    vx, vy, _ = moment.velocity
    angle: N = maths_for(vx).atan2(vx, -vy)
    return angle

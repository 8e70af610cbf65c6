"""A path given by nine numbers: place, velocity and one steady acceleration, as tracking often reports it.

Real acceleration changes a little on the way; over a pitch the nine numbers miss the path by half an inch or
less.

References
----------
[1] A. M. Nathan, note on finding the spin axis from a pitch's path, 2015, revised 2020: drag is what the
    acceleration has along the mean motion, the spin's push is the rest once gravity is taken off.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic

from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Moment
from calculators.physics.movement import Movement
from calculators.physics.quantity import N
from calculators.physics.vectors import Vector, dot, length, plus, times, unit


@dataclass(frozen=True)
class SteadyPath(Generic[N]):
    """A path of steady acceleration: position [m], velocity [m/s] at time 0, acceleration [m/s2]."""

    position: Vector[N]
    velocity: Vector[N]
    acceleration: Vector[N]

    def time_at(self, y: float) -> N:
        """Return when the ball is `y` metres in front of the plate's rear tip [s]; earlier is negative."""
        vy, ay = self.velocity[1], self.acceleration[1]
        return (-vy - (vy * vy - 2.0 * ay * (self.position[1] - y)) ** 0.5) / ay

    def moment_at(self, y: float) -> Moment[N]:
        """Return place and velocity at that distance."""
        time = self.time_at(y)
        along = plus(times(self.velocity, time), times(self.acceleration, 0.5 * time * time))
        return Moment(time, plus(self.position, along), plus(self.velocity, times(self.acceleration, time)))


@dataclass(frozen=True)
class PathForces(Generic[N]):
    """What the air did along a path.

    velocity: mean of start and end [m/s]. push: the spin's part of the acceleration [m/s2].
    slowing: the drag's part along the motion [m/s2]. drag: C_D. lift: C_L.
    """

    velocity: Vector[N]
    push: Vector[N]
    slowing: N
    drag: N
    lift: N


def forces_along(path: SteadyPath[N], release: float, conditions: Conditions = STILL_AIR) -> PathForces[N]:
    """Return drag and push from a path of nine numbers [1]_.

    release: distance of the release from the plate's rear tip [m].
    """
    start, end = path.moment_at(release).velocity, path.moment_at(PLATE_FRONT).velocity
    velocity = times(plus(start, end), 0.5)
    ahead = unit(velocity)
    ax, ay, az = path.acceleration
    by_air = (ax, ay, az + conditions.gravity)
    slowing = -dot(by_air, ahead)
    push = plus(by_air, times(ahead, slowing))
    force = conditions.air_grip * dot(velocity, velocity)
    return PathForces(velocity, push, slowing, slowing / force, length(push) / force)


def steady_movement(path: SteadyPath[N], forces: PathForces[N], start: float) -> Movement[N]:
    """Return the movement by the older count: half the push times the square of the time from `start`.

    start: distance at which the count begins [m]; forty feet before the plate's tip in older reports, the
    release in newer ones. It is smaller than movement over the whole flight when it begins later.
    """
    time = path.time_at(PLATE_FRONT) - path.time_at(start)
    half = 0.5 * time * time
    return Movement(forces.push[0] * half, forces.push[2] * half)

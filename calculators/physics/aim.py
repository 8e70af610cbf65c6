"""Aiming: the direction in which a pitch must leave the hand to cross the plate where it is meant to."""

from __future__ import annotations

from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Flight, Release, fly
from calculators.physics.quantity import N, greatest, maths_for, size
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.units import DEGREE
from calculators.physics.vectors import Vector

AIM_TOLERANCE = 1e-4
"""How far from the mark counts as on it [m]."""

STEEPEST = 50 * DEGREE
MOST_TRIES = 40


class OutOfReachError(ValueError):
    """No direction brings the ball to the plate at that height: it needs more speed or a shorter way."""


def launch_velocity(speed: N, elevation: N, heading: N) -> Vector[N]:
    """Return the velocity [m/s] of a release.

    speed [m/s]. elevation: angle above level [rad]. heading: angle toward the catcher's right [rad].
    """
    maths = maths_for(elevation)
    level = speed * maths.cos(elevation)
    return (level * maths.sin(heading), -level * maths.cos(heading), speed * maths.sin(elevation))


def thrown(position: Vector[N], velocity: Vector[N], spin: Spin[N]) -> Release[N]:
    """Return the release of a ball whose spin is read against its own motion."""
    return Release(position, velocity, spin_vector(spin, velocity))


def pitch_to(
    target: tuple[N | float, N | float],
    position: Vector[N],
    speed: N,
    spin: Spin[N],
    conditions: Conditions = STILL_AIR,
    tolerance: float = AIM_TOLERANCE,
    steps: int | None = None,
) -> Flight[N]:
    """Return the flight that crosses the front of the plate at the target.

    target: where the ball's middle crosses: toward the catcher's right and above the ground [m].
    position: of the release [m]. speed: at release [m/s]. spin: read against the release direction.
    tolerance: how far from the target counts as on it [m]. steps: of the integration, as for `fly`.
    Raises OutOfReachError where the ball cannot get there.

    Each try corrects both angles by what the last pitch missed, as if the path were a parabola.
    """
    distance = position[1] - PLATE_FRONT
    drop_per_slope = conditions.gravity * distance / (speed * speed)
    elevation = (target[1] - position[2]) / distance + 0.5 * drop_per_slope
    heading = (target[0] - position[0]) / distance
    maths = maths_for(elevation)
    for _ in range(MOST_TRIES):
        velocity = launch_velocity(speed, elevation, heading)
        flight = fly(thrown(position, velocity, spin), conditions, steps=steps)
        missed_across = target[0] - flight.end.position[0]
        missed_up = target[1] - flight.end.position[2]
        if max(greatest(size(missed_across)), greatest(size(missed_up))) < tolerance:
            return flight
        slope = maths.sin(elevation) / maths.cos(elevation)
        heading = heading + missed_across / distance
        elevation = elevation + missed_up / (distance * (1.0 + slope**2) * (1.0 - drop_per_slope * slope))
        if greatest(size(elevation)) > STEEPEST:
            break
    raise OutOfReachError("the ball cannot reach the plate at that height; it needs more speed")

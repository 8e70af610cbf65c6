"""The flight of a pitch: gravity, drag and the push of spin, from the hand to the front of the plate.

The path is followed by distance instead of time: the ball's distance from the plate falls steadily, so equal
steps of it end exactly at the plate. Only the velocity enters the forces; time and place are sums along it.
Steps are of fixed order four, as many as `steps_needed` asks for.

Not in the model: seams, decay of the spin, gusts.

References
----------
[1] W. Kutta, 1901: the classical rule of order four.
[2] A. M. Nathan, Am. J. Phys. 76 (2008) 119: the equations of motion of a spinning baseball.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Generic, NamedTuple

from calculators.physics.air import REFERENCE_DENSITY
from calculators.physics.ball import RULE_BOOK_BALL, Ball
from calculators.physics.drag import STANDARD_DRAG
from calculators.physics.lift import STANDARD_LIFT, LiftFit
from calculators.physics.quantity import TINY, N, greatest
from calculators.physics.units import INCH
from calculators.physics.vectors import Vector, length

GRAVITY = 9.80665
PLATE_FRONT = 17 * INCH
"""Distance of the plate's front edge from its rear tip, from which all distances count [m]."""


@dataclass(frozen=True)
class Conditions:
    """What the ball flies through, and what it is.

    density: air [kg/m3]. drag: C_D. lift: C_L against the spin ratio. gravity [m/s2].
    wind: the air's own velocity [m/s]; (0, -3, 0) blows from the pitcher to the plate.
    """

    density: float = REFERENCE_DENSITY
    ball: Ball = RULE_BOOK_BALL
    drag: float = STANDARD_DRAG
    lift: LiftFit = STANDARD_LIFT
    gravity: float = GRAVITY
    wind: tuple[float, float, float] = (0.0, 0.0, 0.0)

    @property
    def air_grip(self) -> float:
        """Density x area / (2 x mass) [1/m]."""
        return self.ball.air_grip(self.density)


STILL_AIR = Conditions()


class Moment(NamedTuple, Generic[N]):
    """Where the ball is and how it moves: `time` since release [s], position [m], velocity [m/s]."""

    time: N
    position: Vector[N]
    velocity: Vector[N]


@dataclass(frozen=True)
class Release(Generic[N]):
    """How the ball leaves the hand: position [m], velocity [m/s] and spin vector [rad/s]."""

    position: Vector[N]
    velocity: Vector[N]
    spin: Vector[N]


@dataclass(frozen=True)
class Flight(Generic[N]):
    """A flight: its moments at equal steps of distance, the first at release, the last at the plate."""

    moments: tuple[Moment[N], ...]

    @property
    def start(self) -> Moment[N]:
        """The moment of release."""
        return self.moments[0]

    @property
    def end(self) -> Moment[N]:
        """The moment at which the ball's middle is over the front edge of the plate."""
        return self.moments[-1]


class ReleaseError(ValueError):
    """The ball is released in front of the plate, or not toward it; mend its place or its direction."""


STEP_TOLERANCE = 1e-4
"""Largest error the steps may leave at the plate [m]: a tenth of a millimetre, 0.004 in."""

KINK_FACTOR = 0.005
"""Size of the step error where the path crosses the corner of the lift fit, from flights against a
reference solver; away from the corner the error is a hundred times smaller."""


def steps_needed(distance: float, speed: float, conditions: Conditions, tolerance: float) -> int:
    """Return how many steps hold the error at the plate below `tolerance` [m].

    distance: still to fly [m]. speed: at release [m/s].

    The bend is how much the velocity changes on the way, as a share of itself. Where the path crosses the
    corner of the two-line lift fit, the error is at most KINK_FACTOR x distance x (bend / steps)^2.
    """
    air_force = conditions.air_grip * (conditions.drag + conditions.lift.coefficient(0.3))
    bend = distance * (air_force + conditions.gravity / speed**2)
    return max(4, math.ceil(bend * math.sqrt(KINK_FACTOR * distance / tolerance)))


def fly(
    release: Release[N],
    conditions: Conditions = STILL_AIR,
    plane: float = PLATE_FRONT,
    steps: int | None = None,
) -> Flight[N]:
    """Follow a pitch to the plane `plane` metres in front of the plate's rear tip.

    release: one pitch, or arrays for many pitches at once; it must be behind the plane and fly toward it.
    steps: of the integration; by default as many as STEP_TOLERANCE asks for.
    Raises ReleaseError where the ball starts in front of the plane or moves away from it.
    """
    return Flight(tuple(_moments(release, conditions, plane, steps)))


def arrive(
    release: Release[N],
    conditions: Conditions = STILL_AIR,
    plane: float = PLATE_FRONT,
    steps: int | None = None,
) -> Moment[N]:
    """Return the last moment of the flight alone; parameters as for `fly`."""
    for moment in _moments(release, conditions, plane, steps):
        last = moment
    return last


def _moments(
    release: Release[N], conditions: Conditions, plane: float, steps: int | None
) -> Iterator[Moment[N]]:
    x, y, z = release.position
    vx, vy, vz = release.velocity
    if -greatest(-y) <= plane or greatest(vy) >= 0:
        raise ReleaseError("the ball must be released behind the plate's front edge and move toward it")
    spin_x, spin_y, spin_z = release.spin
    wind_x, wind_y, wind_z = conditions.wind
    grip = conditions.air_grip
    slowing = grip * conditions.drag
    radius, gravity = conditions.ball.radius, conditions.gravity
    lift_coefficient = conditions.lift.coefficient

    def changes(vx: N, vy: N, vz: N) -> tuple[N, N, N, N]:
        """Return how time and velocity change for each metre of y."""
        ux, uy, uz = vx - wind_x, vy - wind_y, vz - wind_z
        speed_squared = ux * ux + uy * uy + uz * uz
        push_x = spin_y * uz - spin_z * uy
        push_y = spin_z * ux - spin_x * uz
        push_z = spin_x * uy - spin_y * ux
        push = (push_x * push_x + push_y * push_y + push_z * push_z) ** 0.5
        lift = grip * speed_squared * lift_coefficient(radius * push / speed_squared) / (push + TINY)
        drag = slowing * speed_squared**0.5
        per_metre = 1.0 / vy
        return (
            per_metre,
            (lift * push_x - drag * ux) * per_metre,
            (lift * push_y - drag * uy) * per_metre,
            (lift * push_z - drag * uz - gravity) * per_metre,
        )

    if steps is None:
        slowest = -greatest(-length(release.velocity))
        steps = steps_needed(greatest(y) - plane, slowest, conditions, STEP_TOLERANCE)
    step = (plane - y) / steps
    half, sixth = step / 2, step / 6
    start, time = y, 0.0 * y
    yield Moment(time, release.position, release.velocity)
    for taken in range(1, steps + 1):
        t1, ax1, ay1, az1 = changes(vx, vy, vz)
        vx2, vz2 = vx + half * ax1, vz + half * az1
        t2, ax2, ay2, az2 = changes(vx2, vy + half * ay1, vz2)
        vx3, vz3 = vx + half * ax2, vz + half * az2
        t3, ax3, ay3, az3 = changes(vx3, vy + half * ay2, vz3)
        vx4, vz4 = vx + step * ax3, vz + step * az3
        t4, ax4, ay4, az4 = changes(vx4, vy + step * ay3, vz4)
        time = time + sixth * (t1 + 2.0 * (t2 + t3) + t4)
        x = x + sixth * (vx * t1 + 2.0 * (vx2 * t2 + vx3 * t3) + vx4 * t4)
        z = z + sixth * (vz * t1 + 2.0 * (vz2 * t2 + vz3 * t3) + vz4 * t4)
        vx = vx + sixth * (ax1 + 2.0 * (ax2 + ax3) + ax4)
        vy = vy + sixth * (ay1 + 2.0 * (ay2 + ay3) + ay4)
        vz = vz + sixth * (az1 + 2.0 * (az2 + az3) + az4)
        yield Moment(time, (x, start + taken * step, z), (vx, vy, vz))

"""Spin: from a clock face and an active share to a vector, and back.

The clock tells where spin pushes the ball, as the pitcher sees it: 12:00 up (pure backspin), 6:00 down
(pure topspin), 9:00 a right-hander's glove side. The active share is the part of the spin that pushes:
the cosine of the gyro angle, by which the axis leans out of the plane square to the motion. Both are
taken at release, relative to the motion at release; after that the axis stays fixed in space while the
path bends, so the active share drifts a little during the flight.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Generic

from calculators.physics.quantity import TINY, N, maths_for, size
from calculators.physics.vectors import Vector, cross, dot, length, plus, times, unit

HOURS_TO_RADIANS = math.pi / 6


@dataclass(frozen=True)
class Spin(Generic[N]):
    """Spin as a coach reads it.

    rate: all of the spin [rad/s]. clock: where it pushes, in hours, 0 to 12.
    active: the share that pushes, 0 to 1. bullet: which way the rest turns: +1 clockwise as the pitcher
    sees it, like a right-hander's football; -1 the other way.
    """

    rate: N
    clock: N
    active: N
    bullet: N | float = 1.0


def active_share(gyro_angle: N) -> N:
    """Return the active share from the gyro angle [rad], 0 to a quarter turn."""
    share: N = maths_for(gyro_angle).cos(gyro_angle)
    return share


def gyro_angle(active: N) -> N:
    """Return the gyro angle [rad] from the active share, 0 to 1."""
    angle: N = maths_for(active).atan2((1.0 - active**2) ** 0.5, active)
    return angle


def other_hand_clock(clock: N) -> N:
    """Return the clock of the mirror image: what the other hand throws."""
    return (12.0 - clock) % 12.0


def other_hand(spin: Spin[N]) -> Spin[N]:
    """Return the mirror image of a spin: what the other hand throws."""
    return Spin(spin.rate, other_hand_clock(spin.clock), spin.active, -spin.bullet)


def spin_vector(spin: Spin[N], velocity: Vector[N]) -> Vector[N]:
    """Return the spin as a vector [rad/s] for a ball that leaves with `velocity` [m/s].

    velocity must not be straight up or down.
    """
    angle = spin.clock * HOURS_TO_RADIANS
    maths = maths_for(angle)
    active = spin.active * spin.rate
    idle = (1.0 - spin.active**2) ** 0.5 * spin.rate * spin.bullet
    return spin_by_push(-maths.sin(angle) * active, maths.cos(angle) * active, idle, velocity)


def spin_by_push(toward_nine: N, toward_twelve: N, idle: N, velocity: Vector[N]) -> Vector[N]:
    """Return the spin vector [rad/s] from its three parts, each as a rate [rad/s].

    toward_nine, toward_twelve: the spin that pushes to 9:00 and to 12:00 of the pitcher's view.
    idle: bullet spin, positive clockwise as the pitcher sees it. velocity: of the ball [m/s].
    """
    ahead, nine, twelve = _view_along(velocity)
    push = plus(times(nine, toward_nine), times(twelve, toward_twelve))
    return plus(cross(ahead, push), times(ahead, idle))


def spin_from_vector(vector: Vector[N], velocity: Vector[N]) -> Spin[N]:
    """Return rate, clock and active share of a spin vector [rad/s] on a ball moving with `velocity` [m/s].

    The clock of a ball without active spin is meaningless and comes out as 12:00 or thereabouts.
    """
    ahead, nine, twelve = _view_along(velocity)
    along = dot(vector, ahead)
    push = cross(vector, ahead)
    rate = length(vector)
    angle = maths_for(rate).atan2(-dot(push, nine), dot(push, twelve))
    clock = (angle / HOURS_TO_RADIANS) % 12.0
    return Spin(rate, clock, length(push) / rate, along / (size(along) + TINY))


def _view_along(velocity: Vector[N]) -> tuple[Vector[N], Vector[N], Vector[N]]:
    """Return unit vectors along the motion and, square to it, toward 9:00 and 12:00 of the pitcher's view."""
    ahead = unit(velocity)
    x, y, _ = ahead
    level = (x * x + y * y) ** 0.5
    nine = (-y / level, x / level, 0.0 * x)
    return ahead, nine, cross(ahead, nine)

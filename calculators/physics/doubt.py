"""How sure a flight is: each doubt about it is followed through the air by itself, to first order.

References
----------
[1] JCGM 100:2008, Guide to the expression of uncertainty in measurement: independent doubts add as squares.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from calculators.physics.ball import LIVELIEST_BALL
from calculators.physics.drag import DRAG_SPREAD
from calculators.physics.flight import Conditions, Moment, Release, arrive
from calculators.physics.lift import Scaled, spread
from calculators.physics.movement import movement, speed, spinless
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.vectors import Vector, length, times

Cause = Literal["speed", "spin rate", "clock", "active share", "air", "ball", "lift", "drag"]


@dataclass(frozen=True)
class Doubts:
    """How far each input may be off, either way.

    speed [m/s], rate [rad/s], clock [hours], active [share], density [share of itself].
    """

    speed: float
    rate: float
    clock: float
    active: float
    density: float


@dataclass(frozen=True)
class Effect:
    """What one doubt does at the plate: movement across and up [m], time [s] and speed [m/s]."""

    cause: Cause
    across: float
    up: float
    time: float
    speed: float

    @property
    def amount(self) -> float:
        """How far it shifts the movement, whichever way [m]."""
        return math.hypot(self.across, self.up)


@dataclass(frozen=True)
class Thrown:
    """A pitch as a coach reads it, in its direction: position [m], velocity [m/s] and spin."""

    position: Vector[float]
    velocity: Vector[float]
    spin: Spin[float]
    conditions: Conditions

    @property
    def release(self) -> Release[float]:
        """The same pitch with its spin as a vector."""
        return Release(self.position, self.velocity, spin_vector(self.spin, self.velocity))

    @property
    def spin_ratio(self) -> float:
        """Radius x active spin / speed, at release."""
        return self.conditions.ball.radius * self.spin.rate * self.spin.active / length(self.velocity)


def crossings(pitch: Thrown) -> tuple[Moment[float], Moment[float]]:
    """Return how the pitch crosses the plate, and how its spinless companion does."""
    release = pitch.release
    return arrive(release, pitch.conditions), arrive(spinless(release), pitch.conditions)


def effects(pitch: Thrown, doubts: Doubts) -> tuple[Effect, ...]:
    """Return what each doubt does at the plate, largest shift of the movement first."""
    spin, conditions = pitch.spin, pitch.conditions
    less_or_more_active = doubts.active if spin.active + doubts.active <= 1 else -doubts.active
    faster = 1 + doubts.speed / length(pitch.velocity)
    stronger = Scaled(conditions.lift, 1 + spread(pitch.spin_ratio))
    changed: dict[Cause, Thrown] = {
        "speed": replace(pitch, velocity=times(pitch.velocity, faster)),
        "spin rate": replace(pitch, spin=replace(spin, rate=spin.rate + doubts.rate)),
        "clock": replace(pitch, spin=replace(spin, clock=spin.clock + doubts.clock)),
        "active share": replace(pitch, spin=replace(spin, active=spin.active + less_or_more_active)),
        "air": replace(
            pitch, conditions=replace(conditions, density=conditions.density * (1 + doubts.density))
        ),
        "ball": replace(pitch, conditions=replace(conditions, ball=LIVELIEST_BALL)),
        "lift": replace(pitch, conditions=replace(conditions, lift=stronger)),
        "drag": replace(pitch, conditions=replace(conditions, drag=conditions.drag + DRAG_SPREAD)),
    }
    plain, plain_companion = crossings(pitch)
    plain_movement = movement(plain, plain_companion)

    def effect(cause: Cause, other: Thrown) -> Effect:
        end, companion = crossings(other)
        moved = movement(end, companion)
        return Effect(
            cause,
            moved.across - plain_movement.across,
            moved.up - plain_movement.up,
            end.time - plain.time,
            speed(end) - speed(plain),
        )

    found = (effect(cause, other) for cause, other in changed.items())
    return tuple(sorted(found, key=lambda each: each.amount, reverse=True))


def together(shifts: Iterable[float]) -> float:
    """Return the size of independent shifts taken together [1]_."""
    return math.hypot(*shifts)

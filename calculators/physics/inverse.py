"""The way back: from what a pitch did to the spin that made it do so.

Only the active part of the spin can be found, for the idle part leaves no trace worth reading. What seams
added to the movement is taken for spin too; an active part larger than all of the spin is the sign of it, or
of a number that is off.

References
----------
[1] A. M. Nathan, note on finding the spin axis from a pitch's path, 2015, revised 2020.
[2] A. M. Nathan, Am. J. Phys. 76 (2008) 119: lift measured up to a spin ratio of 0.6.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any, Generic

from calculators.physics.aim import pitch_to
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Release, arrive
from calculators.physics.lift import MOST_SPIN_RATIO, STANDARD_LIFT, InvertibleFit
from calculators.physics.movement import Movement, spinless
from calculators.physics.path import SteadyPath, forces_along
from calculators.physics.quantity import TINY, N, greater, greatest, lesser, size
from calculators.physics.spin import Spin, spin_by_push, spin_from_vector
from calculators.physics.vectors import Vector, cross, length, unit

FOUND_WITHIN = 1e-5
"""How closely the spin found must bring the ball to the crossing asked for [m]."""

AIMED_WITHIN = 1e-7
"""How closely the direction found must do so [m]; aiming converges faster."""

MOST_TRIES = 100
CAUTION = 0.6
"""Share of a miss mended at once. Near the corner of the two-line fit movement may grow 2.5 times as fast
as lift, and mending all of a miss would swing past the mark."""


class SpinNotFoundError(ValueError):
    """No spin explains the movement; one of the numbers must be mended."""


@dataclass(frozen=True)
class FoundSpin(Generic[N]):
    """The active part of a spin.

    rate: active spin alone [rad/s]. clock: where it pushes, in hours. axis: its direction, length 1.
    spin_ratio: radius x rate / speed. capped: where the movement asks for more lift than was ever measured;
    the rate is then the least that could be.
    """

    rate: N
    clock: N
    axis: Vector[N]
    spin_ratio: N
    capped: Any

    def active_share(self, total: N) -> N:
        """Return the active share given all of the spin [rad/s].

        More than 1 cannot be: seams helped the spin, or one of the numbers is off.
        """
        return self.rate / total

    def beyond(self, fit: InvertibleFit) -> Any:
        """Return whether it lies beyond what the fit rests on."""
        return self.spin_ratio > fit.measured[1]


def spin_from_path(
    path: SteadyPath[N],
    release: float,
    conditions: Conditions = STILL_AIR,
    fit: InvertibleFit = STANDARD_LIFT,
) -> FoundSpin[N]:
    """Return the active spin behind a path of nine numbers [1]_.

    release: distance of the release from the plate's rear tip [m].
    """
    forces = forces_along(path, release, conditions)
    most = fit.coefficient(MOST_SPIN_RATIO)
    ratio = fit.spin_ratio(lesser(forces.lift, 0.0 * forces.lift + most))
    rate = ratio * length(forces.velocity) / conditions.ball.radius
    axis = cross(unit(forces.velocity), unit(forces.push))
    clock = spin_from_vector(axis, forces.velocity).clock
    return FoundSpin(rate, clock, axis, ratio, forces.lift > most)


def launch_toward(
    crossing: tuple[N, N],
    moved: Movement[N],
    position: Vector[N],
    speed: N,
    conditions: Conditions = STILL_AIR,
) -> Vector[N]:
    """Return the release velocity [m/s] from where a pitch started, where it crossed and how it moved.

    crossing: over the plate's front edge, toward the catcher's right and up [m]. moved: its movement.
    speed: at release [m/s]. Without its movement the ball would have crossed where its spinless companion
    does, so the direction is that of a spinless ball aimed there.
    Raises OutOfReachError where no direction does.
    """
    target = (crossing[0] - moved.across, crossing[1] - moved.up)
    no_spin = Spin(0.0 * speed, 0.0 * speed, 0.0 * speed + 1.0)
    return pitch_to(target, position, speed, no_spin, conditions, AIMED_WITHIN).start.velocity


def spin_from_crossing(
    crossing: tuple[N, N],
    position: Vector[N],
    velocity: Vector[N],
    total: N | None = None,
    bullet: N | float = 1.0,
    conditions: Conditions = STILL_AIR,
    fit: InvertibleFit = STANDARD_LIFT,
) -> FoundSpin[N]:
    """Return the active spin that carries a released ball to where it crossed the plate.

    crossing: over the plate's front edge, toward the catcher's right and up [m].
    position [m], velocity [m/s]: at release. total: all of the spin [rad/s], where it is known; what is not
    active is then bullet spin of the sense `bullet`, which pushes a little as the path bends.
    fit: the lift to read backward; the flights are flown with it.

    Raises SpinNotFoundError where no spin does it.

    Close to fully active, two spins may give the same crossing: a little less active with bullet spin that
    helps, or a little more without. Starting from little lift finds the less active one.
    Each try adds to the lift most of what the last one missed, as if movement were in proportion to lift, and
    half as much of it from then on wherever it swung past the mark.
    """
    air = replace(conditions, lift=fit)
    speed, distance = length(velocity), position[1] - PLATE_FRONT
    lift_per_metre = 2.0 / (distance * distance * air.air_grip)
    most = fit.coefficient(MOST_SPIN_RATIO)
    plain = arrive(spinless(Release(position, velocity, velocity)), air).position
    first = 0.5 * lift_per_metre
    nine, twelve = first * (crossing[0] - plain[0]), first * (crossing[1] - plain[2])
    mended, last_missed = CAUTION + 0.0 * speed, math.inf + 0.0 * speed
    for _ in range(MOST_TRIES):
        asked = (nine**2 + twelve**2) ** 0.5 + TINY
        lift = lesser(asked, 0.0 * asked + most)
        ratio = fit.spin_ratio(lift)
        rate = ratio * speed / air.ball.radius
        idle = 0.0 * rate if total is None else greater(total**2 - rate**2, 0.0 * rate) ** 0.5 * bullet
        vector = spin_by_push(nine / asked * rate, twelve / asked * rate, idle, velocity)
        end = arrive(Release(position, velocity, vector), air).position
        missed_nine, missed_twelve = crossing[0] - end[0], crossing[1] - end[2]
        missed = greater(size(missed_nine), size(missed_twelve))
        mended, last_missed = mended * (1.0 - 0.5 * (missed > last_missed)), missed
        nine = nine / asked * lift + mended * lift_per_metre * missed_nine
        twelve = twelve / asked * lift + mended * lift_per_metre * missed_twelve
        capped = (asked > most) & ((nine**2 + twelve**2) ** 0.5 > most)
        if greatest(missed * (1.0 - capped)) < FOUND_WITHIN:
            active = spin_by_push(nine, twelve, 0.0 * nine, velocity)
            return FoundSpin(rate, spin_from_vector(active, velocity).clock, unit(active), ratio, capped)
    raise SpinNotFoundError("no spin carries the ball there; check the crossing, the release and the speed")

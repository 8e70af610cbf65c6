"""The spin behind a movement, how sure it is, and which slip would explain one that cannot be.

References
----------
[1] A. M. Nathan, note on finding the spin axis from a pitch's path, 2015, revised 2020.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, get_args

from calculators.coaching.movement_counts import Count, whole_flight
from calculators.physics.aim import OutOfReachError
from calculators.physics.flight import Conditions
from calculators.physics.inverse import FoundSpin, SpinNotFoundError, launch_toward, spin_from_crossing
from calculators.physics.lift import MOST_SPIN_RATIO, STANDARD_LIFT, spread
from calculators.physics.movement import Movement
from calculators.physics.units import INCH, MPH
from calculators.physics.vectors import Vector

MOVEMENT_DOUBT = 1 * INCH
SPEED_DOUBT = 1 * MPH
"""How far a tracker's movement and speed may be off (estimate)."""

INCH_FOR_CENTIMETRE = 2.54
LIKELY_SHARE, MOST_SHARE = 0.15, 1.1
"""Active shares between which another reading is a likely mend of one that cannot be (estimate)."""

MOST_MOVEMENT = 32 * INCH
"""No pitch is moved farther by spin alone (estimate)."""


@dataclass(frozen=True)
class Crossed:
    """Where a pitch started and crossed: position [m], speed [m/s], crossing [m], and the air."""

    position: Vector[float]
    speed: float
    crossing: tuple[float, float]
    conditions: Conditions


def spin_behind(
    counted: Movement[float], how: Count, crossed: Crossed, total: float | None = None, bullet: float = 1.0
) -> tuple[Movement[float], FoundSpin[float]]:
    """Return movement over the whole flight and the active spin behind it, from movement however counted.

    total: all of the spin [rad/s], where known. bullet: sense of the bullet spin, as in Spin.
    Raises OutOfReachError or SpinNotFoundError where no pitch does that.
    """
    moved = whole_flight(counted, how, crossed.crossing, crossed.position, crossed.speed, crossed.conditions)
    velocity = launch_toward(crossed.crossing, moved, crossed.position, crossed.speed, crossed.conditions)
    found = spin_from_crossing(
        crossed.crossing, crossed.position, velocity, total, bullet, crossed.conditions
    )
    return moved, found


def likely(counted: Movement[float], how: Count, crossed: Crossed) -> bool:
    """Return whether movement counted this way would be one that pitches have."""
    try:
        moved = whole_flight(
            counted, how, crossed.crossing, crossed.position, crossed.speed, crossed.conditions
        )
    except OutOfReachError:
        return False
    return moved.amount <= MOST_MOVEMENT


@dataclass(frozen=True)
class RateDoubt:
    """What one doubt does to the active spin: which, and how far either way [share of it]."""

    cause: Literal["lift", "movement", "speed"]
    share: float


def rate_doubts(
    found: FoundSpin[float], moved: Movement[float], speed: float, movement_doubt: float = MOVEMENT_DOUBT
) -> tuple[RateDoubt, ...]:
    """Return the doubts about an active spin, largest first.

    speed: out of the hand [m/s]. movement_doubt: how far the movement may be off [m].
    Where the lift curve is flat, a little more movement asks for much more spin; each doubt is read off the
    curve, with movement in proportion to lift and hardly dependent on speed.
    """
    lift = STANDARD_LIFT.coefficient(found.spin_ratio)

    def more_spin(share: float) -> float:
        ratio = min(MOST_SPIN_RATIO, STANDARD_LIFT.spin_ratio(lift * (1 + share)))
        return ratio / found.spin_ratio - 1

    return tuple(
        sorted(
            (
                RateDoubt("lift", more_spin(spread(found.spin_ratio))),
                RateDoubt("movement", more_spin(movement_doubt / moved.amount)),
                RateDoubt("speed", SPEED_DOUBT / speed),
            ),
            key=lambda doubt: doubt.share,
            reverse=True,
        )
    )


Slip = Literal["centimeters", "whole", "forty", "gravity"]
"""centimeters: the movement was in centimeters. Others: it was counted that way."""


@dataclass(frozen=True)
class Mend:
    """A reading of the same numbers that fits the measured spin: the slip, and the active share it gives."""

    slip: Slip
    share: float


def mends(
    counted: Movement[float], how: Count, crossed: Crossed, total: float, inches: bool
) -> tuple[Mend, ...]:
    """Return the slips that would bring an active spin larger than `total` [rad/s] below it.

    inches: whether the movement was entered in inches, and may have been in centimeters.
    """
    readings: list[tuple[Slip, Movement[float], Count]] = []
    if inches:
        smaller = Movement(counted.across / INCH_FOR_CENTIMETRE, counted.up / INCH_FOR_CENTIMETRE)
        readings.append(("centimeters", smaller, how))
    readings += [(other, counted, other) for other in get_args(Count) if other != how]
    found = []
    for slip, movement, count in readings:
        if not likely(movement, count, crossed):
            continue
        try:
            _, spin = spin_behind(movement, count, crossed)
        except (OutOfReachError, SpinNotFoundError):
            continue
        share = spin.rate / total
        if LIKELY_SHARE <= share <= MOST_SHARE and not spin.capped:
            found.append(Mend(slip, min(1.0, share)))
    return tuple(found)

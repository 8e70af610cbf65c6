"""The same pitch thrown elsewhere: from another distance, or in other air.

References
----------
[1] A. T. Bahill, D. G. Baldwin, J. S. Ramberg, Int. J. Sports Sci. Eng. 3 (2009) 109: altitude is most
    of what makes air thicker or thinner for a ball; temperature counts less, humidity least.
"""

from __future__ import annotations

from dataclasses import dataclass

from calculators.physics.aim import pitch_to, thrown
from calculators.physics.flight import Conditions, Flight, arrive
from calculators.physics.movement import Movement, movement, spinless
from calculators.physics.spin import Spin
from calculators.physics.vectors import Vector


@dataclass(frozen=True)
class SamePitch:
    """A pitch that goes with its pitcher.

    extension: in front of the rubber, aside: toward the catcher's right, height: of the release [m].
    speed [m/s] and spin at release. ends: height at which it is to cross the plate [m].
    """

    extension: float
    aside: float
    height: float
    speed: float
    spin: Spin[float]
    ends: float


@dataclass(frozen=True)
class There:
    """How the pitch flies from one distance in one air: the flight, and what spin does to it."""

    mound: float
    flight: Flight[float]
    moved: Movement[float]


def from_distance(pitch: SamePitch, mound: float, conditions: Conditions) -> There:
    """Return how the pitch flies from a rubber `mound` metres from the plate's rear tip.

    Raises OutOfReachError (see aim) where it cannot get to the plate.
    """
    position: Vector[float] = (pitch.aside, mound - pitch.extension, pitch.height)
    flight = pitch_to((0.0, pitch.ends), position, pitch.speed, pitch.spin, conditions)
    plain = arrive(spinless(thrown(position, flight.start.velocity, pitch.spin)), conditions)
    return There(mound, flight, movement(flight.end, plain))

"""How far a shape moves, worked out from its speed, spin, clock and active share.

Starting from the middle of every range, one thing at a time goes to either end of its range: the arm
(fastball speed and spin together, because the faster arm also spins the ball more), the clock, and the
active share. What is printed is the least and the most that comes out, in whole inches. All extremes at
once would be a pitch that hardly anybody throws.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass

from build_tools.schema.shape import Level, Shape
from calculators.physics.aim import pitch_to
from calculators.physics.flight import Release, arrive
from calculators.physics.movement import Movement, movement, spinless
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.units import FOOT, INCH, MPH, RPM

Range = tuple[float, float]


@dataclass(frozen=True)
class Throw:
    """Where a level throws from: distance of the release from the plate's rear tip, and its height [m]."""

    distance: float
    height: float


MIDDLE_OF_ZONE = 2.5 * FOOT
THROWS = {
    "adult": Throw(54.5 * FOOT, 5.8 * FOOT),
    "high_school": Throw(55.0 * FOOT, 5.5 * FOOT),
    "twelve_and_under": Throw(41.5 * FOOT, 4.6 * FOOT),
}
"""Level to its throw: 60.5 ft for adults and high school, 46 ft for twelve and under, less the stride."""


@dataclass(frozen=True)
class ShapeNumbers:
    """What one level gets out of a shape.

    fastball, speed: miles per hour; spin: turns per minute.
    up: inches, ride positive and drop negative. glove_side: inches, arm side negative.
    """

    level: str
    target: bool
    fastball: Range
    speed: Range
    spin: Range
    up: Range
    glove_side: Range


@functools.lru_cache(maxsize=256)
def shape_numbers(shape: Shape) -> tuple[ShapeNumbers, ...]:
    """Return the numbers of a shape for adults, high school, and twelve and under."""
    return tuple(_at_level(shape, name, getattr(shape.levels, name)) for name in THROWS)


def _at_level(shape: Shape, name: str, level: Level) -> ShapeNumbers:
    speeds = _speeds(shape, level)
    first, middle, last = _hours(shape)
    usual = (0.5, middle, 0.5)
    ends = ((0.0, 1.0), (first, last), (0.0, 1.0))
    cases = [usual] + [
        (*usual[:part], end, *usual[part + 1 :]) for part, both in enumerate(ends) for end in both
    ]
    moved = [
        _movement(
            THROWS[name],
            along(speeds, arm),
            along(level.spin_rpm, arm),
            clock,
            along(shape.active_percent, active),
        )
        for arm, clock, active in cases
    ]
    return ShapeNumbers(
        level=name,
        target=not level.not_a_target,
        fastball=level.fastball_mph,
        speed=speeds,
        spin=level.spin_rpm,
        up=_whole([one.up / INCH for one in moved]),
        glove_side=_whole([one.across / INCH for one in moved]),
    )


def along(span: Range, share: float) -> float:
    """Return the value at `share` of the way from the first to the second end of a range."""
    return span[0] + (span[1] - span[0]) * share


def _speeds(shape: Shape, level: Level) -> Range:
    """The pitch's own speeds: the middle of its percent range, of the slow and of the fast fastball."""
    middle = sum(shape.speed_percent) / 200
    return (level.fastball_mph[0] * middle, level.fastball_mph[1] * middle)


def _hours(shape: Shape) -> tuple[float, float, float]:
    first, last = (hours(clock) for clock in shape.clock)
    return (first, hours(shape.clock_middle), last)


def hours(clock: str) -> float:
    """Return a clock time h:mm in hours, 0 to 12."""
    hour, minutes = clock.split(":")
    return int(hour) % 12 + int(minutes) / 60


def _movement(throw: Throw, mph: float, rpm: float, clock: float, active_percent: float) -> Movement[float]:
    spin = Spin(rpm * RPM, clock % 12, active_percent / 100)
    position = (0.0, throw.distance, throw.height)
    flight = pitch_to((0.0, MIDDLE_OF_ZONE), position, mph * MPH, spin)
    release = Release(position, flight.start.velocity, spin_vector(spin, flight.start.velocity))
    return movement(flight.end, arrive(spinless(release)))


def _whole(inches: list[float]) -> Range:
    return (float(math.floor(min(inches) + 0.5)), float(math.floor(max(inches) + 0.5)))

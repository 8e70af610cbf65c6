"""How far a ball inside a target box moves, from this mound and at this pitcher's speed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal

from calculators.coaching.box import Box
from calculators.coaching.clock_faces import read_band
from calculators.coaching.gap import right_handers
from calculators.coaching.target import USUAL_FASTBALL, Target
from calculators.physics.aim import OutOfReachError, pitch_to
from calculators.physics.flight import Release, arrive
from calculators.physics.movement import movement, spinless
from calculators.physics.spin import Spin, spin_vector
from calculators.physics.units import FOOT, INCH, MPH, RPM

Span = tuple[float, float]
Level = Literal["adult", "high_school", "twelve_and_under"]

OLDEST: tuple[tuple[int, Level], ...] = ((12, "twelve_and_under"), (18, "high_school"), (99, "adult"))

RELEASES: Mapping[Level, tuple[float, float]] = {
    "adult": (6.0, 5.8),
    "high_school": (5.5, 5.5),
    "twelve_and_under": (4.5, 4.6),
}
"""Extension and height of the release [ft] (estimate)."""

AIMED_AT = 2.5 * FOOT

NEAR_ENOUGH, STEPS = INCH, 5
"""How far from the mark a ball may cross [m], and in how many steps it is followed there.

The box is drawn to the inch: nine balls flown finely would move its edges by less than a tenth of that.
"""


@dataclass(frozen=True)
class MovementBox:
    """How far a ball in the box moves [m]: up (drop is negative) and to the glove side, from and to."""

    up: Span
    glove: Span

    def inches(self) -> MovementBox:
        """Return the same box in inches."""
        return MovementBox(
            (self.up[0] / INCH, self.up[1] / INCH), (self.glove[0] / INCH, self.glove[1] / INCH)
        )


def level_of(age: int) -> Level:
    """Return the level whose spin and release stand in for this age."""
    return next(level for oldest, level in OLDEST if age <= oldest)


def movement_box(target: Target, shape: Mapping[str, Any], mound: float) -> MovementBox | None:
    """Return how far balls inside the target's box move; None where such a ball does not get there.

    None for a first breaking ball too: it is judged by its spin and not by inches (common practice).
    shape: the target's, as plain data: it lends the spin of the level. mound: rubber to plate [ft].
    Speed, spin, clock and active share go to either end of their range one at a time, from the middle of all.
    """
    if target.role == "first-pitch":
        return None
    pitcher, box = target.pitcher, target.box
    level = level_of(pitcher.age)
    spin = shape["levels"][level]["spin_rpm"]
    fastball = pitcher.fastball or USUAL_FASTBALL
    ranges: tuple[Span, ...] = (
        (box.speed[0] * fastball / 100, box.speed[1] * fastball / 100),
        (float(spin[0]), float(spin[1])),
        _clocks(right_handers(box, pitcher), shape),
        box.active,
    )
    middle = tuple((low + high) / 2 for low, high in ranges)
    cases = [middle] + [
        (*middle[:part], end, *middle[part + 1 :]) for part, both in enumerate(ranges) for end in both
    ]
    try:
        moved = [_moved(case, mound, level) for case in cases]
    except OutOfReachError:
        return None
    ups, sides = [up for up, _ in moved], [side for _, side in moved]
    return MovementBox((min(ups), max(ups)), (min(sides), max(sides)))


def _clocks(box: Box, shape: Mapping[str, Any]) -> Span:
    """Return the clocks of a right-hander's box as numbers in order; of a bullet ball, the shape's own."""
    band = box.clock or read_band(shape["clock"])
    return (band.start, band.start + 2 * band.half_width)


def _moved(case: tuple[float, ...], mound: float, level: Level) -> Span:
    """Return how far a right-hander's ball moves up and to the glove side [m]."""
    mph, rpm, clock, active = case
    extension, height = RELEASES[level]
    position = (0.0, (mound - extension) * FOOT, height * FOOT)
    spin = Spin(rpm * RPM, clock % 12, active / 100)
    flight = pitch_to((0.0, AIMED_AT), position, mph * MPH, spin, tolerance=NEAR_ENOUGH, steps=STEPS)
    release = Release(position, flight.start.velocity, spin_vector(spin, flight.start.velocity))
    found = movement(flight.end, arrive(spinless(release), steps=STEPS))
    return found.up, found.across

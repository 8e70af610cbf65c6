"""Two pitches side by side: how much later, how far apart and when, and what would move them apart.

Two views are kept apart. As aimed: each pitch is thrown to the place where it is meant to cross the plate,
so the slower one starts higher. From one line: both leave the hand in the direction of the fastball, so
that what is between them at the plate is the whole difference of spin, speed and gravity. This is geometry
and no judgement of how well a pitch works.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Literal, get_args

from calculators.coaching.clock_faces import hours_apart, turned
from calculators.physics.aim import pitch_to, thrown
from calculators.physics.flight import STILL_AIR, Conditions, Flight, Moment, Release, arrive, fly
from calculators.physics.lift import Scaled, spread
from calculators.physics.spin import Spin
from calculators.physics.units import MPH, RPM
from calculators.physics.vectors import Vector, length, minus, times, unit

MERGE_HOURS = 1.0
MERGE_SPEED = 4 * MPH
"""Two breaking balls this near to each other on the clock and in speed run into one (common practice)."""

LADDER_STEP = 0.04
"""Neighbours on the speed ladder should differ by at least this share of the faster (common practice)."""

HUMP_SHARE = 1 / 3
"""Where the hump is measured: this share of the way from the hand to the plate."""


@dataclass(frozen=True)
class Pitch:
    """A pitch as it leaves the hand, whatever its direction: `speed` [m/s] and spin."""

    speed: float
    spin: Spin[float]


@dataclass(frozen=True)
class Setting:
    """Where both pitches leave the hand [m], and the air they fly through."""

    hand: Vector[float]
    conditions: Conditions = STILL_AIR


@dataclass(frozen=True)
class Apart:
    """How far one ball is from another [m]: `across` to the catcher's right, `up`, `behind` along the way."""

    across: float
    up: float
    behind: float

    @property
    def off_line(self) -> float:
        """Distance between their lines, the way along not counted [m]."""
        return math.hypot(self.across, self.up)


@dataclass(frozen=True)
class Pair:
    """The flights of two pitches; `second` is compared with `first`, as a curve with the fastball."""

    first: Flight[float]
    second: Flight[float]

    @property
    def later(self) -> float:
        """How much later than the first the second reaches the plate, from release to release [s]."""
        return self.second.end.time - self.first.end.time

    def at_time(self, time: float) -> Apart:
        """Return how far apart they are `time` seconds after release."""
        return _apart(place_at_time(self.first, time), place_at_time(self.second, time))

    def at_plate(self) -> Apart:
        """Return how far apart they cross the front of the plate."""
        return _apart(self.first.end.position, self.second.end.position)

    def hump(self, share: float = HUMP_SHARE) -> float:
        """Return how far the second is above the path of the first after a share of the way [m]."""
        start, end = self.first.start.position[1], self.first.end.position[1]
        y = start + share * (end - start)
        return place_at_distance(self.second, y)[2] - place_at_distance(self.first, y)[2]


def aimed(pitch: Pitch, target: tuple[float, float], setting: Setting) -> Flight[float]:
    """Return the flight that crosses the plate at the target: toward the catcher's right and up [m].

    Raises OutOfReachError (see aim) where the ball cannot get there.
    """
    return pitch_to(target, setting.hand, pitch.speed, pitch.spin, setting.conditions)


def on_line_of(flight: Flight[float], pitch: Pitch, setting: Setting) -> Flight[float]:
    """Return the flight of a pitch that leaves the hand in the same direction as another flight."""
    return fly(_released(pitch, flight.start.velocity, setting), setting.conditions)


@dataclass(frozen=True)
class Split:
    """What is between two pitches that leave the hand on one line.

    later: of the second at the plate [s]. lower: how far below the first it crosses [m].
    across: how far toward the catcher's right of the first [m].
    """

    later: float
    lower: float
    across: float

    @property
    def apart(self) -> float:
        """Distance between the two crossings [m]."""
        return math.hypot(self.lower, self.across)


def split(first: Moment[float], second: Moment[float]) -> Split:
    """Return what is between two pitches from the moments in which they cross the plate."""
    (x1, _, z1), (x2, _, z2) = first.position, second.position
    return Split(second.time - first.time, z1 - z2, x2 - x1)


def crossing(pitch: Pitch, line: Vector[float], setting: Setting) -> Moment[float]:
    """Return the moment in which a pitch that leaves the hand along `line` crosses the plate."""
    return arrive(_released(pitch, line, setting), setting.conditions)


Part = Literal["speed", "rate", "clock", "active"]
SPEED_STEP = 1 * MPH
RATE_STEP = 100 * RPM
CLOCK_STEP = 0.25
ACTIVE_STEP = 0.05


def changed(pitch: Pitch, part: Part, right_handed: bool) -> Pitch:
    """Return the pitch with one part changed by its step: 1 mph, 100 rpm, 15 minutes or 5 points of share.

    The clock turns later for a right-hander and earlier for a left-hander. An active share that cannot rise
    by its step falls by it.
    """
    spin = pitch.spin
    if part == "speed":
        return replace(pitch, speed=pitch.speed + SPEED_STEP)
    if part == "rate":
        return replace(pitch, spin=replace(spin, rate=spin.rate + RATE_STEP))
    if part == "clock":
        step = CLOCK_STEP if right_handed else -CLOCK_STEP
        return replace(pitch, spin=replace(spin, clock=turned(spin.clock, step)))
    step = ACTIVE_STEP if spin.active + ACTIVE_STEP <= 1 else -ACTIVE_STEP
    return replace(pitch, spin=replace(spin, active=spin.active + step))


@dataclass(frozen=True)
class Pull:
    """What one change does: the pitch it makes, the split it leads to, and by how much they part [m]."""

    part: Part
    pitch: Pitch
    split: Split
    apart: float


def pulls(
    first: Pitch, second: Pitch, line: Vector[float], setting: Setting, right_handed: bool
) -> tuple[Split, tuple[Pull, ...]]:
    """Return the split of two pitches from one line, and what each change of the second does to it.

    The change that moves the two farthest, apart or together, comes first.
    """
    there = crossing(first, line, setting)
    now = split(there, crossing(second, line, setting))

    def pull(part: Part) -> Pull:
        other = changed(second, part, right_handed)
        then = split(there, crossing(other, line, setting))
        return Pull(part, other, then, then.apart - now.apart)

    found = (pull(part) for part in get_args(Part))
    return now, tuple(sorted(found, key=lambda each: abs(each.apart), reverse=True))


@dataclass(frozen=True)
class Doubt:
    """What one uncertain number does: of which pitch, which number, and how far the two part by it [m]."""

    which: Literal["first", "second"]
    cause: Part | Literal["lift"]
    apart: float


def doubts(
    first: Pitch, second: Pitch, line: Vector[float], setting: Setting, right_handed: bool
) -> tuple[Doubt, ...]:
    """Return what each number of two pitches from one line does if it is off by its step, largest first.

    The lift is off by the spread of the published fits at the pitch's spin.
    """
    here, there = crossing(first, line, setting), crossing(second, line, setting)
    now = split(here, there).apart
    found: list[Doubt] = []
    for part in get_args(Part):
        other_first = crossing(changed(first, part, right_handed), line, setting)
        other_second = crossing(changed(second, part, right_handed), line, setting)
        found.append(Doubt("first", part, split(other_first, there).apart - now))
        found.append(Doubt("second", part, split(here, other_second).apart - now))
    found.append(Doubt("first", "lift", split(_pushed_harder(first, line, setting), there).apart - now))
    found.append(Doubt("second", "lift", split(here, _pushed_harder(second, line, setting)).apart - now))
    return tuple(sorted(found, key=lambda each: abs(each.apart), reverse=True))


def merge(first_clock: float, first_speed: float, second_clock: float, second_speed: float) -> bool:
    """Return whether two breaking balls are so alike that they run into one (common practice).

    clocks in hours, speeds in m/s.
    """
    near_in_speed = abs(first_speed - second_speed) <= MERGE_SPEED + 1e-9
    return near_in_speed and hours_apart(first_clock, second_clock) <= MERGE_HOURS + 1e-9


def too_close_in_speed(faster: float, slower: float) -> bool:
    """Return whether two neighbours on the speed ladder are too near to be two speeds (common practice)."""
    return faster - slower < LADDER_STEP * faster


def place_at_time(flight: Flight[float], time: float) -> Vector[float]:
    """Return where the ball is `time` seconds after release [m]; at the plate from its arrival on."""
    moments = flight.moments
    if time >= flight.end.time:
        return flight.end.position
    after = next(index for index, moment in enumerate(moments) if moment.time > time)
    here, there = moments[after - 1], moments[after]
    span = there.time - here.time
    share = (time - here.time) / span
    return _between(
        here.position, times(here.velocity, span), there.position, times(there.velocity, span), share
    )


def place_at_distance(flight: Flight[float], y: float) -> Vector[float]:
    """Return where the ball crosses the plane `y` metres in front of the plate's rear tip."""
    moments = flight.moments
    after = next((i for i, moment in enumerate(moments) if i and moment.position[1] <= y), len(moments) - 1)
    here, there = moments[after - 1], moments[after]
    span = there.position[1] - here.position[1]
    share = (y - here.position[1]) / span
    leaving = times(here.velocity, span / here.velocity[1])
    arriving = times(there.velocity, span / there.velocity[1])
    return _between(here.position, leaving, there.position, arriving, share)


def angle_apart(first: Flight[float], second: Flight[float]) -> float:
    """Return the angle between the directions in which two pitches leave the hand [rad]."""
    a, b = unit(first.start.velocity), unit(second.start.velocity)
    return 2 * math.asin(min(1.0, length(minus(a, b)) / 2))


def _released(pitch: Pitch, line: Vector[float], setting: Setting) -> Release[float]:
    return thrown(setting.hand, times(unit(line), pitch.speed), pitch.spin)


def _pushed_harder(pitch: Pitch, line: Vector[float], setting: Setting) -> Moment[float]:
    conditions = setting.conditions
    ratio = conditions.ball.radius * pitch.spin.rate * pitch.spin.active / pitch.speed
    stronger = replace(conditions, lift=Scaled(conditions.lift, 1 + spread(ratio)))
    return crossing(pitch, line, replace(setting, conditions=stronger))


def _between(
    start: Vector[float], leaving: Vector[float], end: Vector[float], arriving: Vector[float], share: float
) -> Vector[float]:
    """Return the point at a share of the way on the cubic with these ends and slopes (Hermite)."""
    s, t = share, 1 - share

    def on(axis: int) -> float:
        ends = t * t * (1 + 2 * s) * start[axis] + s * s * (1 + 2 * t) * end[axis]
        return ends + s * t * (t * leaving[axis] - s * arriving[axis])

    return (on(0), on(1), on(2))


def _apart(first: Vector[float], second: Vector[float]) -> Apart:
    across, behind, up = minus(second, first)
    return Apart(across, up, behind)

"""Two other ways to say what a pitch did: where it left and crossed, or the nine numbers of its path."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from typing import cast

from calculators.coaching.found_spin import MOVEMENT_DOUBT, Crossed
from calculators.desk.fields import Choice, ChoiceField, Field, NumberField, Problem, TextField, Values
from calculators.physics.aim import launch_velocity
from calculators.physics.flight import PLATE_FRONT, Conditions, Release, arrive
from calculators.physics.inverse import FoundSpin, spin_from_crossing, spin_from_path
from calculators.physics.movement import Movement, movement, spinless
from calculators.physics.path import SteadyPath, forces_along, steady_movement
from calculators.physics.units import DEGREE, FOOT, INCH, MPH
from calculators.physics.vectors import Vector, length
from calculators.words import Message, number, say

CROSSING_NAMES = ("angle_up", "angle_side", "cross_side")
PATH_NAMES = ("nine",)

ANGLE_DOUBT = 0.2 * DEGREE
"""How far a tracker's release angle may be off (estimate)."""

NUMBERS = ("x0", "y0", "z0", "vx", "vy", "vz", "ax", "ay", "az")
LIMITS = (
    *((-10, 10), (17 / 12, 65), (0, 12)),
    *((-40, 40), (-165, -40), (-40, 40)),
    *((-60, 60), (0, 60), (-80, 20)),
)
"""What the nine numbers of a pitch may be [ft, ft/s, ft/s2]: outside, a unit or the order is off (estimate)."""


@dataclass(frozen=True)
class TypedCrossing:
    """A pitch told by where it left, in which direction, and where it crossed.

    glove: +1 where the pitcher's glove side is the catcher's right, else -1. total: all of the spin [rad/s],
    if measured. velocity: at release [m/s].
    """

    glove: int
    total: float | None
    crossed: Crossed
    velocity: Vector[float]

    @property
    def speed(self) -> float:
        """Speed out of the hand [m/s]."""
        return self.crossed.speed

    @property
    def doubt(self) -> float:
        """How far the movement may be off [m]: the direction's doubt grows with the distance."""
        return math.hypot(MOVEMENT_DOUBT, ANGLE_DOUBT * (self.crossed.position[1] - PLATE_FRONT))

    def behind(self) -> tuple[Movement[float], FoundSpin[float]]:
        """Return the movement by spin alone, over the whole flight, and the active spin behind it.

        Raises SpinNotFoundError where no pitch does that.
        """
        crossed, velocity = self.crossed, self.velocity
        found = spin_from_crossing(
            crossed.crossing, crossed.position, velocity, self.total, float(self.glove), crossed.conditions
        )
        plain = arrive(spinless(Release(crossed.position, velocity, velocity)), crossed.conditions)
        at = plain.position
        here = plain._replace(position=(crossed.crossing[0], at[1], crossed.crossing[1]))
        return movement(here, plain), found


@dataclass(frozen=True)
class TypedPath:
    """A pitch told by the nine numbers of its path; release: its distance from the plate's rear tip [m]."""

    glove: int
    total: float | None
    path: SteadyPath[float]
    release: float
    conditions: Conditions
    doubt: float = MOVEMENT_DOUBT

    @property
    def speed(self) -> float:
        """Speed out of the hand [m/s]."""
        return length(self.path.moment_at(self.release).velocity)

    @property
    def reads_as(self) -> Message:
        """What the path says in plain numbers, so that a reader sees whether it was read rightly."""
        end = self.path.moment_at(PLATE_FRONT)
        return say(
            "On this path the ball left the hand at {fast} mph and crossed at {slow} mph, {height} in up.",
            fast=number(self.speed / MPH, 1),
            slow=number(length(end.velocity) / MPH, 1),
            height=number(end.position[2] / INCH),
        )

    def behind(self) -> tuple[Movement[float], FoundSpin[float]]:
        """Return the movement by spin alone, over the whole flight, and the active spin behind it."""
        forces = forces_along(self.path, self.release, self.conditions)
        found = spin_from_path(self.path, self.release, self.conditions)
        return steady_movement(self.path, forces, self.release), found


def way_field() -> Field:
    """Return the question what the reader has."""
    return ChoiceField(
        "way",
        say("What you have"),
        (
            Choice("movement", say("How far it moved")),
            Choice("crossing", say("Where it left and crossed")),
            Choice("path", say("Nine numbers of its path")),
        ),
    )


def way_fields() -> tuple[Field, ...]:
    """Return the questions for those who have no movement."""
    return (
        NumberField(
            "angle_up",
            say("Direction out of the hand, up"),
            "°",
            -20,
            30,
            (-4, 4),
            1,
            optional=True,
            help=say("Above level. Minus is down."),
        ),
        NumberField(
            "angle_side",
            say("Direction out of the hand, to the glove side"),
            "°",
            -15,
            15,
            (-4, 4),
            1,
            optional=True,
            help=say("From a line straight to the plate. Minus is to the arm side."),
        ),
        NumberField(
            "cross_side",
            say("Where it crosses, to the glove side of the middle"),
            "in",
            -60,
            60,
            (-12, 12),
            optional=True,
            help=say("Minus is the arm side. Give the height below, under where it crosses the plate."),
        ),
        TextField(
            "nine",
            say("Nine numbers"),
            longest=200,
            private=False,
            help=say(
                "Place, speed and push, in feet and seconds: x0 y0 z0 vx vy vz ax ay az. x is to the "
                "catcher's right, y toward the pitcher, z up. Speed and place of release come from them."
            ),
        ),
    )


def read_crossing(
    values: Values, glove: int, total: float | None, crossed: Crossed
) -> TypedCrossing | tuple[Problem, ...]:
    """Return the pitch told by where it left and crossed, or what is still to be entered.

    crossed: release, speed, height of the crossing and air, as typed.
    """
    blank = tuple(name for name in (*CROSSING_NAMES, "aim") if values[name] is None)
    if blank:
        return tuple(Problem(name, say("Enter a number. This way of telling needs it.")) for name in blank)
    up, side, across = (cast(float, values[name]) for name in CROSSING_NAMES)
    velocity = launch_velocity(crossed.speed, up * DEGREE, glove * side * DEGREE)
    there = replace(crossed, crossing=(glove * across * INCH, crossed.crossing[1]))
    return TypedCrossing(glove, total, there, velocity)


def read_path(
    values: Values, glove: int, total: float | None, crossed: Crossed
) -> TypedPath | tuple[Problem, ...]:
    """Return the pitch told by nine numbers, or what is wrong with them.

    crossed: the distance of the release and the air, as typed.
    """
    numbers = _numbers(str(values["nine"] or ""))
    if isinstance(numbers, Message):
        return (Problem("nine", numbers),)
    x, y, z, vx, vy, vz, ax, ay, az = (each * FOOT for each in numbers)
    path = SteadyPath((x, y, z), (vx, vy, vz), (ax, ay, az))
    return TypedPath(glove, total, path, crossed.position[1], crossed.conditions)


def _numbers(text: str) -> tuple[float, ...] | Message:
    """Return the nine numbers in feet and seconds, or the message that mends."""
    parts = re.split(r"[\s,;]+", text.strip().replace("\u2212", "-"))
    if len(parts) != len(NUMBERS):
        return say(
            "Write nine numbers with spaces between them; you entered {count}.",
            count=str(len(parts) if text.strip() else 0),
        )
    found = []
    for name, part, (low, high) in zip(NUMBERS, parts, LIMITS, strict=True):
        if not re.fullmatch(r"[+-]?(\d+\.?\d*|\.\d+)", part):
            return say("{name} is not a number. Use digits and a point, like -115.7.", name=name)
        value = float(part)
        if not low <= value <= high:
            return say(
                "{name} is {low} to {high} for a pitch; you entered {entered}. Check the order, the signs "
                "and that all are in feet and seconds.",
                name=name,
                low=number(low),
                high=number(high),
                entered=part[:12],
            )
        found.append(value)
    return tuple(found)

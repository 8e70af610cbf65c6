"""The questions about what a pitch did, and what is read from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast

from calculators.coaching.found_spin import MOVEMENT_DOUBT, Crossed, spin_behind
from calculators.coaching.movement_counts import Count
from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.break_to_spin_ways import (
    CROSSING_NAMES,
    PATH_NAMES,
    TypedCrossing,
    TypedPath,
    read_crossing,
    read_path,
    way_field,
    way_fields,
)
from calculators.desk.fields import Choice, ChoiceField, Field, NumberField, Problem, Raw, Values
from calculators.desk.pitch_fields import BATTERS, EXAMPLE_PITCH, pitch_fields
from calculators.physics.air import density_at
from calculators.physics.flight import Conditions
from calculators.physics.inverse import FoundSpin
from calculators.physics.movement import Movement
from calculators.physics.units import CENTIMETRE, FOOT, INCH, MPH, RPM, celsius
from calculators.words import number, say

SHARED = ("release_height", "release_side", "extension", "mound", "altitude", "temperature", "humidity")


@dataclass(frozen=True)
class TypedBreak:
    """What a pitch did, as entered.

    glove: +1 where the pitcher's glove side is the catcher's right (a right-hander), else -1.
    counted: the movement as it was counted [m]. total: all of the spin [rad/s], if measured.
    inches: whether it was entered in inches. doubt: how far the movement may be off [m].
    """

    glove: int
    counted: Movement[float]
    how: Count
    total: float | None
    crossed: Crossed
    inches: bool
    doubt: float = MOVEMENT_DOUBT

    @property
    def speed(self) -> float:
        """Speed out of the hand [m/s]."""
        return self.crossed.speed

    def behind(self) -> tuple[Movement[float], FoundSpin[float]]:
        """Return the movement by spin alone, over the whole flight, and the active spin behind it.

        Raises OutOfReachError or SpinNotFoundError where no pitch does that.
        """
        return spin_behind(self.counted, self.how, self.crossed, self.total, bullet=float(self.glove))


Typed = TypedBreak | TypedCrossing | TypedPath
"""A pitch, in whichever way it was told."""


def break_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order."""
    shared = {field.name: field for field in pitch_fields(shelf)}
    return (
        shared["hand"],
        way_field(),
        shared["speed"],
        NumberField(
            "up",
            say("Movement up or down"),
            "in or cm",
            -200,
            120,
            (-20, 20),
            1,
            optional=True,
            help=say("Minus is down."),
        ),
        NumberField("side", say("Movement to the side"), "in or cm", -120, 120, (-20, 20), 1, optional=True),
        ChoiceField(
            "toward",
            say("Plus to the side means"),
            (
                Choice("glove", say("the glove side")),
                Choice("catcher", say("the catcher's right")),
                Choice("pitcher", say("the pitcher's right")),
            ),
        ),
        ChoiceField(
            "movement_unit",
            say("Movement is in"),
            (Choice("in", say("inches")), Choice("cm", say("centimeters"))),
        ),
        ChoiceField(
            "how",
            say("How it was counted"),
            (
                Choice("whole", say("By spin alone, over the whole flight")),
                Choice("forty", say("By spin alone, over the last 40 feet")),
                Choice("gravity", say("With gravity, below the line it starts on")),
            ),
            help=say("Your tracker's manual says which. The counts differ by half and more."),
        ),
        NumberField(
            "total_spin",
            say("All of the spin"),
            "rpm",
            100,
            4000,
            (1200, 2800),
            optional=True,
            help=say("If measured. With it the active share can be found."),
        ),
        *way_fields(),
        *(shared[name] for name in SHARED),
        shared["batter"],
        shared["aim"],
        shared["units"],
    )


BREAK_GROUPS = (
    FieldGroup(say("How the movement is written"), ("toward", "movement_unit", "how")),
    FieldGroup(say("In place of movement: where it left and crossed"), CROSSING_NAMES, open=False),
    FieldGroup(say("In place of movement: nine numbers"), PATH_NAMES, open=False),
    FieldGroup(say("Where it leaves the hand"), SHARED[:3], open=False),
    FieldGroup(say("Field and air"), SHARED[3:], open=False),
    FieldGroup(say("Where it crosses the plate"), ("batter", "aim"), open=False),
    FieldGroup(say("How to answer"), ("units",), open=False),
)

EXAMPLE_BREAK: Raw = {
    **EXAMPLE_PITCH,
    "way": "movement",
    "up": "-16",
    "side": "10",
    "toward": "glove",
    "movement_unit": "in",
    "how": "whole",
    "total_spin": "2050",
}
"""A high-school curve as a tracker might report it."""


def read_break(values: Values) -> Typed | tuple[Problem, ...]:
    """Return what the fields describe, or the problems that involve several of them."""
    glove = -1 if values["hand"] == "left" else 1
    crossed = _crossed(values, glove)
    total = cast("float | None", values["total_spin"])
    total = None if total is None else total * RPM
    if values["way"] == "crossing":
        return read_crossing(values, glove, total, crossed)
    if values["way"] == "path":
        return read_path(values, glove, total, crossed)
    blank = tuple(name for name in ("up", "side") if values[name] is None)
    if blank:
        return tuple(Problem(name, say("Enter a number.")) for name in blank)
    up, side = (cast(float, values[name]) for name in ("up", "side"))
    unit = CENTIMETRE if values["movement_unit"] == "cm" else INCH
    to_the_right: Mapping[str, int] = {"glove": glove, "catcher": 1, "pitcher": -1}
    counted = Movement(to_the_right[str(values["toward"])] * side * unit, up * unit)
    how = cast(Count, values["how"])
    if how == "gravity" and counted.up >= 0:
        message = say(
            "With gravity every pitch falls: enter a minus number, or choose a count by spin alone. "
            "You entered {entered}.",
            entered=number(up, 1),
        )
        return (Problem("up", message), Problem("how", message))
    return TypedBreak(glove, counted, how, total, crossed, values["movement_unit"] == "in")


def _crossed(values: Values, glove: int) -> Crossed:
    def entered(name: str) -> float:
        return cast(float, values[name])

    air = density_at(entered("altitude") * FOOT, celsius(entered("temperature")), entered("humidity") / 100)
    position = (
        -glove * entered("release_side") * FOOT,
        (float(str(values["mound"])) - entered("extension")) * FOOT,
        entered("release_height") * FOOT,
    )
    height = BATTERS[str(values["batter"])].middle if values["aim"] is None else entered("aim") * INCH
    return Crossed(position, entered("speed") * MPH, (0.0, height), Conditions(density=air))

"""The questions that describe one pitch, and the pitch read from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast

from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.fields import Choice, ChoiceField, ClockField, Field, NumberField, Problem, Values
from calculators.desk.flight_figures import Zone
from calculators.desk.measures import units_field
from calculators.desk.mounds import mound_field
from calculators.physics.aim import OutOfReachError, pitch_to
from calculators.physics.air import density_at
from calculators.physics.doubt import Doubts, Thrown
from calculators.physics.flight import Conditions, Flight
from calculators.physics.spin import Spin, active_share
from calculators.physics.units import DEGREE, FOOT, INCH, MPH, RPM, celsius
from calculators.words import number, say

BATTERS: Mapping[str, Zone] = {
    "small": Zone(15 * INCH, 30 * INCH),
    "middle": Zone(17 * INCH, 34 * INCH),
    "tall": Zone(19 * INCH, 38 * INCH),
}
"""Strike zones from 0.27 to 0.53 of the batter's height (estimate)."""

MEASURED: Mapping[str, Doubts] = {
    "tracking": Doubts(1 * MPH, 100 * RPM, 10 / 60, 0.05, 0.02),
    "phone": Doubts(1 * MPH, 150 * RPM, 25 / 60, 0.20, 0.02),
    "eye": Doubts(3 * MPH, 300 * RPM, 45 / 60, 0.25, 0.02),
}
"""How far each way of measuring may be off (estimate)."""


@dataclass(frozen=True)
class TypedPitch:
    """A pitch as entered, aimed at the plate.

    glove: +1 where the pitcher's glove side is the catcher's right (a right-hander), -1 where it is the
    left. mound: distance of the rubber from the plate's rear tip [m].
    """

    glove: int
    mound: float
    thrown: Thrown
    flight: Flight[float]
    zone: Zone
    doubts: Doubts


def pitch_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order."""
    return (
        ChoiceField("hand", say("Throws"), (Choice("right", say("Right")), Choice("left", say("Left")))),
        NumberField("speed", say("Speed out of the hand"), "mph", 30, 105, (50, 90), 1),
        NumberField("spin", say("Spin"), "rpm", 0, 3600, (1200, 2800)),
        ClockField(
            "clock",
            say("Clock"),
            help=say("Where spin pushes the ball, seen from behind the pitcher. Straight down is 6:00."),
        ),
        ChoiceField(
            "active_as",
            say("How much of the spin moves the ball"),
            (Choice("share", say("Active share in %")), Choice("angle", say("Gyro angle in degrees"))),
        ),
        NumberField("active", say("Active share or gyro angle"), "% / °", 0, 100, (40, 95)),
        ChoiceField(
            "measured",
            say("Where the numbers come from"),
            (
                Choice("tracking", say("A ball tracker")),
                Choice("phone", say("Radar and phone video")),
                Choice("eye", say("A guess by eye")),
            ),
            help=say("This sets how sure the answer is."),
        ),
        NumberField("release_height", say("Height of release"), "ft", 0.5, 8, (4, 6.5), 1),
        NumberField(
            "release_side",
            say("Release to the arm side of the middle"),
            "ft",
            -4,
            5,
            (0.5, 3),
            1,
            help=say("A minus sign puts it on the glove side."),
        ),
        NumberField(
            "extension",
            say("Extension"),
            "ft",
            0,
            9,
            (4, 7),
            1,
            help=say("How far in front of the rubber the ball leaves the hand."),
        ),
        mound_field(shelf),
        NumberField("altitude", say("Height above the sea"), "ft", -300, 12000, (0, 6000)),
        NumberField("temperature", say("Temperature"), "°F", 10, 125, (45, 95)),
        NumberField("humidity", say("Humidity"), "%", 0, 100, (20, 90), help=say("It hardly matters.")),
        ChoiceField(
            "batter",
            say("Batter"),
            (
                Choice("small", say("About 4 ft 8 in")),
                Choice("middle", say("About 5 ft 4 in")),
                Choice("tall", say("About 6 ft")),
            ),
        ),
        NumberField(
            "aim",
            say("Height where it crosses the plate"),
            "in",
            2,
            80,
            (12, 40),
            optional=True,
            help=say("Leave it blank for the middle of the zone."),
        ),
        units_field(),
    )


PITCH_GROUPS = (
    FieldGroup(say("Where it leaves the hand"), ("release_height", "release_side", "extension"), open=False),
    FieldGroup(say("Field and air"), ("mound", "altitude", "temperature", "humidity"), open=False),
    FieldGroup(say("Where it crosses the plate"), ("batter", "aim"), open=False),
    FieldGroup(say("How to answer"), ("units",), open=False),
)

EXAMPLE_PITCH: Mapping[str, str] = {
    "hand": "right",
    "speed": "68",
    "spin": "2050",
    "clock": "7:00",
    "active_as": "share",
    "active": "75",
    "measured": "tracking",
    "release_height": "5.6",
    "release_side": "1.5",
    "extension": "5.5",
    "mound": "60.5",
    "altitude": "300",
    "temperature": "70",
    "humidity": "50",
    "batter": "tall",
    "aim": "",
    "units": "imperial",
}
"""A high-school curve, thrown right-handed."""


def read_pitch(values: Values) -> TypedPitch | tuple[Problem, ...]:
    """Return the pitch the fields describe, or the problem that involves several of them."""

    def entered(name: str) -> float:
        return cast(float, values[name])

    if values["active_as"] == "angle" and entered("active") > 90:
        message = say(
            "A gyro angle goes from 0 to 90 degrees; you entered {entered}. "
            "Enter a smaller angle, or choose active share in %.",
            entered=number(entered("active")),
        )
        return (Problem("active", message),)
    glove = -1 if values["hand"] == "left" else 1
    mound = float(str(values["mound"])) * FOOT
    zone = BATTERS[str(values["batter"])]
    share = entered("active") / 100
    if values["active_as"] == "angle":
        share = active_share(entered("active") * DEGREE)
    spin = Spin(entered("spin") * RPM, entered("clock"), share, float(glove))
    position = (
        -glove * entered("release_side") * FOOT,
        mound - entered("extension") * FOOT,
        entered("release_height") * FOOT,
    )
    air = density_at(entered("altitude") * FOOT, celsius(entered("temperature")), entered("humidity") / 100)
    conditions = Conditions(density=air)
    height = zone.middle if values["aim"] is None else entered("aim") * INCH
    try:
        flight = pitch_to((0.0, height), position, entered("speed") * MPH, spin, conditions)
    except OutOfReachError:
        message = say(
            "At {speed} mph the ball does not get to the plate from {feet} ft. "
            "Enter more speed, or a shorter distance from rubber to plate.",
            speed=number(entered("speed")),
            feet=str(values["mound"]),
        )
        return (Problem("speed", message),)
    thrown = Thrown(position, flight.start.velocity, spin, conditions)
    return TypedPitch(glove, mound, thrown, flight, zone, MEASURED[str(values["measured"])])

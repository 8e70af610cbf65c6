"""The questions about two pitches, and the pair read from them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast

from calculators.coaching.batting import SWING_TIME
from calculators.coaching.pairing import Pair, Pitch, Setting, aimed, on_line_of
from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.fields import (
    Choice,
    ChoiceField,
    ClockField,
    Field,
    NumberField,
    Problem,
    Raw,
    RowsField,
    Value,
    Values,
)
from calculators.desk.flight_figures import Zone
from calculators.desk.pitch_fields import BATTERS, pitch_fields
from calculators.physics.aim import OutOfReachError
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, INCH, MPH, RPM
from calculators.words import Message, number, say

BELOW_THE_ZONE = 5 * INCH
"""How far under the zone a chase pitch ends here: about the shoe tops (estimate)."""

ANSWERED_ELSEWHERE = ("release_height", "release_side", "extension", "mound", "batter", "units")


@dataclass(frozen=True)
class OtherPitch:
    """One more pitch of the arsenal: what it is, its speed [m/s] and its clock where known [hours]."""

    kind: str
    speed: float
    clock: float | None


@dataclass(frozen=True)
class TypedPair:
    """Two pitches as entered, and their flights.

    glove: +1 where the pitcher's glove side is the catcher's right (a right-hander), else -1.
    ends: where the breaking ball is meant to end: "zone", "low" or "line".
    mound: from the rubber to the plate [m].
    """

    glove: int
    fastball: Pitch
    breaking: Pitch
    setting: Setting
    pair: Pair
    zone: Zone
    ends: str
    swing: float
    others: tuple[OtherPitch, ...]
    mound: float


def pairing_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order."""
    shared = {field.name: field for field in pitch_fields(shelf)}
    return (
        shared["hand"],
        *_about("fast", say("Fastball speed"), (50, 95)),
        *_about("curve", say("Breaking ball speed"), (40, 85)),
        ChoiceField(
            "ends",
            say("Where the breaking ball ends"),
            (
                Choice("zone", say("In the zone, at the fastball's height")),
                Choice("low", say("Below the zone, for a chase")),
                Choice("line", say("Wherever the fastball's line takes it")),
            ),
        ),
        *(shared[name] for name in ANSWERED_ELSEWHERE[:-1]),
        NumberField(
            "swing",
            say("Time from the start of a swing to contact"),
            "ms",
            80,
            350,
            (130, 220),
            help=say("About 150 for grown hitters. Young hitters may need longer."),
        ),
        RowsField(
            "others",
            say("Other pitches"),
            (
                ChoiceField(
                    "kind",
                    say("Pitch"),
                    (
                        Choice("breaking", say("Second breaking ball")),
                        Choice("changeup", say("Changeup")),
                        Choice("fastball", say("Second fastball")),
                    ),
                    style="select",
                ),
                NumberField("speed", say("Speed"), "mph", 30, 105, (45, 90), 1),
                ClockField("clock", say("Clock"), optional=True),
            ),
            say("Add a pitch"),
            most_rows=8,
        ),
        shared["units"],
    )


def _about(name: str, speed: Message, usual: tuple[float, float]) -> tuple[Field, ...]:
    return (
        NumberField(f"{name}_speed", speed, "mph", 30, 105, usual, 1),
        NumberField(f"{name}_spin", say("Spin"), "rpm", 0, 3600, (1200, 2800)),
        ClockField(
            f"{name}_clock",
            say("Clock"),
            help=say("Where spin pushes the ball, seen from behind the pitcher."),
        ),
        NumberField(f"{name}_active", say("Active share"), "%", 0, 100, (40, 98)),
    )


PAIRING_GROUPS = (
    FieldGroup(say("Fastball"), ("fast_speed", "fast_spin", "fast_clock", "fast_active")),
    FieldGroup(say("Breaking ball"), ("curve_speed", "curve_spin", "curve_clock", "curve_active")),
    FieldGroup(say("Aim and batter"), ("ends", "batter", "swing"), open=False),
    FieldGroup(say("The rest of the arsenal"), ("others",), open=False),
    FieldGroup(
        say("Field and release"), ("mound", "release_height", "release_side", "extension"), open=False
    ),
    FieldGroup(say("How to answer"), ("units",), open=False),
)

EXAMPLE_PAIR: Raw = {
    "hand": "right",
    "fast_speed": "76",
    "fast_spin": "2000",
    "fast_clock": "12:50",
    "fast_active": "93",
    "curve_speed": "63",
    "curve_spin": "2050",
    "curve_clock": "7:00",
    "curve_active": "78",
    "ends": "zone",
    "mound": "60.5",
    "release_height": "5.6",
    "release_side": "1.5",
    "extension": "5.5",
    "batter": "tall",
    "swing": number(1000 * SWING_TIME),
    "others": ({"kind": "changeup", "speed": "68", "clock": "2:00"},),
    "units": "imperial",
}
"""A high-school right-hander with a fastball, a curve and a changeup."""


def read_pair(values: Values) -> TypedPair | tuple[Problem, ...]:
    """Return the pair the fields describe, or the problems that involve several of them."""

    def entered(name: str) -> float:
        return cast(float, values[name])

    if entered("curve_speed") >= entered("fast_speed"):
        message = say(
            "The breaking ball ({curve} mph) must be slower than the fastball ({fast} mph). Correct one.",
            curve=number(entered("curve_speed"), 1),
            fast=number(entered("fast_speed"), 1),
        )
        return (Problem("fast_speed", message), Problem("curve_speed", message))
    rows = cast("tuple[Mapping[str, Value], ...]", values["others"])
    if any(row["kind"] != "fastball" and cast(float, row["speed"]) >= entered("fast_speed") for row in rows):
        message = say(
            "A changeup or breaking ball must be slower than the fastball ({fast} mph). Correct one.",
            fast=number(entered("fast_speed"), 1),
        )
        return (Problem("fast_speed", message), Problem("others", message))
    glove = -1 if values["hand"] == "left" else 1
    zone = BATTERS[str(values["batter"])]
    hand = (
        -glove * entered("release_side") * FOOT,
        (float(str(values["mound"])) - entered("extension")) * FOOT,
        entered("release_height") * FOOT,
    )
    setting = Setting(hand)

    def pitch(name: str) -> Pitch:
        share = entered(f"{name}_active") / 100
        spin = Spin(entered(f"{name}_spin") * RPM, entered(f"{name}_clock"), share, float(glove))
        return Pitch(entered(f"{name}_speed") * MPH, spin)

    fastball, breaking = pitch("fast"), pitch("curve")
    ends = str(values["ends"])
    try:
        pair = _flights(fastball, breaking, ends, zone, setting)
    except OutOfReachError:
        message = say(
            "At {speed} mph the breaking ball does not get to the plate from {feet} ft. "
            "Enter more speed, or a shorter distance from rubber to plate.",
            speed=number(entered("curve_speed")),
            feet=str(values["mound"]),
        )
        return (Problem("curve_speed", message), Problem("mound", message))
    return TypedPair(
        glove,
        fastball,
        breaking,
        setting,
        pair,
        zone,
        ends,
        entered("swing") / 1000,
        tuple(
            OtherPitch(str(row["kind"]), cast(float, row["speed"]) * MPH, cast("float | None", row["clock"]))
            for row in rows
        ),
        float(str(values["mound"])) * FOOT,
    )


def _flights(fastball: Pitch, breaking: Pitch, ends: str, zone: Zone, setting: Setting) -> Pair:
    first = aimed(fastball, (0.0, zone.middle), setting)
    if ends == "line":
        return Pair(first, on_line_of(first, breaking, setting))
    height = zone.middle if ends == "zone" else zone.bottom - BELOW_THE_ZONE
    return Pair(first, aimed(breaking, (0.0, height), setting))

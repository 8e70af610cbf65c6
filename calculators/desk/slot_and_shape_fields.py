"""The questions about an arm and what is wanted from it, and what is read from them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, NamedTuple, cast

from calculators.coaching.clock_faces import hours_apart
from calculators.coaching.slot_and_shape import (
    Arm,
    Shape,
    Slot,
    arm_angle,
    clock_doubt,
    fastball_clock,
    read_shapes,
    read_slots,
    slot_of,
)
from calculators.desk.answers import FieldGroup, Shelf
from calculators.desk.fields import Choice, ChoiceField, ClockField, Field, NumberField, Problem, Raw, Values
from calculators.desk.movement_tables import clock_words
from calculators.desk.pitch_fields import pitch_fields
from calculators.physics.spin import other_hand_clock
from calculators.physics.units import DEGREE, MPH
from calculators.words import number, say

USUAL_FASTBALL = 1.5
FARTHEST_FASTBALL = 2.5
"""A right-hander's fastball clock is within this many hours of half past one, or it is no fastball."""

MEASURED_DOUBT = 20 / 60
"""How far a measured fastball clock may be off [hours] (estimate)."""

LOWEST_ARM, HIGHEST_ARM = -40 * DEGREE, 130 * DEGREE


@dataclass(frozen=True)
class TypedArm:
    """An arm as entered. Clocks are a right-hander's; `clock` says one as this pitcher sees it.

    known: "clock", "photo" or "slot". doubt: of the fastball's clock [hours]. angle: of the arm [rad], if
    seen. fastball: speed [m/s], if known. wanted and role: what was asked for, if anything.
    """

    left_handed: bool
    known: str
    arm: Arm
    doubt: float
    angle: float | None
    fastball: float | None
    age: int | None
    shapes: tuple[Shape, ...]
    wanted: Shape | None
    role: str | None

    def clock(self, hours: float) -> str:
        """Write a right-hander's clock as this pitcher sees it."""
        return clock_words(other_hand_clock(hours) if self.left_handed else hours)

    def span(self, start: float, end: float) -> tuple[str, str]:
        """Write the two ends of a right-hander's band, in the order in which this pitcher's clock runs."""
        ends = (self.clock(start), self.clock(end))
        return ends[::-1] if self.left_handed else ends


def arm_fields(shelf: Shelf) -> tuple[Field, ...]:
    """Return the questions, in order; the shelf's slots, shapes and roles fill the lists to choose from."""
    shared = {field.name: field for field in pitch_fields(shelf)}
    undecided = Choice("", say("Not decided"))
    return (
        shared["hand"],
        ChoiceField(
            "known",
            say("What you know of the arm"),
            (
                Choice("clock", say("The fastball's clock")),
                Choice("photo", say("A photo at release")),
                Choice("slot", say("The arm slot, by eye")),
            ),
            help=say("The fastball's clock is best. Answer only the questions that go with your choice."),
        ),
        ClockField(
            "fastball_clock",
            say("Fastball clock"),
            optional=True,
            help=say("Where spin pushes the four-seam fastball, seen from behind. Take the middle of ten."),
        ),
        NumberField(
            "hand_out",
            say("Photo: hand out from the throwing shoulder"),
            "mm",
            -200,
            500,
            (5, 60),
            optional=True,
            help=say("Photo from straight behind, as the ball leaves. Measure level, on the screen."),
        ),
        NumberField(
            "hand_up",
            say("Photo: hand above the throwing shoulder"),
            "mm",
            -200,
            500,
            (5, 60),
            optional=True,
            help=say("Measure straight up. Lower than the shoulder gets a minus sign."),
        ),
        ChoiceField(
            "slot",
            say("Arm slot by eye"),
            (undecided, *_named(shelf.slots)),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "role",
            say("What the pitch is for"),
            (undecided, *_named(shelf.roles)),
            style="select",
            optional=True,
        ),
        ChoiceField(
            "wanted",
            say("Shape you have in mind"),
            (undecided, *_breaking_balls(shelf)),
            style="select",
            optional=True,
        ),
        NumberField("fastball_speed", say("Fastball speed"), "mph", 30, 105, (50, 95), 1, optional=True),
        NumberField("age", say("Age"), "years", 5, 60, (9, 22), optional=True),
        shared["units"],
    )


ARM_GROUPS = (FieldGroup(say("How to answer"), ("units",), open=False),)

EXAMPLE_ARM: Raw = {
    "hand": "right",
    "known": "clock",
    "fastball_clock": "1:30",
    "hand_out": "",
    "hand_up": "",
    "slot": "",
    "role": "",
    "wanted": "",
    "fastball_speed": "76",
    "age": "16",
    "units": "imperial",
}
"""A high-school right-hander who throws from three-quarter."""


def _named(entries: Mapping[str, Mapping[str, Any]]) -> tuple[Choice, ...]:
    return tuple(Choice(slug, say("{title}", title=str(entry["title"]))) for slug, entry in entries.items())


def _breaking_balls(shelf: Shelf) -> tuple[Choice, ...]:
    return tuple(
        Choice(shape.slug, say("{title}", title=str(shelf.shapes[shape.slug]["title"])))
        for shape in read_shapes(shelf.shapes)
    )


class Seen(NamedTuple):
    """What was seen of an arm: fastball clock and its doubt [hours], the arm's angle [rad], the slot."""

    clock: float
    doubt: float
    angle: float | None = None
    slot: Slot | None = None


def read_arm(values: Values, shelf: Shelf) -> TypedArm | tuple[Problem, ...]:
    """Return the arm the fields describe, or the problems that involve several of them."""
    left_handed = values["hand"] == "left"
    known = str(values["known"])
    slots = read_slots(shelf.slots)
    if known == "clock":
        seen = _measured(values, left_handed)
    elif known == "photo":
        seen = _photographed(values)
    else:
        seen = _by_eye(values, slots)
    if not isinstance(seen, Seen):
        return seen
    shapes = read_shapes(shelf.shapes)
    speed = cast("float | None", values["fastball_speed"])
    age = cast("float | None", values["age"])
    return TypedArm(
        left_handed,
        known,
        Arm(seen.clock, seen.slot or slot_of(seen.clock, slots)),
        seen.doubt,
        seen.angle,
        None if speed is None else speed * MPH,
        None if age is None else int(age),
        shapes,
        next((shape for shape in shapes if shape.slug == values["wanted"]), None),
        cast("str | None", values["role"]),
    )


def _measured(values: Values, left_handed: bool) -> Seen | tuple[Problem, ...]:
    entered = cast("float | None", values["fastball_clock"])
    if entered is None:
        message = say("Enter the fastball's clock, or choose another way to say what you know of the arm.")
        return (Problem("fastball_clock", message),)
    clock = other_hand_clock(entered) if left_handed else entered
    if hours_apart(clock, USUAL_FASTBALL) > FARTHEST_FASTBALL:
        hand = say("left-hander") if left_handed else say("right-hander")
        span = fastball_span(left_handed)
        message = say(
            "A {hand}'s fastball is pushed between {start} and {end}; you entered {entered}. "
            "Check the hand, and that the clock was read from behind the pitcher.",
            hand=hand,
            start=span[0],
            end=span[1],
            entered=clock_words(entered),
        )
        return (Problem("hand", message), Problem("fastball_clock", message))
    return Seen(clock, MEASURED_DOUBT)


def fastball_span(left_handed: bool) -> tuple[str, str]:
    """Write the clocks a fastball can have, in the order in which the clock runs."""
    start, end = USUAL_FASTBALL - FARTHEST_FASTBALL, USUAL_FASTBALL + FARTHEST_FASTBALL
    if left_handed:
        start, end = -end, -start
    return clock_words(start % 12), clock_words(end % 12)


def _photographed(values: Values) -> Seen | tuple[Problem, ...]:
    out, up = cast("float | None", values["hand_out"]), cast("float | None", values["hand_up"])
    both = ("hand_out", "hand_up")
    if out is None or up is None:
        message = say("The photo needs both: how far out and how far above the shoulder the hand is.")
        return tuple(Problem(name, message) for name in both if values[name] is None)
    angle = arm_angle(out, up)
    if out == up == 0 or not LOWEST_ARM <= angle <= HIGHEST_ARM:
        message = say(
            "{out} out and {up} above is no throwing arm at release. Measure from the throwing shoulder to "
            "the hand, and count toward the arm side as plus.",
            out=number(out),
            up=number(up),
        )
        return tuple(Problem(name, message) for name in both)
    return Seen(fastball_clock(angle), clock_doubt(), angle)


def _by_eye(values: Values, slots: tuple[Slot, ...]) -> Seen | tuple[Problem, ...]:
    slot = next((slot for slot in slots if slot.slug == values["slot"]), None)
    if slot is None:
        message = say("Choose the arm slot, or choose another way to say what you know of the arm.")
        return (Problem("slot", message),)
    doubt = math.hypot(slot.fastball.half_width, clock_doubt())
    return Seen(slot.fastball.middle, doubt, slot=slot)

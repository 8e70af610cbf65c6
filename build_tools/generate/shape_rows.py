"""The computed movement of a shape, in words for a table."""

from __future__ import annotations

from dataclasses import dataclass

from build_tools.generate.writer import Edition
from build_tools.schema.shape import Shape
from build_tools.shape_numbers import Range, ShapeNumbers, shape_numbers
from calculators.words import Message, number, say

LEVELS = {
    "adult": say("Adult, 60.5 feet"),
    "high_school": say("High school, 60.5 feet"),
    "twelve_and_under": say("12 and under, 46 feet"),
}


@dataclass(frozen=True)
class ShapeRow:
    """One level of a shape, ready to print. `target` is false where the level should not throw it."""

    level: str
    target: bool
    fastball: str
    speed: str
    spin: str
    upright: str
    sideways: str


def shape_rows(shape: Shape, edition: Edition) -> tuple[ShapeRow, ...]:
    """Return adults, high school, and twelve and under, in this order."""
    return tuple(_row(one, edition) for one in shape_numbers(shape))


def _row(numbers: ShapeNumbers, edition: Edition) -> ShapeRow:
    speak = edition.speak
    return ShapeRow(
        level=speak(LEVELS[numbers.level]),
        target=numbers.target,
        fastball=speak(_to(numbers.fastball)),
        speed=speak(_to(numbers.speed)),
        spin=speak(_to(numbers.spin)),
        upright=speak(_either_way(numbers.up, say("drop"), say("ride"))),
        sideways=speak(_either_way(numbers.glove_side, say("arm side"), say("glove side"))),
    )


def _to(span: Range) -> Message:
    low, high = (number(value) for value in span)
    return say("{value}", value=low) if low == high else say("{low} to {high}", low=low, high=high)


def _either_way(span: Range, minus: Message, plus: Message) -> Message:
    """Say a signed range with words for its two directions, the smaller number first."""
    low, high = span
    if low < 0 < high:
        return say("{a} {minus} to {b} {plus}", a=number(-low), minus=minus, b=number(high), plus=plus)
    if high <= 0 and low < 0:
        return say("{span} {direction}", span=_to((-high, -low)), direction=minus)
    return say("{span} {direction}", span=_to((low, high)), direction=plus)

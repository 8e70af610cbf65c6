"""A clock face with the part of it toward which a shape's spin pushes the ball, seen from behind."""

from __future__ import annotations

import math

from build_tools.charts.movement_chart import Hand
from build_tools.schema.shape import Shape
from build_tools.shape_numbers import hours
from calculators.desk.drawing import Circle, Drawing, Label, Mark, Path, Point
from calculators.physics.spin import other_hand_clock
from calculators.words import Message, say

WIDTH, HEIGHT = 200.0, 176.0
TEXT = 13.0
_CENTRE: Point = (100.0, 84.0)
_RADIUS = 62.0
_BAND = 12.0
_STEPS = 12


def clock_face(shape: Shape, hand: Hand, title: Message, description: Message) -> Drawing:
    """Draw the band of a shape's clock, and an arrow toward its middle.

    A band that means little, because most of the spin does not push, has a dashed edge and no arrow.
    """
    first, last = (_hours(clock, hand) for clock in shape.clock)
    middle = _hours(shape.clock_middle, hand)
    marks: list[Mark] = [
        _band(first, last, shape.clock_steady),
        Circle(_CENTRE, _RADIUS, "strong", width=1.6),
        *(_tick(hour) for hour in range(12)),
        *(_numeral(hour) for hour in (12, 3, 6, 9)),
    ]
    if shape.clock_steady:
        marks.append(Path((_CENTRE, _at(middle, _RADIUS - 3)), "accent", arrow=True, width=2.6))
    marks.append(Circle(_CENTRE, 3.0, "strong", "strong"))
    glove, arm = say("\u2190 glove side"), say("arm side \u2192")
    if hand == "left":
        glove, arm = say("\u2190 arm side"), say("glove side \u2192")
    marks += [
        Label((4, HEIGHT - 6), glove, "start", "faint", 0.92),
        Label((WIDTH - 4, HEIGHT - 6), arm, "end", "faint", 0.92),
    ]
    return Drawing(title, description, WIDTH, HEIGHT, tuple(marks), TEXT)


def _hours(clock: str, hand: Hand) -> float:
    return hours(clock) if hand == "right" else other_hand_clock(hours(clock))


def _at(hour: float, radius: float) -> Point:
    angle = hour * math.pi / 6
    return (_CENTRE[0] + radius * math.sin(angle), _CENTRE[1] - radius * math.cos(angle))


def _band(first: float, last: float, steady: bool) -> Path:
    """Return the ring's part from one clock time to another, the short way round."""
    turn = (last - first + 6) % 12 - 6
    times = [first + turn * step / _STEPS for step in range(_STEPS + 1)]
    outer = [_at(time, _RADIUS + _BAND) for time in times]
    inner = [_at(time, _RADIUS) for time in reversed(times)]
    return Path(
        (*outer, *inner),
        "accent",
        closed=True,
        fill="accent" if steady else "paper",
        dashed=not steady,
        width=1.2,
    )


def _tick(hour: int) -> Path:
    return Path((_at(hour, _RADIUS - (8 if hour % 3 == 0 else 5)), _at(hour, _RADIUS)), "faint", width=1.2)


def _numeral(hour: int) -> Label:
    x, y = _at(hour, _RADIUS - 18)
    return Label((x, y + TEXT * 0.34), say("{hour}", hour=str(hour)), "middle", "faint")

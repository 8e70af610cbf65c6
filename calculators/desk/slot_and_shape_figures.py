"""Pictures of an arm's reach: the dial with fastball and curve, and every shape on a strip of clock."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.coaching.slot_and_shape import FORCED_HOURS, NATURAL_HOURS, Reach, Shape
from calculators.desk.drawing import Circle, Drawing, Ink, Label, Mark, Path, Point
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.slot_and_shape_fields import TypedArm
from calculators.words import Message, say

CENTRE: Point = (170.0, 108.0)
RADIUS = 78.0
DIAL_HEIGHT = 232.0
ARC_STEPS = 12


def dial(typed: TypedArm, description: Message) -> Drawing:
    """Draw the clock as the pitcher sees it: where the fastball is pushed, and where the curve will be."""
    turn = -1.0 if typed.left_handed else 1.0

    def at(hours: float, radius: float) -> Point:
        angle = turn * hours * math.pi / 6
        return (CENTRE[0] + radius * math.sin(angle), CENTRE[1] - radius * math.cos(angle))

    def arc(start: float, end: float, radius: float) -> tuple[Point, ...]:
        step = (end - start) / ARC_STEPS
        return tuple(at(start + i * step, radius) for i in range(ARC_STEPS + 1))

    fastball, mirror = typed.arm.fastball, typed.arm.mirror
    natural = arc(mirror - NATURAL_HOURS, mirror + NATURAL_HOURS, RADIUS)
    left, right = say("← glove side"), say("arm side →")
    if typed.left_handed:
        left, right = say("← arm side"), say("glove side →")
    marks: list[Mark] = [
        Path((CENTRE, *natural), "paper", closed=True, fill="shade"),
        Circle(CENTRE, RADIUS, "faint"),
        *(Path((at(hour, RADIUS - 6), at(hour, RADIUS)), "faint") for hour in range(12)),
        *(
            Label((at(hour, 63)[0], at(hour, 63)[1] + 4), say("{clock}", clock=str(hour)), "middle", "faint")
            for hour in (12, 3, 6, 9)
        ),
        *(Path((CENTRE, at(mirror + away, RADIUS)), "ghost") for away in (-FORCED_HOURS, FORCED_HOURS)),
        Path(natural, "accent", width=5),
        Path((CENTRE, at(fastball, RADIUS - 4)), "strong", arrow=True),
        Path((CENTRE, at(mirror, RADIUS - 4)), "accent", arrow=True),
        Circle(CENTRE, 3, "strong", "strong"),
        _beside(at(fastball, RADIUS + 8), say("fastball {clock}", clock=typed.clock(fastball)), "strong"),
        _beside(at(mirror, RADIUS + 10), say("curve {clock}", clock=typed.clock(mirror)), "accent"),
        Label((8, DIAL_HEIGHT - 10), left, ink="faint"),
        Label((WIDTH - 8, DIAL_HEIGHT - 10), right, "end", "faint"),
    ]
    title = say(
        "As the pitcher sees it. Thick: what grip and hand reach. Beyond the dashes the arm is forced."
    )
    return Drawing(title, description, WIDTH, DIAL_HEIGHT, tuple(marks), TEXT_SIZE)


def _beside(point: Point, words: Message, ink: Ink) -> Label:
    """Set words outside the dial, away from it."""
    x, y = point
    off = (x - CENTRE[0]) / RADIUS
    height = y + (12 if y > CENTRE[1] else -2)
    return Label((x, height), words, "middle" if abs(off) < 0.75 else ("start" if off > 0 else "end"), ink)


@dataclass(frozen=True)
class Row:
    """A shape on the strip: its name, how well it fits, and that in a word or two."""

    shape: Shape
    name: Message
    reach: Reach
    verdict: Message


STRIP_START, STRIP_END = 4.5, 10.5
STRIP_LEFT, STRIP_RIGHT = 14.0, 326.0
ROW_HEIGHT = 36.0
BAR_HEIGHT = 8.0
HOURS_SHOWN = (5, 6, 7, 8, 9, 10)


def strip(typed: TypedArm, rows: Sequence[Row], description: Message) -> Drawing:
    """Draw every shape's clock as a bar, against what the arm reaches."""
    per_hour = (STRIP_RIGHT - STRIP_LEFT) / (STRIP_END - STRIP_START)

    def x(hours: float) -> float:
        return STRIP_LEFT + (min(max(hours, STRIP_START), STRIP_END) - STRIP_START) * per_hour

    mirror = typed.arm.mirror
    top, bottom = 26.0, 34.0 + len(rows) * ROW_HEIGHT
    low, high = x(mirror - NATURAL_HOURS), x(mirror + NATURAL_HOURS)
    marks: list[Mark] = [
        Path(((low, top), (high, top), (high, bottom), (low, bottom)), "paper", closed=True, fill="shade"),
        *(
            Path(((x(mirror + away), top), (x(mirror + away), bottom)), "ghost")
            for away in (-FORCED_HOURS, FORCED_HOURS)
        ),
        Path(((x(mirror), top), (x(mirror), bottom)), "accent"),
        Label(
            (min(max(x(mirror), 60.0), WIDTH - 60.0), 17),
            say("opposite {clock}", clock=typed.clock(mirror)),
            "middle",
            "accent",
        ),
        Path(((STRIP_LEFT, bottom), (STRIP_RIGHT, bottom)), "faint"),
    ]
    for hour in HOURS_SHOWN:
        marks.append(Path(((x(hour), bottom), (x(hour), bottom + 5)), "faint"))
        words = say("{clock}", clock=typed.clock(hour))
        marks.append(Label((x(hour), bottom + 19), words, "middle", "faint"))
    for index, row in enumerate(rows):
        level = top + 18 + index * ROW_HEIGHT
        marks.append(Label((STRIP_LEFT, level), row.name))
        marks.append(Label((STRIP_RIGHT, level), row.verdict, "end", bold=row.reach == Reach.NATURAL))
        marks.append(_bar(x(row.shape.clock.start), x(row.shape.clock.end), level + 5, row))
    title = say(
        "What lies in reach. A full bar fits this arm, an open bar just about, a dashed one is forced."
    )
    return Drawing(title, description, WIDTH, bottom + 28, tuple(marks), TEXT_SIZE)


def _bar(start: float, end: float, level: float, row: Row) -> Path:
    under = level + BAR_HEIGHT
    corners = ((start, level), (end, level), (end, under), (start, under))
    if row.reach == Reach.FORCED:
        return Path(corners, "faint", closed=True, fill="paper", dashed=True)
    full = row.reach == Reach.NATURAL and row.shape.steady
    return Path(corners, "accent", closed=True, fill="accent" if full else "paper", width=1.6)

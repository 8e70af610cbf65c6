"""Pictures of a target and of throws: the movement chart, and strips of speed and clock."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.coaching.spread import Ellipse
from calculators.desk.drawing import Circle, Drawing, Ink, Label, Mark, Path, Point
from calculators.desk.flight_figures import TEXT_SIZE, WIDTH
from calculators.desk.measures import Measures
from calculators.desk.target_movement import MovementBox
from calculators.physics.units import INCH
from calculators.words import Message, say

CHART_HEIGHT = 300.0
LEFT, RIGHT, TOP, BOTTOM = 8.0, 332.0, 24.0, 270.0
LEAST_REACH = 12.0
ROOM = 1.15
ELLIPSE_STEPS = 36


@dataclass(frozen=True)
class Cloud:
    """Throws of one kind: where each was moved, up and to the glove side [in], and their ellipse.

    name: what stands beside them. full: filled dots; open ones otherwise.
    """

    name: Message
    throws: tuple[tuple[float, float], ...]
    ellipse: Ellipse | None = None
    full: bool = True
    ink: Ink = "strong"


def movement_chart(
    box: MovementBox | None,
    clouds: Sequence[Cloud],
    left_handed: bool,
    measures: Measures,
    title: Message,
    description: Message,
) -> Drawing:
    """Draw movement as the pitcher sees it: the target box, and every throw with the spread of its kind."""
    inches = None if box is None else box.inches()
    frame = _Frame.around(inches, clouds, left_handed)
    marks: list[Mark] = [*frame.grid(measures)]
    if inches is not None:
        low, high = inches.up
        near, far = inches.glove
        corners = [frame.at(up, side) for up, side in ((low, near), (low, far), (high, far), (high, near))]
        marks.append(Path(tuple(corners), "accent", closed=True, fill="shade", width=2))
        x = sum(point[0] for point in corners) / 4
        y = max(point[1] for point in corners)
        marks.append(Label((x, min(y + 15, BOTTOM - 2)), say("target"), "middle", "accent", bold=True))
    for cloud in clouds:
        marks += _dots(cloud, frame)
    highest = max((cloud for cloud in clouds if cloud.throws), key=_height, default=None)
    marks += [_name(cloud, frame, above=cloud is highest) for cloud in clouds if cloud.throws]
    return Drawing(title, description, WIDTH, CHART_HEIGHT, tuple(marks), TEXT_SIZE)


@dataclass(frozen=True)
class _Frame:
    """Where inches lie on the sheet: the spinless ball's place, and how many units an inch takes."""

    middle: Point
    scale: float
    left_handed: bool

    @staticmethod
    def around(box: MovementBox | None, clouds: Sequence[Cloud], left_handed: bool) -> _Frame:
        """Return a frame with room for all of it."""
        ups, sides = [-LEAST_REACH / 2, LEAST_REACH / 2], [-LEAST_REACH, LEAST_REACH]
        for cloud in clouds:
            ups += [up for up, _ in cloud.throws]
            sides += [side for _, side in cloud.throws]
        if box is not None:
            ups += box.up
            sides += box.glove
        turn = 1 if left_handed else -1
        across = sorted((turn * min(sides), turn * max(sides)))
        wide, tall = ROOM * (across[1] - across[0]), ROOM * (max(ups) - min(ups))
        scale = min((RIGHT - LEFT) / wide, (BOTTOM - TOP) / tall)
        x = (LEFT + RIGHT) / 2 - scale * (across[0] + across[1]) / 2
        y = (TOP + BOTTOM) / 2 + scale * (max(ups) + min(ups)) / 2
        return _Frame((x, y), scale, left_handed)

    def at(self, up: float, side: float) -> Point:
        """Return the place of a movement up and to the glove side [in]."""
        turn = 1 if self.left_handed else -1
        return (self.middle[0] + turn * side * self.scale, self.middle[1] - up * self.scale)

    def grid(self, measures: Measures) -> list[Mark]:
        """Return the cross of no movement, its scale in the reader's unit, and the names of the sides."""
        x, y = self.middle
        left, right = say("← glove side"), say("arm side →")
        if self.left_handed:
            left, right = say("← arm side"), say("glove side →")
        step = 10 * INCH if measures.system == "imperial" else 0.2
        marks: list[Mark] = [
            Path(((LEFT, y), (RIGHT, y)), "faint"),
            Path(((x, TOP), (x, BOTTOM)), "faint"),
            Circle((x, y), 3, "faint", "faint"),
            Label((x + 6, y - 6), say("no spin"), ink="faint", size=0.9),
            Label((LEFT, CHART_HEIGHT - 8), left, ink="faint"),
            Label((RIGHT, CHART_HEIGHT - 8), right, "end", "faint"),
            Label((x + 5, TOP - 8), say("↑ ride"), ink="faint"),
            Label((x + 5, BOTTOM), say("↓ drop"), ink="faint"),
        ]
        unit = step / INCH * self.scale
        for count in range(-9, 10):
            along, level = x + count * unit, y - count * unit
            words = measures.small(abs(count) * step)
            if count and LEFT + 14 < along < RIGHT - 14:
                marks.append(Path(((along, y - 3), (along, y + 3)), "faint"))
                marks.append(Label((along, y + 15), words, "middle", "faint", size=0.85))
            if count and TOP + 8 < level < BOTTOM - 14:
                marks.append(Path(((x - 3, level), (x + 3, level)), "faint"))
                marks.append(Label((x + 6, level + 4), words, ink="faint", size=0.85))
        return marks


def _dots(cloud: Cloud, frame: _Frame) -> list[Mark]:
    marks: list[Mark] = [
        Circle(frame.at(up, side), 3.2, cloud.ink, cloud.ink if cloud.full else "paper", width=1.4)
        for up, side in cloud.throws
    ]
    if cloud.ellipse is not None:
        marks.append(Path(_outline(cloud.ellipse, frame), cloud.ink, closed=True, dashed=True, width=1.6))
    return marks


def _height(cloud: Cloud) -> float:
    return sum(up for up, _ in cloud.throws) / len(cloud.throws)


def _name(cloud: Cloud, frame: _Frame, above: bool) -> Label:
    """Set a cloud's name over its dots or under them, so that two clouds that overlap keep theirs apart."""
    points = [frame.at(up, side) for up, side in cloud.throws]
    x = min(max(sum(point[0] for point in points) / len(points), LEFT + 45), RIGHT - 45)
    if above:
        y = max(min(point[1] for point in points) - 9, TOP + 6)
    else:
        y = min(max(point[1] for point in points) + 18, CHART_HEIGHT - 22)
    return Label((x, y), cloud.name, "middle", cloud.ink, bold=True)


def _outline(ellipse: Ellipse, frame: _Frame) -> tuple[Point, ...]:
    """Return points round an ellipse of (up, glove)."""
    turned = ellipse.turned
    found = []
    for step in range(ELLIPSE_STEPS):
        angle = 2 * math.pi * step / ELLIPSE_STEPS
        along, across = ellipse.long * math.cos(angle), ellipse.short * math.sin(angle)
        up = ellipse.centre[0] + along * math.cos(turned) - across * math.sin(turned)
        side = ellipse.centre[1] + along * math.sin(turned) + across * math.cos(turned)
        found.append(frame.at(up, side))
    return tuple(found)


@dataclass(frozen=True)
class Row:
    """One row of a strip: its name, its values, where its middle is marked, and words at its end."""

    name: Message
    values: tuple[float, ...]
    middle: float | None = None
    words: Message | None = None
    ink: Ink = "strong"


ROW_HEIGHT = 44.0
STRIP_LEFT, STRIP_RIGHT = 14.0, 326.0


@dataclass(frozen=True)
class TargetBand:
    """The stretch of a line that is aimed at, and its words."""

    low: float
    high: float
    words: Message


def along_the_line(rows: Sequence[Row], band: TargetBand | None) -> list[float]:
    """Return every value that a strip must have room for, but its ticks."""
    ends = [] if band is None else [band.low, band.high]
    return [value for row in rows for value in row.values] + ends


def strip(
    rows: Sequence[Row],
    band: TargetBand | None,
    ticks: Sequence[tuple[float, Message]],
    title: Message,
    description: Message,
) -> Drawing:
    """Draw values on a line, one row a kind, over the band that is the target.

    ticks: values and their words along the foot. The line runs over all that is given.
    """
    everything = along_the_line(rows, band) + [value for value, _ in ticks]
    low, high = min(everything), max(everything)
    room = 0.04 * (high - low or 1.0)
    low, high = low - room, high + room

    def x(value: float) -> float:
        return STRIP_LEFT + (value - low) / (high - low) * (STRIP_RIGHT - STRIP_LEFT)

    top, bottom = 26.0, 32.0 + len(rows) * ROW_HEIGHT
    marks: list[Mark] = []
    if band is not None:
        left, right = x(band.low), x(band.high)
        corners = ((left, top), (right, top), (right, bottom), (left, bottom))
        marks.append(Path(corners, "accent", closed=True, fill="shade", width=1.6))
        middle = min(max((left + right) / 2, 92.0), WIDTH - 92.0)
        marks.append(Label((middle, 17), band.words, "middle", "accent", bold=True))
    marks.append(Path(((STRIP_LEFT, bottom), (STRIP_RIGHT, bottom)), "faint"))
    for value, words in ticks:
        marks.append(Path(((x(value), bottom), (x(value), bottom + 5)), "faint"))
        marks.append(Label((x(value), bottom + 19), words, "middle", "faint", size=0.9))
    for index, row in enumerate(rows):
        level = top + 34 + index * ROW_HEIGHT
        marks.append(Label((STRIP_LEFT, level - 15), row.name, ink=row.ink))
        if row.words is not None:
            marks.append(Label((STRIP_RIGHT, level - 15), row.words, "end", row.ink, bold=True))
        marks += [Circle((x(value), level), 3.2, row.ink, "paper", width=1.3) for value in row.values]
        if row.middle is not None:
            place = x(row.middle)
            marks.append(Path(((place, level - 9), (place, level + 9)), row.ink, width=3))
    return Drawing(title, description, WIDTH, bottom + 28, tuple(marks), TEXT_SIZE)


def clock_on_line(clock: float, middle: float) -> float:
    """Return a clock as a number near `middle`, so that clocks round 12:00 stay together on a strip."""
    return middle + (clock - middle + 6) % 12 - 6


def tick_step(low: float, high: float) -> int:
    """Return a round step that puts two to seven ticks between two values."""
    return next((step for step in (1, 2, 5, 10, 20) if (high - low) / step <= 7), 50)

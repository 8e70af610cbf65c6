"""The movement chart: every shape a box, in inches the spin moves the ball, seen from behind the pitcher.

The boxes come from `build_tools.shape_numbers`, that is from flights; nothing is typed. All levels are drawn
to one scale, so that a smaller box means less movement. A left-hander's chart is the mirror image.
"""

from __future__ import annotations

import functools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from build_tools.charts.label_places import Area, Named, Place, Point, places
from build_tools.figures.labels import breadth, wrap
from build_tools.shape_numbers import ShapeNumbers
from calculators.desk.drawing import Circle, Drawing, Ink, Label, Mark, Path
from calculators.words import Message, number, say

Hand = Literal["right", "left"]

TEXT = 13.0
LINE = 14.5
_NAME_COLUMNS = 12
_GRID = 10
_AROUND = 4.0


@dataclass(frozen=True)
class Box:
    """One shape at one level: its name as spoken, and how far its spin moves the ball [in].

    glove_side and up are ranges, arm side and drop negative. reference: shown for comparison only.
    """

    name: str
    glove_side: tuple[float, float]
    up: tuple[float, float]
    reference: bool = False


def box(name: str, numbers: ShapeNumbers, reference: bool) -> Box:
    """Return the box of a shape's numbers at one level."""
    return Box(name, numbers.glove_side, numbers.up, reference)


@dataclass(frozen=True)
class Frame:
    """A sheet of paper for a chart: its size, and the inches it has room for.

    Inches run from -arm_side to glove_side and from -drop to ride; `beside` is room for names at the glove
    side's edge, `lines` the lines of words above and below the plot.
    """

    width: float
    glove_side: float
    arm_side: float
    ride: float
    drop: float
    beside: float = 0.0
    lines: tuple[int, int] = (0, 0)

    @property
    def per_inch(self) -> float:
        """Drawing units to the inch."""
        return (self.width - self.beside - 2 * _AROUND) / (self.glove_side + self.arm_side)

    @property
    def height(self) -> float:
        """Height of the sheet."""
        return (self.ride + self.drop) * self.per_inch + sum(self.lines) * LINE + 4 * _AROUND

    def at(self, glove_side: float, up: float) -> Point:
        """Return the place of a movement on a right-hander's sheet, whose glove side is on the left."""
        x = _AROUND + self.beside + (self.glove_side - glove_side) * self.per_inch
        return (x, self.lines[0] * LINE + 2 * _AROUND + (self.ride - up) * self.per_inch)

    def area(self, one: Box) -> Area:
        """Return where a box lies on a right-hander's sheet."""
        left, top = self.at(one.glove_side[1], one.up[1])
        right, bottom = self.at(one.glove_side[0], one.up[0])
        return Area(left, top, right, bottom)


LARGE = Frame(width=340.0, glove_side=22.0, arm_side=20.0, ride=21.0, drop=25.0, beside=58.0, lines=(1, 2))
SMALL = Frame(width=164.0, glove_side=23.0, arm_side=20.0, ride=21.0, drop=25.0)
"""The chart with names, as wide as a phone, and the one without, of which two stand side by side."""


def movement_chart(
    boxes: Sequence[Box], hand: Hand, title: Message, description: Message, highlight: str = ""
) -> Drawing:
    """Draw all shapes of a level with their names.

    title, description: for those who cannot see it. highlight: the name of the shape that stands out.
    """
    frame = LARGE
    marks = [*_paper(frame, hand), *_boxes(frame, boxes, highlight)]
    for one, place in zip(boxes, _placed(frame, tuple(boxes)), strict=True):
        marks += _name(one, place, one.name == highlight)
    return _sheet(frame, hand, title, description, marks, _axis_words(frame, hand))


def small_chart(
    boxes: Sequence[Box], hand: Hand, title: Message, description: Message, highlight: str
) -> Drawing:
    """Draw the same without names, for a glance at how one shape changes from level to level."""
    frame = SMALL
    marks = [*_paper(frame, hand), *_boxes(frame, boxes, highlight)]
    return _sheet(frame, hand, title, description, marks, ())


def _sheet(
    frame: Frame,
    hand: Hand,
    title: Message,
    description: Message,
    marks: Sequence[Mark],
    words: Sequence[Mark],
) -> Drawing:
    drawn = [_mirrored(mark, frame.width) for mark in marks] if hand == "left" else list(marks)
    return Drawing(title, description, frame.width, frame.height, (*drawn, *words), TEXT)


def _paper(frame: Frame, hand: Hand) -> list[Mark]:
    """The two axes, a faint line every ten inches, and the ball without spin in the middle."""
    marks: list[Mark] = []
    for inches in range(-_GRID * 2, _GRID * 2 + 1, _GRID):
        ink: Ink = "line" if inches == 0 else "shade"
        level = (frame.at(frame.glove_side, inches), frame.at(-frame.arm_side, inches))
        upright = (frame.at(inches, frame.ride), frame.at(inches, -frame.drop))
        marks += [Path(line, ink, width=1.0) for line in (level, upright)]
    return [*marks, Circle(frame.at(0, 0), 3.2, "strong", "paper", width=1.6)]


def _boxes(frame: Frame, boxes: Sequence[Box], highlight: str) -> list[Mark]:
    """The boxes, the highlighted one first, filled, so that the outlines of the others stay visible on it."""
    marks: list[Mark] = []
    for one in sorted(boxes, key=lambda one: one.name != highlight):
        area = frame.area(one)
        corners = (
            (area.left, area.top),
            (area.right, area.top),
            (area.right, area.bottom),
            (area.left, area.bottom),
        )
        if one.name == highlight:
            marks.append(Path(corners, "accent", closed=True, fill="shade", width=3.2))
        elif highlight or one.reference:
            marks.append(Path(corners, "faint", closed=True, dashed=one.reference, width=1.1))
        else:
            marks.append(Path(corners, "strong", closed=True, width=1.6))
    return marks


@functools.lru_cache(maxsize=32)
def _placed(frame: Frame, boxes: tuple[Box, ...]) -> tuple[Place, ...]:
    """Find places for the names once for both hands and every highlight."""
    named = []
    for one in boxes:
        lines = _lines(one)
        wide = max(breadth(line) for line in lines) * TEXT * 1.1
        named.append(Named(frame.area(one), wide, LINE * len(lines)))
    top, bottom = frame.at(0, frame.ride)[1], frame.at(0, -frame.drop)[1]
    middle = frame.at(0, 0)
    taken = [
        Area(middle[0] - 4, middle[1] - 4, middle[0] + 4, middle[1] + 4),
        *(Area(x - 18, y - 7, x + 2, y + 7) for x, y in (_tick(frame, 0, up) for up in _TICKS)),
    ]
    return places(named, Area(_AROUND, top, frame.width - _AROUND, bottom), taken)


def _lines(one: Box) -> tuple[str, ...]:
    return wrap(one.name, _NAME_COLUMNS)


def _name(one: Box, place: Place, highlighted: bool) -> list[Mark]:
    start, end = place.leader
    ink: Ink = "accent" if highlighted else "strong"
    x = place.area.middle[0]
    marks: list[Mark] = [
        Path((start, end), ink, width=1.6 if highlighted else 0.9),
        Circle(end, 2.0, ink, "accent" if highlighted else "strong", width=0.5),
    ]
    for index, line in enumerate(_lines(one)):
        y = place.area.top + LINE * index + TEXT * 0.86
        marks.append(Label((x, y), say("{name}", name=line), "middle", ink, bold=highlighted))
    return marks


_TICKS = (20.0, 10.0, -10.0, -20.0)
"""Inches with a number: up and down at the arm side's edge, sideways under the plot."""


def _tick(frame: Frame, glove_side: float, up: float) -> Point:
    """Return the place of a number at the edge, for a movement along one of the axes."""
    if glove_side:
        x, y = frame.at(glove_side, -frame.drop)
        return (x, y + TEXT)
    return (frame.width - _AROUND, frame.at(0, up)[1])


def _axis_words(frame: Frame, hand: Hand) -> list[Mark]:
    """Words at the ends of the axes and numbers at the edges, which a mirror must not turn over."""
    marks: list[Mark] = []
    left = hand == "left"
    for inches in _TICKS:
        words = say("{inches}", inches=number(abs(inches)))
        x, y = _tick(frame, 0, inches)
        at = (frame.width - x if left else x, y + TEXT * 0.33)
        marks.append(Label(at, words, "start" if left else "end", "faint", 0.9))
        x, y = _tick(frame, inches, 0)
        if x < frame.width - 2 * TEXT:
            marks.append(Label((frame.width - x if left else x, y), words, "middle", "faint", 0.9))
    glove, arm = say("\u2190 glove side"), say("arm side \u2192")
    if left:
        glove, arm = say("\u2190 arm side"), say("glove side \u2192")
    middle = frame.at(0, 0)[0]
    middle = frame.width - middle if left else middle
    base = frame.height - 2 * _AROUND
    return [
        *marks,
        Label((middle, LINE), say("\u2191 ride, inches"), "middle", "faint"),
        Label((middle, base), say("\u2193 drop"), "middle", "faint"),
        Label((_AROUND, base), glove, "start", "faint"),
        Label((frame.width - _AROUND, base), arm, "end", "faint"),
    ]


def _mirrored(mark: Mark, width: float) -> Mark:
    if isinstance(mark, Path):
        points = tuple((width - x, y) for x, y in mark.points)
        return Path(points, mark.ink, mark.closed, mark.fill, mark.dashed, width=mark.width)
    if isinstance(mark, Circle):
        x, y = mark.centre
        return Circle((width - x, y), mark.radius, mark.ink, mark.fill, mark.dashed, mark.width)
    return Label((width - mark.at[0], mark.at[1]), mark.text, "middle", mark.ink, mark.size, mark.bold)

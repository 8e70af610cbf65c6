"""A drawing as data: lines, circles and labels that a renderer turns into SVG or into words.

Coordinates are in the drawing's own units with y pointing DOWN, as on a page. `ink` names what a
mark means, never a colour: the style sheet decides, for light, dark, print and high contrast.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calculators.words import Message

Ink = Literal["line", "strong", "faint", "accent", "ghost", "paper", "shade", "seam"]
"""line: ordinary outline; strong: the subject; faint: grid and helpers; accent: the one colour;
ghost: dashed, what would have been; paper and shade: fills; seam: the stitches."""

Point = tuple[float, float]


@dataclass(frozen=True)
class Path:
    """A line through points, open or closed; `smooth` rounds it through the points."""

    points: tuple[Point, ...]
    ink: Ink = "line"
    closed: bool = False
    fill: Ink | None = None
    dashed: bool = False
    arrow: bool = False
    smooth: bool = False
    width: float | None = None


@dataclass(frozen=True)
class Circle:
    """A circle; `radius` in drawing units."""

    centre: Point
    radius: float
    ink: Ink = "line"
    fill: Ink | None = None
    dashed: bool = False
    width: float | None = None


@dataclass(frozen=True)
class Label:
    """Words set in the drawing, beside what they name. `size` is a share of the ordinary text size."""

    at: Point
    text: Message
    anchor: Literal["start", "middle", "end"] = "start"
    ink: Ink = "strong"
    size: float = 1.0
    bold: bool = False


Mark = Path | Circle | Label


@dataclass(frozen=True)
class Drawing:
    """A figure: what it shows, in words for those who cannot see it, and its marks from back to front."""

    title: Message
    description: Message
    width: float
    height: float
    marks: tuple[Mark, ...]
    text_size: float = 14.0
    left: float = 0.0
    top: float = 0.0

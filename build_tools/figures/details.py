"""Nails, creases and knuckles: short lines on the skin, given as places on a tube."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from build_tools.figures.flesh import STEP, Tube
from build_tools.figures.hand import FINGERS


@dataclass(frozen=True)
class Mark:
    """A short line on the skin.

    places: ring number and degrees round from the back. facing: how squarely the skin must face the
    viewer, 0 to 1, for a point of it to be drawn. whole: drawn only where all of it can be seen.
    """

    places: tuple[tuple[float, float], ...]
    facing: float = 0.22
    whole: bool = False


_SQUARE = 0.62
"""Below one: how much squarer than an ellipse a nail is."""


def _nail(part: Tube, back: float, front: float, half_deg: float) -> Mark:
    """A nail: a rounded oblong between two places, millimetres from the middle of the tip's round."""
    tip = len(part.rings) - 1
    points: list[tuple[float, float]] = []
    for k in range(41):
        a = 2.0 * math.pi * k / 40 - math.pi / 2.0
        along, across = math.cos(a), math.sin(a)
        along, across = (math.copysign(abs(v) ** _SQUARE, v) for v in (along, across))
        place = (back + front) / 2.0 + (front - back) / 2.0 * along
        points.append((tip + place / STEP, half_deg * across * (1.0 + 0.08 * along)))
    return Mark(tuple(points), facing=0.05)


def _crease(place: float, half_deg: float, bow: float, shift_deg: float = 0.0, whole: bool = False) -> Mark:
    """A short line across a digit's back; `bow` millimetres toward the tip at its middle."""
    steps = [k / 4.0 - 1.0 for k in range(9)]
    places = ((place + bow / STEP * (1.0 - s * s), shift_deg + half_deg * s) for s in steps)
    return Mark(tuple(places), whole=whole)


def marks(part: Tube) -> Iterator[Mark]:
    """Yield the small lines of one digit."""
    if part.name == "thumb":
        yield _nail(part, -8.5, 4.6, 52.0)
        yield _crease(part.joints[1] - 1.0, 40.0, 0.8)
        yield _crease(part.joints[1] + 1.0, 32.0, 1.0, 4.0)
    elif part.name in FINGERS:
        yield _nail(part, -7.5, 4.0, 48.0)
        knuckle, second, last, _ = part.joints
        yield _crease(last - 0.5, 36.0, 0.7)
        yield _crease(last + 0.9, 28.0, 0.8, 4.0)
        yield _crease(second - 1.6, 26.0, -0.8, -3.0)
        yield _crease(second, 40.0, 0.5)
        yield _crease(second + 1.6, 28.0, 0.9, 3.0)
        yield _crease(knuckle - 1.5, 34.0, 3.2, whole=True)

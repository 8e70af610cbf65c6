"""Flesh as tubes: round in section, tapering smoothly along a bent center line."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from build_tools.figures.vectors import Vec, across, add, along, cross, length, lerp, mul, sub, unit

STEP = 1.6
"""Millimetres between a tube's rings."""
_BEND_PARTS = 8


@dataclass(frozen=True)
class Ring:
    """A tube's cross section: a circle square to the center line."""

    center: Vec
    radius: float
    ahead: Vec
    back: Vec
    """Unit vector toward the digit's back, where its nail is."""


@dataclass(frozen=True)
class Corner:
    """A point of a tube's skeleton, the radius there, and how much its bend is rounded off."""

    at: Vec
    radius: float
    rounding: float = 3.0
    joint: bool = False


@dataclass(frozen=True)
class Tube:
    """A part of the hand."""

    name: str
    rings: tuple[Ring, ...]
    joints: tuple[int, ...] = ()
    """Ring numbers of its joints; the last is the middle of the round tip."""
    bare: int = 0
    """The ring from which it stands free; before that it belongs to the palm."""


def _bend(before: Vec, corner: Corner, after: Vec) -> list[Vec]:
    """Return points that round off a corner."""
    back = min(corner.rounding, 0.48 * length(sub(before, corner.at)))
    forth = min(corner.rounding, 0.48 * length(sub(after, corner.at)))
    a = along(corner.at, unit(sub(before, corner.at)), back)
    b = along(corner.at, unit(sub(after, corner.at)), forth)
    shares = [k / _BEND_PARTS for k in range(_BEND_PARTS + 1)]
    return [lerp(lerp(a, corner.at, s), lerp(corner.at, b, s), s) for s in shares]


def _eased(start: float, end: float, share: float) -> float:
    return start + (end - start) * share * share * (3.0 - 2.0 * share)


def tube(name: str, corners: Sequence[Corner], back: Vec, bare: int = 0) -> Tube:
    """Make a tube along a skeleton.

    back: the direction of the part's back at its first corner; it is carried along the bends.
    bare: the corner from which the part stands free of the palm.
    """
    points = [corners[0].at]
    for before, corner, after in zip(corners, corners[1:], corners[2:], strict=False):
        points += _bend(before.at, corner, after.at)
    points.append(corners[-1].at)
    run = [0.0]
    for a, b in itertools.pairwise(points):
        run.append(run[-1] + length(sub(b, a)))
    bends = len(corners) - 2
    marks = [0.0, *(run[1 + (_BEND_PARTS + 1) * k + _BEND_PARTS // 2] for k in range(bends)), run[-1]]
    count = max(2, round(run[-1] / STEP))
    rings: list[Ring] = []
    piece = corner_no = 0
    for step in range(count + 1):
        goal = run[-1] * step / count
        while piece < len(run) - 2 and run[piece + 1] < goal:
            piece += 1
        while corner_no < len(marks) - 2 and marks[corner_no + 1] < goal:
            corner_no += 1
        span = run[piece + 1] - run[piece]
        at = lerp(points[piece], points[piece + 1], (goal - run[piece]) / span if span else 0.0)
        ahead = unit(sub(points[min(piece + 2, len(points) - 1)], points[max(piece - 1, 0)]))
        part = (goal - marks[corner_no]) / max(marks[corner_no + 1] - marks[corner_no], 1e-9)
        radius = _eased(corners[corner_no].radius, corners[corner_no + 1].radius, part)
        back = unit(across(back, ahead))
        rings.append(Ring(at, radius, ahead, back))
    nearest = [round(mark / run[-1] * count) for mark in marks]
    joints = tuple(n for n, corner in zip(nearest, corners, strict=True) if corner.joint)
    return Tube(name, tuple(rings), joints, nearest[bare])


def skin(part: Tube, place: float, round_deg: float) -> tuple[Vec, Vec]:
    """Return a point on a tube's skin and the outward normal there.

    place: ring number; it may lie between two rings, or past the last, over the round of the tip.
    round_deg: how far round from the back.
    """
    last = len(part.rings) - 1
    number = max(0, min(int(place), last))
    ring, after = part.rings[number], part.rings[min(number + 1, last)]
    share = max(0.0, min(place - number, 1.0))
    a = math.radians(round_deg)
    ahead, back = unit(lerp(ring.ahead, after.ahead, share)), lerp(ring.back, after.back, share)
    back = unit(across(back, ahead))
    normal = add(mul(back, math.cos(a)), mul(cross(ahead, back), math.sin(a)))
    radius = ring.radius + (after.radius - ring.radius) * share
    if place > last:
        over = min((place - last) * STEP / ring.radius, math.pi / 2.0)
        normal = add(mul(normal, math.cos(over)), mul(ahead, math.sin(over)))
    return along(lerp(ring.center, after.center, share), normal, radius), normal

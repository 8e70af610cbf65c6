"""Outlines of tubes as a viewer sees them: exact for a chain of balls and the cones between them."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Disc:
    """A ring's ball as the viewer sees it; `z` grows toward the viewer."""

    x: float
    y: float
    z: float
    radius: float
    part: int
    place: int
    palm: bool = False
    front: bool = True
    """True where it is drawn before the ball."""


@dataclass(frozen=True)
class Spot:
    """A point of a drawn line with its depth, and the part and place that it belongs to."""

    x: float
    y: float
    z: float
    part: int = -1
    place: int = -1
    palm: bool = False
    front: bool = True


@dataclass(frozen=True)
class _Tangents:
    """The two lines that touch two discs: the way from one to the next, and how far off it the lines'
    outward normals stand, to the left and to the right; radians."""

    heading: float
    lean: float

    @property
    def left(self) -> float:
        return self.heading + self.lean

    @property
    def right(self) -> float:
        return self.heading - self.lean


def _tangents(a: Disc, b: Disc) -> _Tangents:
    """Return the tangents of two discs, neither of which lies inside the other."""
    dx, dy = b.x - a.x, b.y - a.y
    lean = math.acos(max(-1.0, min(1.0, (a.radius - b.radius) / math.hypot(dx, dy))))
    return _Tangents(math.atan2(dy, dx), lean)


def arc(disc: Disc, start: float, sweep: float, step: float = 0.13) -> list[Spot]:
    """Return points round a disc's edge from an angle through a sweep, radians, `step` apart or less."""
    count = max(1, math.ceil(abs(sweep) / step))
    return [
        Spot(
            disc.x + disc.radius * math.cos(start + sweep * k / count),
            disc.y + disc.radius * math.sin(start + sweep * k / count),
            disc.z,
            disc.part,
            disc.place,
            disc.palm,
            disc.front,
        )
        for k in range(count + 1)
    ]


def _turned(start: float, end: float) -> float:
    """Return the signed turn from one angle to another, between minus and plus half a round."""
    return (end - start + math.pi) % (2.0 * math.pi) - math.pi


def _holds(outer: Disc, inner: Disc) -> bool:
    gap = math.hypot(outer.x - inner.x, outer.y - inner.y)
    return gap <= outer.radius - inner.radius + 1e-3


def prune(chain: Sequence[Disc]) -> list[Disc]:
    """Drop the discs that lie wholly inside a neighbor, as when a finger points at the viewer."""
    kept: list[Disc] = []
    for disc in chain:
        while kept and _holds(disc, kept[-1]):
            kept.pop()
        if not kept or not _holds(kept[-1], disc):
            kept.append(disc)
    return kept


def outline(chain: Sequence[Disc]) -> list[Spot]:
    """Return the closed outline of a tube: up its left side, round its end, down its right side, round."""
    discs = prune(chain)
    if len(discs) == 1:
        return arc(discs[0], 0.0, 2.0 * math.pi)
    sides = [_tangents(a, b) for a, b in itertools.pairwise(discs)]
    left: list[Spot] = []
    right: list[Spot] = []
    for disc, before, after in zip(discs, [sides[0], *sides], [*sides, sides[-1]], strict=True):
        bend, widening = _turned(before.heading, after.heading), after.lean - before.lean
        left += _side(disc, before.left, min(bend + widening, 0.0), bend + widening)
        right += _side(disc, before.right, max(bend - widening, 0.0), bend - widening)
    cap = arc(discs[-1], sides[-1].left, -2.0 * sides[-1].lean)
    heel = arc(discs[0], sides[0].right, -2.0 * (math.pi - sides[0].lean))
    return left + cap + right[::-1] + heel


def _side(disc: Disc, start: float, bare: float, turn: float) -> list[Spot]:
    """Return what shows of a disc on one side: the arc it lays bare on the outside of a bend, or a point."""
    return arc(disc, start, bare) if bare else arc(disc, start + turn / 2.0, 0.0)

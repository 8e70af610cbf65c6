"""What hides what: the hand and the ball as one solid made of balls, seen from one side."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

from build_tools.figures.body import Body
from build_tools.figures.flesh import Tube
from build_tools.figures.hand import FINGERS
from build_tools.figures.outline import Disc, Spot
from build_tools.figures.seam import RADIUS
from build_tools.figures.vectors import Matrix, apply

BALL = -1
_MIDDLE = -1.0
"""Flesh that overlaps the ball and is nearer than this depth is drawn before it, the rest behind."""
_OVERLAP = -3.0
_SHORTEST = 3
_CELL = 8.0
_SIDE_BY_SIDE = 2.5
"""Two fingers whose fronts differ by less than this lie side by side: neither hides the other's edge."""
_TOUCHING = 1.3
_ANOTHER_BONE = 12
"""Rings that far apart on one digit belong to different bones. Where the edge of one runs just inside
the edge of the other, the outer line stands for both."""
_PALM_GIVES = 4.0
"""Small lines on the hand's back show through this much of the flesh that rounds the palm."""
_NEAR_RINGS = 4


def _chain(rows: Matrix, part: Tube, number: int) -> list[Disc]:
    """Return a tube's rings as the viewer sees them, sorted into those before and behind the ball."""
    discs = []
    for place, ring in enumerate(part.rings):
        x, y, z = apply(rows, ring.center)
        discs.append(Disc(x, y, z, ring.radius, number, place, place < part.bare))
    return [replace(one, front=front) for one, front in zip(discs, _fronts(discs), strict=True)]


def _fronts(discs: Sequence[Disc]) -> list[bool]:
    """Tell for each disc whether it is drawn before the ball; those clear of it go with the nearest."""
    telling = [
        place for place, one in enumerate(discs) if math.hypot(one.x, one.y) < RADIUS + one.radius - _OVERLAP
    ]
    if not telling:
        return [sum(one.z for one in discs) / len(discs) > _MIDDLE] * len(discs)
    fronts = [
        discs[min(telling, key=lambda other: abs(other - place))].z > _MIDDLE for place in range(len(discs))
    ]
    runs = [list(run) for _, run in groupby(range(len(fronts)), key=lambda place: fronts[place])]
    for before, run in pairwise(runs):
        if len(run) < _SHORTEST:
            fronts[run[0] : run[-1] + 1] = [fronts[before[-1]]] * len(run)
    return fronts


@dataclass(frozen=True)
class Chain:
    """A tube as the viewer sees it."""

    name: str
    discs: tuple[Disc, ...]


class Solid:
    """A hand on a ball in one view, able to tell which points of a line can be seen."""

    def __init__(self, body: Body, rows: Matrix) -> None:
        self.chains = tuple(
            Chain(
                part.name,
                tuple(_chain(rows, part, number)),
            )
            for number, part in enumerate(body.tubes)
        )
        self._fingers = {number for number, part in enumerate(body.tubes) if part.name in FINGERS}
        self._folding = {number for number, part in enumerate(body.tubes) if part.name in ("ring", "little")}
        self._cells: dict[tuple[int, int], list[Disc]] = defaultdict(list)
        self._add([Disc(0.0, 0.0, 0.0, RADIUS, BALL, 0)])
        for chain in self.chains:
            self._add(chain.discs)

    def _add(self, discs: Sequence[Disc]) -> None:
        for one in discs:
            for i in range(_slot(one.x - one.radius), _slot(one.x + one.radius) + 1):
                for j in range(_slot(one.y - one.radius), _slot(one.y + one.radius) + 1):
                    self._cells[i, j].append(one)

    def hides(self, spot: Spot, outer: bool = True) -> bool:
        """True when something lies in front of a point of a line.

        outer: the line is an outline, so inside the palm it gives way to whatever flesh surrounds it.
        """
        inside = 0.0
        for one in self._cells.get((_slot(spot.x), _slot(spot.y)), ()):
            if one.part == spot.part and abs(one.place - spot.place) < _NEAR_RINGS:
                if outer and _within(spot, one, 0.15) and not _ball_between(spot, one):
                    return True
                continue
            if one.part == BALL and spot.part >= 0 and spot.front:
                continue
            if spot.part == BALL and not one.front:
                continue
            gap = (spot.x - one.x) ** 2 + (spot.y - one.y) ** 2
            edge = one.radius - 0.05
            apart = one.part != spot.part and one.part in self._fingers and spot.part in self._fingers
            apart = apart and not one.palm and not spot.palm
            if gap >= edge * edge:
                close = outer and apart and one.z >= spot.z and gap < (one.radius + _TOUCHING) ** 2
                if close and (one.z > spot.z + 0.5 or one.part < spot.part):
                    return True
                continue
            if outer and spot.palm and one.palm and one.part != spot.part:
                return True
            margin = 0.6
            if outer and apart:
                margin = _SIDE_BY_SIDE
            elif one.palm and not outer:
                margin = _PALM_GIVES
            far = one.part == spot.part and abs(one.place - spot.place) > _ANOTHER_BONE
            if outer and far and spot.part in self._folding:
                inside = max(inside, one.radius - math.sqrt(gap))
            if one.z + math.sqrt(one.radius * one.radius - gap) > spot.z + margin:
                return True
        return 0.0 < inside < _TOUCHING

    def under_finger(self, spot: Spot) -> bool:
        """True for a point of the ball that a finger, and nothing but fingers, covers."""
        over = [
            one
            for one in self._cells.get((_slot(spot.x), _slot(spot.y)), ())
            if one.part != BALL and math.hypot(spot.x - one.x, spot.y - one.y) < one.radius and one.front
        ]
        return bool(over) and all(one.part in self._fingers and not one.palm for one in over)


def _within(spot: Spot, one: Disc, margin: float) -> bool:
    return math.hypot(spot.x - one.x, spot.y - one.y) < one.radius - margin


def _ball_between(spot: Spot, one: Disc) -> bool:
    """True where a digit passes the ball's edge: its near part has an outline of its own on the ball."""
    return spot.front != one.front and math.hypot(spot.x, spot.y) < RADIUS


def _slot(value: float) -> int:
    return math.floor(value / _CELL)


def seen(spots: Sequence[Spot], hidden: Callable[[Spot], bool]) -> list[list[Spot]]:
    """Return the visible stretches of a line, their ends found exactly."""
    runs: list[list[Spot]] = []
    current: list[Spot] = []
    before: Spot | None = None
    showed = False
    for spot in spots:
        shows = not hidden(spot)
        if before is not None and shows != showed:
            edge = _edge(before, spot, showed, hidden)
            if shows:
                current = [edge]
            else:
                current.append(edge)
        if shows:
            current.append(spot)
        elif current:
            runs.append(current)
            current = []
        before, showed = spot, shows
    if current:
        runs.append(current)
    return [run for run in runs if len(run) > 1]


def _edge(a: Spot, b: Spot, first_shows: bool, hidden: Callable[[Spot], bool]) -> Spot:
    for _ in range(6):
        middle = Spot(
            (a.x + b.x) / 2.0,
            (a.y + b.y) / 2.0,
            (a.z + b.z) / 2.0,
            a.part,
            (a.place + b.place) // 2,
            a.palm and b.palm,
            a.front,
        )
        if (not hidden(middle)) == first_shows:
            a = middle
        else:
            b = middle
    return a if first_shows else b

"""Finds places for the names on a chart: near what they name, clear of each other, with a short leader.

Each name in turn takes the cheapest of the places around its own box. Because an early name may stand where
a later one should, all of them choose again a few times with the others where they are, and the whole is
tried in several orders. The same boxes always give the same places.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

Point = tuple[float, float]

_DISTANCES = (5.0, 12.0, 20.0, 30.0, 42.0, 56.0, 72.0, 92.0, 116.0)
_DIRECTIONS = 24
_ROUNDS = 3
_STEPS = 8
_MARGIN = 4.0
_INSET = 0.15

_OVER_A_BOX = 0.35
_ACROSS_A_BOX = 1.6
_ENDS_IN_A_BOX = 26.0
_CROSSES_A_LEADER = 70.0
_NEARER_ANOTHER = 1.5
_NEVER = 10_000.0


@dataclass(frozen=True)
class Area:
    """An upright rectangle, y pointing down."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def middle(self) -> Point:
        """Its middle."""
        return ((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def holds(self, point: Point, margin: float = 0.0) -> bool:
        """Tell whether a point lies inside, or no farther outside than the margin."""
        return (
            self.left - margin <= point[0] <= self.right + margin
            and self.top - margin <= point[1] <= self.bottom + margin
        )

    def shared(self, other: Area) -> float:
        """Return the size of what two areas have in common."""
        wide = min(self.right, other.right) - max(self.left, other.left)
        high = min(self.bottom, other.bottom) - max(self.top, other.top)
        return wide * high if wide > 0 and high > 0 else 0.0

    def near(self, other: Area, margin: float) -> bool:
        """Tell whether two areas overlap or come closer than the margin."""
        return (
            self.left < other.right + margin
            and other.left < self.right + margin
            and self.top < other.bottom + margin
            and other.top < self.bottom + margin
        )

    def wider(self, margin: float) -> Area:
        """Return the area with a margin round it."""
        return Area(self.left - margin, self.top - margin, self.right + margin, self.bottom + margin)

    def apart(self, other: Area) -> float:
        """Return how far two areas lie apart; 0 where they touch."""
        wide = max(self.left - other.right, other.left - self.right, 0.0)
        high = max(self.top - other.bottom, other.top - self.bottom, 0.0)
        return math.hypot(wide, high)

    def closest(self, point: Point) -> Point:
        """Return the area's point that lies closest to another point."""
        return (min(max(point[0], self.left), self.right), min(max(point[1], self.top), self.bottom))


@dataclass(frozen=True)
class Named:
    """A box and the room its name needs."""

    box: Area
    width: float
    height: float


@dataclass(frozen=True)
class Place:
    """Where a name stands, and the line from it to its box."""

    area: Area
    leader: tuple[Point, Point]


_Offer = tuple[float, Place]
"""What a place costs by itself, and the place."""


def places(named: Sequence[Named], sheet: Area, taken: Sequence[Area]) -> tuple[Place, ...]:
    """Return a place for each name.

    sheet: names stay inside it. taken: areas no name may cover, such as the words at the axes.
    """
    boxes = [one.box for one in named]
    offers = [
        sorted(
            ((_alone(place, boxes, index), place) for place in _offered(one, sheet, taken)),
            key=lambda offer: offer[0],
        )
        for index, one in enumerate(named)
    ]
    tried = [_settled(order, offers) for order in _orders(boxes)]
    return min(tried, key=lambda settled: settled[0])[1]


def _orders(boxes: Sequence[Area]) -> Iterator[list[int]]:
    """Yield the orders in which the names choose: down, up, and from either side."""
    for along in (0, 1):
        order = sorted(range(len(boxes)), key=lambda index: (boxes[index].middle[along], index))
        yield order
        yield order[::-1]


def _settled(order: Sequence[int], offers: Sequence[Sequence[_Offer]]) -> tuple[float, tuple[Place, ...]]:
    """Let the names choose in an order, again and again; return what it costs and the places."""
    found: dict[int, _Offer] = {}
    for _ in range(_ROUNDS):
        for index in order:
            others = [place for other, (_, place) in found.items() if other != index]
            found[index] = _cheapest(offers[index], others)
    chosen = [found[index] for index in range(len(offers))]
    together = sum(
        _beside(place, [other for _, other in chosen[index + 1 :]]) for index, (_, place) in enumerate(chosen)
    )
    return sum(cost for cost, _ in chosen) + together, tuple(place for _, place in chosen)


def _cheapest(offers: Sequence[_Offer], others: Sequence[Place]) -> _Offer:
    """Return the cheapest offer, given where the other names stand; the offers come cheapest first."""
    best, least = offers[0], math.inf
    for offer in offers:
        if offer[0] >= least:
            break
        cost = offer[0] + _beside(offer[1], others)
        if cost < least:
            best, least = offer, cost
    return best


def _offered(named: Named, sheet: Area, taken: Sequence[Area]) -> Iterator[Place]:
    """Yield the places round a box at growing distances, each with the leaders it could have."""
    half_wide, half_high = named.width / 2, named.height / 2
    box = named.box
    for distance in _DISTANCES:
        for step in range(_DIRECTIONS):
            angle = 2 * math.pi * step / _DIRECTIONS
            toward = (math.cos(angle), math.sin(angle))
            middle = (
                box.middle[0] + toward[0] * ((box.right - box.left) / 2 + half_wide + distance),
                box.middle[1] + toward[1] * ((box.bottom - box.top) / 2 + half_high + distance),
            )
            area = Area(
                middle[0] - half_wide, middle[1] - half_high, middle[0] + half_wide, middle[1] + half_high
            )
            inside = sheet.holds((area.left, area.top)) and sheet.holds((area.right, area.bottom))
            if not inside or any(area.near(one, _MARGIN) for one in taken):
                continue
            for end in sorted(_edge(box), key=lambda point: math.dist(point, area.closest(point)))[:4]:
                yield Place(area, (area.closest(end), end))


def _edge(box: Area) -> tuple[Point, ...]:
    """Return the places on a box's edge where a leader may end: near its corners and in between."""
    wide, high = box.right - box.left, box.bottom - box.top
    shares = (_INSET, 0.5, 1 - _INSET)
    level = [(box.left + share * wide, y) for share in shares for y in (box.top, box.bottom)]
    upright = [(x, box.top + share * high) for share in shares for x in (box.left, box.right)]
    return (*level, *upright)


def _alone(place: Place, boxes: Sequence[Area], own: int) -> float:
    """Return what a place costs because of the boxes."""
    start, end = place.leader
    length = math.dist(start, end)
    cost = length
    along = _points(place.leader)
    for index, box in enumerate(boxes):
        cost += _OVER_A_BOX * place.area.shared(box.wider(_MARGIN))
        if index != own:
            cost += _ACROSS_A_BOX * length * sum(box.holds(point) for point in along) / len(along)
            cost += _ENDS_IN_A_BOX * box.holds(end, 1.5)
            cost += max(0.0, _NEARER_ANOTHER * (length - place.area.apart(box)))
    return cost


def _beside(place: Place, others: Sequence[Place]) -> float:
    """Return what a place costs because of the other names and their leaders."""
    cost = 0.0
    along = _points(place.leader)
    for other in others:
        theirs = _points(other.leader)
        cost += _NEVER * (
            place.area.near(other.area, _MARGIN)
            or any(other.area.holds(point, 1.0) for point in along)
            or any(place.area.holds(point, 1.0) for point in theirs)
        )
        cost += _CROSSES_A_LEADER * _cross(place.leader, other.leader)
    return cost


def _points(leader: tuple[Point, Point]) -> list[Point]:
    (x0, y0), (x1, y1) = leader
    shares = (step / _STEPS for step in range(_STEPS + 1))
    return [(x0 + share * (x1 - x0), y0 + share * (y1 - y0)) for share in shares]


def _cross(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    def side(line: tuple[Point, Point], point: Point) -> bool:
        (x0, y0), (x1, y1) = line
        return (x1 - x0) * (point[1] - y0) > (y1 - y0) * (point[0] - x0)

    return side(one, other[0]) != side(one, other[1]) and side(other, one[0]) != side(other, one[1])

"""Which breaking balls an arm reaches: from the fastball's clock to its opposite, and what lies near it.

The rule: a pitcher's curve pushes about opposite to his fastball [1]_. Grip and hand move it by about three
quarters of an hour either way. More than an hour away only another arm slot gets there (common practice).
All clocks here are a right-hander's.

References
----------
[1] A. Kimura and others, Front. Sports Act. Living 5 (2023) 1092520: the direction of the curve follows from
    the four-seam fastball's; the fastball limits the direction of the slider.
[2] Int. J. Sports Sci. Coaching (2025), doi 10.1177/17479541251378897: in 297 professionals the arm angle
    explains 67 % of the variance of the fastball's spin axis.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import IntEnum
from typing import Any

from calculators.coaching.clock_faces import Band, hours_apart, opposite, read_band

NATURAL_HOURS = 0.75
FORCED_HOURS = 1.0
"""How far from the fastball's opposite grip and hand reach, and beyond what the arm is forced."""

GET_ME_OVER = 0.77
"""A ball slower than this share of the fastball is for one easy strike and no pitcher's main one."""

EXPLAINED = 0.67
"""Share of the variance of the fastball's axis that the arm angle explains [2]_."""

AXIS_SPREAD = 20 / 30
"""Standard deviation of the fastball's clock between pitchers [hours] (estimate)."""

PHOTO_DOUBT = 10 / 30
"""How far a photo may mislead about the arm's direction [hours on the clock] (estimate)."""


def arm_angle(out: float, up: float) -> float:
    """Return the angle of the arm above level [rad] from the hand's place beside and above the shoulder.

    out: toward the arm side, up: both in one unit, any; not both zero.
    """
    return math.atan2(up, out)


def fastball_clock(angle: float) -> float:
    """Return the fastball's clock to expect [hours] from the arm angle above level [rad].

    The ball is taken to be pushed the way the arm points: straight up is 12:00, level is 3:00 (estimate).
    """
    return (3.0 - 6.0 * angle / math.pi) % 12.0


def clock_doubt() -> float:
    """Return how far the fastball's clock may be from what a photo of the arm says [hours], two in three.

    What the arm leaves unexplained between pitchers, and the photo's own error, taken together.
    """
    return math.hypot(AXIS_SPREAD * (1 - EXPLAINED) ** 0.5, PHOTO_DOUBT)


class Reach(IntEnum):
    """How well a shape fits an arm."""

    NATURAL = 0
    EDGE = 1
    FORCED = 2


@dataclass(frozen=True)
class Slot:
    """An arm slot: its slug, and the clocks of fastballs thrown from it."""

    slug: str
    fastball: Band


@dataclass(frozen=True)
class Shape:
    """A breaking ball to aim for.

    clock: where it pushes. steady: False where bullet spin makes the clock noise.
    slots, edge_slots, not_from: slugs of arm slots that reach it, just reach it, must not be asked for it.
    roles: what it is thrown for. speed: from and to, as shares of the fastball's.
    youngest: age before which the handbook holds it back.
    """

    slug: str
    clock: Band
    steady: bool
    slots: tuple[str, ...]
    edge_slots: tuple[str, ...]
    not_from: tuple[str, ...]
    roles: tuple[str, ...]
    speed: tuple[float, float]
    youngest: int


def read_slots(entries: Mapping[str, Mapping[str, Any]]) -> tuple[Slot, ...]:
    """Return the arm slots of the handbook's list, in its order."""
    return tuple(Slot(slug, read_band(entry["fastball_clock"])) for slug, entry in entries.items())


def read_shapes(entries: Mapping[str, Mapping[str, Any]]) -> tuple[Shape, ...]:
    """Return the shapes of the handbook that are breaking balls, in the handbook's order."""
    in_order = sorted(entries.items(), key=lambda item: item[1].get("order", 100))
    return tuple(
        Shape(
            slug,
            read_band(entry["clock"]),
            bool(entry.get("clock_steady", True)),
            tuple(entry["slots"]),
            tuple(entry.get("edge_slots", ())),
            tuple(entry.get("not_from", ())),
            tuple(entry.get("roles", ())),
            (entry["speed_percent"][0] / 100, entry["speed_percent"][1] / 100),
            entry["youngest"],
        )
        for slug, entry in in_order
        if not entry.get("reference", False)
    )


def slot_of(clock: float, slots: Iterable[Slot]) -> Slot | None:
    """Return the slot whose fastballs have this clock; where two meet, the later one; None outside all."""
    found = [slot for slot in slots if slot.fastball.holds(clock)]
    return found[-1] if found else None


@dataclass(frozen=True)
class Arm:
    """What is known of an arm: its fastball's clock [hours], and its slot where one fits."""

    fastball: float
    slot: Slot | None

    @property
    def mirror(self) -> float:
        """The clock opposite the fastball's, which its curve is near."""
        return opposite(self.fastball)


def hours_to(shape: Shape, arm: Arm) -> float:
    """Return how far the shape's clock is from the fastball's opposite [hours]; 0 where it is not steady."""
    return shape.clock.outside(arm.mirror) if shape.steady else 0.0


def reach(shape: Shape, arm: Arm) -> Reach:
    """Return how well a shape fits an arm: by the clock and by the slot, whichever is more careful."""
    away = hours_to(shape, arm)
    by_clock = Reach.NATURAL
    if away > FORCED_HOURS:
        by_clock = Reach.FORCED
    elif away > NATURAL_HOURS:
        by_clock = Reach.EDGE
    return max(by_clock, _by_slot(shape, arm.slot))


def _by_slot(shape: Shape, slot: Slot | None) -> Reach:
    if slot is None or slot.slug in shape.slots:
        return Reach.NATURAL
    return Reach.FORCED if slot.slug in shape.not_from else Reach.EDGE


def natural_shape(shapes: Iterable[Shape], arm: Arm) -> Shape | None:
    """Return the shape nearest to the fastball's opposite, not counting slow get-me-over balls.

    None where every one would be forced.
    """
    able = (shape for shape in shapes if shape.steady and shape.speed[1] > GET_ME_OVER)
    fitting = [shape for shape in able if reach(shape, arm) < Reach.FORCED]
    return min(
        fitting,
        key=lambda shape: (reach(shape, arm), hours_apart(shape.clock.middle, arm.mirror)),
        default=None,
    )


def shape_for(role: str, shapes: Iterable[Shape], arm: Arm) -> Shape | None:
    """Return the shape that does a role and fits the arm best; None where every one would be forced.

    A slow ball comes last where anything else does the role.
    """
    fitting = [shape for shape in shapes if role in shape.roles and reach(shape, arm) < Reach.FORCED]
    return min(
        fitting,
        key=lambda shape: (shape.speed[1] <= GET_ME_OVER, reach(shape, arm), hours_to(shape, arm)),
        default=None,
    )


def unlike(first: Shape, second: Shape) -> float:
    """Return how unlike two shapes are [hours]: by clock, a tenth of the speed counting as one hour."""
    hours = hours_apart(first.clock.middle, second.clock.middle)
    return hours + 10 * abs(sum(first.speed) - sum(second.speed)) / 2


def instead_of(wanted: Iterable[Shape], shapes: Iterable[Shape], arm: Arm) -> Shape | None:
    """Return the shape that fits the arm and is most like one of the wanted; None where nothing fits."""
    asked = tuple(wanted)
    fitting = [shape for shape in shapes if shape.steady and reach(shape, arm) == Reach.NATURAL]
    return min(
        fitting, key=lambda shape: min((unlike(shape, other) for other in asked), default=0.0), default=None
    )

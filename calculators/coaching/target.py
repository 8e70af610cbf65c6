"""The target, chosen before any cue: what the ball is for, and the shape that does it from this arm.

Role and arm come first; the box follows from the shape and the role; then what it costs and what it must
differ from. No cue can be asked for without a target.

A first breaking ball follows the arm alone: any clean spin near the opposite of the pitcher's own fastball
will do, at any speed that a fastball arm gives (common practice).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Literal

from calculators.coaching.box import Box
from calculators.coaching.clock_faces import Band, around, hours_apart
from calculators.coaching.pairing import merge, too_close_in_speed
from calculators.coaching.slot_and_shape import (
    GET_ME_OVER,
    NATURAL_HOURS,
    Arm,
    Reach,
    Shape,
    hours_to,
    reach,
    read_shapes,
    read_slots,
    slot_of,
)
from calculators.coaching.stop_rules import YOUNGEST_FOR_A_BREAKING_BALL
from calculators.coaching.throws import Hand
from calculators.physics.spin import other_hand_clock
from calculators.physics.units import MPH
from calculators.words import Message, number, say

Role = Literal[
    "swing-and-miss",
    "steal-a-strike",
    "ground-ball",
    "same-hand-hitter",
    "opposite-hand-hitter",
    "slow-the-game",
    "first-pitch",
]

FIRM_ROLES: frozenset[Role] = frozenset({"swing-and-miss", "ground-ball"})
"""Roles that want the firm half of a shape's speeds (common practice)."""

HARMLESS_ACTIVE = 70
"""From a shape that reaches this active share [percent] on, more of it does no harm (estimate)."""

CLOCK_LEEWAY = 0.5
"""A box allows at least this much of the clock [hours] (estimate)."""

FIRST_SPEED = 70.0
"""A first breaking ball may begin at this speed [percent of the fastball] (common practice)."""

SLOW = 100 * GET_ME_OVER
"""A shape whose speeds end here [percent of the fastball] is no pitcher's main breaking ball (common practice)."""

CLEAR_HOURS = 2.0
"""Pitches this far apart on the clock are told apart whatever their speed (common practice)."""

USUAL_FASTBALL = 75.0
"""Stands in where the fastball was not measured [mph] (estimate)."""

_COST_OF_ROLE: Mapping[Role, Message] = {
    "swing-and-miss": say("More balls. You throw it below the zone on purpose."),
    "steal-a-strike": say("Fewer swings and misses. It must be a strike to be worth it."),
    "ground-ball": say("Fewer misses. The ball is put in play, so the fielders must be ready."),
    "same-hand-hitter": say("Little use against hitters of the other side, who see it come."),
    "opposite-hand-hitter": say("Less side to side movement against hitters of your own side."),
    "slow-the-game": say("It works as a surprise. Do not throw it twice running."),
    "first-pitch": say("Small bend at first. Clean spin comes before size."),
}


_PREFERRED: Mapping[Role, tuple[str, ...]] = {
    "swing-and-miss": ("hard-downer", "sweeper", "bullet-slider", "straight-downer"),
    "steal-a-strike": ("straight-downer", "three-quarter-drop", "slow-loop"),
    "ground-ball": ("bullet-slider", "hard-downer"),
    "same-hand-hitter": ("slurve", "sweeping-curve", "sweeper"),
    "opposite-hand-hitter": ("straight-downer", "hard-downer", "three-quarter-drop", "bullet-slider"),
    "slow-the-game": ("slow-loop",),
    "first-pitch": ("three-quarter-drop", "slow-loop"),
}
"""The shapes that coaches prefer for a role, best first (common practice)."""


@dataclass(frozen=True)
class Pitcher:
    """What a target rests on.

    slot: an arm slot of the handbook. fastball_clock: measured, for the pitcher's own hand [hours]; None
    where nobody measured it. fastball: typical [mph].
    """

    slot: str
    age: int
    hand: Hand = "right"
    fastball_clock: float | None = None
    fastball: float | None = None


@dataclass(frozen=True)
class Owned:
    """A pitch the pitcher has: speed in percent of the fastball, clock of the pitcher's own hand [hours].

    breaking: whether it breaks; only breaking balls can merge with one.
    """

    name: str
    speed: float
    clock: float | None = None
    breaking: bool = True


@dataclass(frozen=True)
class Clash:
    """A pitch of the arsenal that the target must be kept apart from, and how."""

    pitch: str
    message: Message


@dataclass(frozen=True)
class Target:
    """What to aim for; `next_cue` cannot be asked without one. Made by `targets`.

    shape: its slug. box: for the pitcher's own hand. edge: the arm only just reaches it.
    costs: what it gives up. clashes: pitches it must differ from. hours: how far the shape's clock is from
    the opposite of the fastball's. natural: all shapes that this arm reaches without being forced.
    """

    role: Role
    shape: str
    pitcher: Pitcher
    box: Box
    edge: bool
    hours: float
    costs: tuple[Message, ...]
    clashes: tuple[Clash, ...]
    natural: frozenset[str]


@dataclass(frozen=True)
class NotThis:
    """A shape that does the role but is no target for this pitcher, and why."""

    shape: str
    reason: Message


@dataclass(frozen=True)
class Choice:
    """The targets that do a role for a pitcher, best first, and the shapes that were ruled out."""

    targets: tuple[Target, ...]
    ruled_out: tuple[NotThis, ...]


class TargetError(ValueError):
    """The slot or role is not one of the handbook's. Names it and what there is."""


def targets(
    role: Role,
    pitcher: Pitcher,
    arsenal: Sequence[Owned],
    shapes: Mapping[str, Mapping[str, Any]],
    slots: Mapping[str, Mapping[str, Any]],
) -> Choice:
    """Return the targets for a role, best first.

    Those that clash with nothing come first, then those the arm reaches with ease, then those preferred for
    the role, then the nearest to the arm. A slow ball comes last where anything else does the role.

    shapes, slots: the handbook's, as plain data by slug.
    Raises TargetError for an unknown slot or role.
    """
    if pitcher.slot not in slots:
        raise TargetError(f"There is no arm slot named {pitcher.slot}; there are {', '.join(slots)}.")
    if role not in _COST_OF_ROLE:
        raise TargetError(f"There is no role named {role}; there are {', '.join(_COST_OF_ROLE)}.")
    arm = _arm(pitcher, slots)
    breaking = read_shapes(shapes)
    natural = frozenset(shape.slug for shape in breaking if reach(shape, arm) == Reach.NATURAL)
    found: list[Target] = []
    ruled_out: list[NotThis] = []
    for shape in _doing(role, breaking, arm):
        if reason := _against(shape, arm, pitcher):
            ruled_out.append(NotThis(shape.slug, reason))
        else:
            box = _box(role, shape, shapes[shape.slug]["active_percent"], arm, pitcher)
            found.append(_target(role, shape, box, arm, pitcher, arsenal, natural))
    found.sort(key=_place)
    return Choice(tuple(found), tuple(ruled_out))


def _doing(role: Role, shapes: Sequence[Shape], arm: Arm) -> tuple[Shape, ...]:
    """Return the shapes that do a role.

    Where an arm reaches none of those for a first breaking ball with ease, or only the slow one, its own
    natural shapes do it as well, if they are open to the youngest.
    """
    doing = tuple(shape for shape in shapes if role in shape.roles)
    if role != "first-pitch" or any(
        reach(shape, arm) == Reach.NATURAL and shape.speed[1] > GET_ME_OVER for shape in doing
    ):
        return doing
    return tuple(
        shape
        for shape in shapes
        if shape in doing
        or (
            shape.steady
            and shape.youngest <= YOUNGEST_FOR_A_BREAKING_BALL
            and reach(shape, arm) < Reach.FORCED
        )
    )


def _place(target: Target) -> tuple[bool, int, bool, int, float]:
    preferred = _PREFERRED[target.role]
    rank = preferred.index(target.shape) if target.shape in preferred else len(preferred)
    return target.box.speed[1] <= SLOW, len(target.clashes), target.edge, rank, target.hours


def _arm(pitcher: Pitcher, slots: Mapping[str, Mapping[str, Any]]) -> Arm:
    """Return the arm for a right-hander; a measured fastball clock says more than the slot seen by eye."""
    known = {slot.slug: slot for slot in read_slots(slots)}
    seen = known[pitcher.slot]
    if pitcher.fastball_clock is None:
        return Arm(seen.fastball.middle, seen)
    clock = pitcher.fastball_clock
    clock = other_hand_clock(clock) if pitcher.hand == "left" else clock
    return Arm(clock, slot_of(clock, known.values()) or seen)


def _against(shape: Shape, arm: Arm, pitcher: Pitcher) -> Message | None:
    if pitcher.age < shape.youngest:
        return say("The handbook holds it back until age {age}.", age=str(shape.youngest))
    if reach(shape, arm) == Reach.FORCED:
        return say("This arm slot does not reach it. It would have to change, and that is not worth a pitch.")
    return None


def _target(
    role: Role,
    shape: Shape,
    box: Box,
    arm: Arm,
    pitcher: Pitcher,
    arsenal: Sequence[Owned],
    natural: frozenset[str],
) -> Target:
    edge = reach(shape, arm) == Reach.EDGE
    costs = [_COST_OF_ROLE[role]]
    if edge:
        costs.append(say("Your arm only just reaches it. Watch that the slot does not move."))
    if box.speed[1] <= SLOW:
        costs.append(say("It climbs out of the hand, and a hitter who has seen it waits for it."))
    elif role in FIRM_ROLES:
        costs.append(say("Some drop goes for the speed."))
    clashes = tuple(clash for owned in arsenal if (clash := _clash(owned, box, pitcher)) is not None)
    return Target(role, shape.slug, pitcher, box, edge, hours_to(shape, arm), tuple(costs), clashes, natural)


def _box(role: Role, shape: Shape, active: Sequence[float], arm: Arm, pitcher: Pitcher) -> Box:
    slow, fast = 100 * shape.speed[0], 100 * shape.speed[1]
    if role in FIRM_ROLES:
        slow = (slow + fast) / 2
    most = 100.0 if active[1] >= HARMLESS_ACTIVE else float(active[1])
    clock = _shared(shape.clock, around(arm.mirror, NATURAL_HOURS)) if shape.steady else None
    if role == "first-pitch":
        slow, clock = min(slow, FIRST_SPEED), around(arm.mirror, CLOCK_LEEWAY)
    if clock is not None and pitcher.hand == "left":
        clock = clock.other_hand
    return Box((slow, fast), clock, (float(active[0]), most))


def _shared(shape: Band, reached: Band) -> Band:
    """Return the part of a shape's clocks that the arm reaches; at the edge, the end nearest to the arm."""
    width = 2 * shape.half_width
    from_start = (reached.start - shape.start + 6) % 12 - 6
    to_end = (reached.end - shape.start + 6) % 12 - 6
    first, last = min(max(from_start, 0.0), width), min(max(to_end, 0.0), width)
    least = min(CLOCK_LEEWAY, width)
    if last - first < least:
        first = min(max((first + last - least) / 2, 0.0), width - least)
        last = first + least
    return Band((shape.start + first) % 12, (shape.start + last) % 12)


def _clash(owned: Owned, box: Box, pitcher: Pitcher) -> Clash | None:
    near = _near_on_clock(owned, box)
    if near is not None and near >= CLEAR_HOURS:
        return None
    speed, mph = sum(box.speed) / 2, (pitcher.fastball or USUAL_FASTBALL) / 100
    if owned.breaking and near is not None and merge(0.0, speed * mph * MPH, near, owned.speed * mph * MPH):
        apart = say("{pitch} is so near in speed and direction that the two will merge.", pitch=owned.name)
        return Clash(owned.name, say("{apart} Keep one of them, or move them two hours apart.", apart=apart))
    if too_close_in_speed(max(owned.speed, speed), min(owned.speed, speed)):
        close = say("{pitch} has nearly the same speed.", pitch=owned.name)
        slower, faster = number(0.96 * owned.speed), number(owned.speed / 0.96)
        return Clash(
            owned.name,
            say(
                "{close} Stay below {slower} or above {faster} percent of the fastball.",
                close=close,
                slower=slower,
                faster=faster,
            ),
        )
    return None


def _near_on_clock(owned: Owned, box: Box) -> float | None:
    """Return how far apart two directions are [hours]; None where one of them has no steady clock."""
    if owned.clock is None or box.clock is None:
        return None
    return hours_apart(owned.clock, box.clock.middle)

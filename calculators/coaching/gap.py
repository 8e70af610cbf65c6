"""How far a breaking ball is from its target, in steps that a coach would notice.

Everything here is a right-hander's; a left-hander's clock is turned over on the way in.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from calculators.coaching.box import Box
from calculators.coaching.clock_faces import (
    FULL_TURN,
    Band,
    hours_apart,
    opposite,
    read_band,
    turn_between,
    turned,
)
from calculators.coaching.comparison import USUAL_DEVIATION, Level
from calculators.coaching.intervals import LEVEL, Interval, two_sided
from calculators.coaching.profiles import Profiles
from calculators.coaching.ranks import Estimate
from calculators.coaching.reading import Reading
from calculators.coaching.target import USUAL_FASTBALL, Pitcher, Target
from calculators.coaching.throws import Quantity
from calculators.physics.spin import other_hand_clock

Wish = Literal["speed", "clock", "active", "drop", "side", "strikes", "steady"]

STEP: Mapping[Wish, float] = {
    "speed": 3.0,
    "clock": 0.5,
    "active": 8.0,
    "drop": 2.5,
    "side": 2.5,
    "strikes": 0.10,
    "steady": 1.0,
}
"""One step: speed [percent of the fastball], clock [hours], active share [percent], drop and side [in],
strikes [share], steadiness [1 is all that is missing]. About what ten throws can show (estimate)."""

_INCHES_AT_FULL_SHARE = 23.0
"""What a breaking ball moves by spin from 60.5 ft if all of its spin does so, by our flights (estimate)."""
_FROM_THE_CLOCK = 0.5
_SLOW = 73.0
_FAR_CLOCK = 1.0
_LINE_FIRST = 2
_TWELVE, _EIGHTEEN = 12, 18


@dataclass(frozen=True)
class Now:
    """What was measured of the breaking ball, for the pitcher's own hand; None where it was not.

    speed and active in percent, clock in hours, strikes as a share. few: something was measured on so few
    throws that their own scatter says nothing, and the usual one had to stand in for it.
    """

    speed: float | None = None
    clock: float | None = None
    active: float | None = None
    strikes: float | None = None
    few: bool = False


def level_at(age: float) -> Level:
    """Return the level of play at an age [years], for the usual scatter."""
    return "twelve_and_under" if age <= _TWELVE else "high_school" if age <= _EIGHTEEN else "adult"


def now_from(reading: Reading, box: Box | None = None, level: Level = "high_school") -> Now:
    """Return where a pitch is by its reading.

    box: the target's, for the pitcher's own hand. A value that lies outside it by no more than its give or take
    counts as on its edge: no cue is chosen for what may be luck. level: its usual scatter from throw to throw
    gives the give or take where the throws are too few to show their own; what that leaves open, inside or
    outside, counts as not measured.
    """
    usual = USUAL_DEVIATION[level]
    few = False

    def typical(quantity: Quantity) -> Estimate | None:
        nonlocal few
        found = reading.summaries.get(quantity)
        if found is None or found.typical.interval is not None:
            return None if found is None else found.typical
        few = True
        return _give_or_take(found.typical.value, usual[quantity] / math.sqrt(found.count))

    speed = reading.speed_percent
    if speed is not None and speed.interval is None and reading.fastball is not None:
        few = True
        thrown = reading.summaries["speed"].count
        percent = 100 * usual["speed"] / reading.fastball.value
        speed = _give_or_take(speed.value, percent * math.sqrt(1 / thrown + 1 / reading.fastballs))
    return Now(
        _settled(speed, None if box is None else box.speed),
        _settled_clock(typical("clock"), None if box is None else box.clock),
        _settled(typical("active"), None if box is None else box.active),
        reading.strikes / reading.called if reading.called else None,
        few,
    )


class _OfFew(Estimate):
    """A value of too few throws, with an interval that the usual scatter gives."""


def _give_or_take(value: float, error: float) -> _OfFew:
    """Return a value of few throws with the interval of a normal spread; error: the standard error."""
    away = two_sided(LEVEL) * error
    return _OfFew(value, Interval(value - away, value + away))


def _settled(found: Estimate | None, span: tuple[float, float] | None) -> float | None:
    if found is None or found.interval is None or span is None:
        return None if found is None else found.value
    edge = min(max(found.value, span[0]), span[1])
    if not found.interval.holds(edge):
        return found.value
    within = span[0] <= found.interval.low and found.interval.high <= span[1]
    return None if isinstance(found, _OfFew) and not within else edge


def _settled_clock(found: Estimate | None, band: Band | None) -> float | None:
    if found is None or found.interval is None or band is None:
        return None if found is None else found.value
    edge = _nearest_clock(found.value, band)
    # The interval may run on past 12 or below 0, so the edge is reckoned from the value.
    if not found.interval.holds(found.value + turn_between(found.value, edge)):
        return found.value
    within = all(band.holds(end % FULL_TURN) for end in (found.interval.low, found.interval.high))
    return None if isinstance(found, _OfFew) and not within else edge


@dataclass(frozen=True)
class Move:
    """What a cue changes: speed [percent of the fastball], clock [hours later], active share [percent],
    drop and side [in], strikes [share], and how much of the unsteadiness it takes away (0 to 1)."""

    speed: float = 0.0
    clock: float = 0.0
    active: float = 0.0
    drop: float = 0.0
    side: float = 0.0
    strikes: float = 0.0
    steady: float = 0.0


@dataclass(frozen=True)
class Ball:
    """Where the breaking ball is. drop, side [in], strikes [share] and steady (0 to 1) are what is missing;
    a drop or side below 0 can be spared.

    weight_of_drop, weight_of_side: less than 1 where they only follow from the clock.
    """

    speed: float | None
    clock: float | None
    active: float | None
    drop: float = 0.0
    side: float = 0.0
    strikes: float = 0.0
    steady: float = 0.0
    weight_of_drop: float = _FROM_THE_CLOCK
    weight_of_side: float = _FROM_THE_CLOCK

    def after(self, move: Move) -> Ball:
        """Return the ball after a change."""
        return replace(
            self,
            speed=None if self.speed is None else self.speed + move.speed,
            clock=None if self.clock is None else turned(self.clock, move.clock),
            active=None if self.active is None else min(100.0, max(0.0, self.active + move.active)),
            drop=self.drop - move.drop,
            side=self.side - move.side,
            strikes=self.strikes - move.strikes,
            steady=self.steady * (1 - move.steady),
        )


def shortfalls(ball: Ball, box: Box) -> Mapping[Wish, float]:
    """Return how far the ball is from its box, in steps, by what is short; 0 where nothing is."""
    speed = 0.0 if ball.speed is None else _outside(ball.speed, box.speed)
    clock = 0.0 if ball.clock is None or box.clock is None else box.clock.outside(ball.clock)
    active = 0.0 if ball.active is None else _outside(ball.active, box.active)
    return {
        "speed": speed / STEP["speed"],
        "clock": clock / STEP["clock"],
        "active": active / STEP["active"],
        "drop": ball.weight_of_drop * max(0.0, ball.drop) / STEP["drop"],
        "side": ball.weight_of_side * max(0.0, ball.side) / STEP["side"],
        "strikes": max(0.0, ball.strikes) / STEP["strikes"],
        "steady": max(0.0, ball.steady) / STEP["steady"],
    }


def right_handers(box: Box, pitcher: Pitcher) -> Box:
    """Return a box as a right-hander's."""
    turn = pitcher.hand == "left" and box.clock is not None
    return replace(box, clock=box.clock.other_hand) if turn and box.clock is not None else box


def mirror_of(pitcher: Pitcher, box: Box) -> float:
    """Return the clock opposite the fastball's for a right-hander; the middle of the box if it is unknown."""
    if pitcher.fastball_clock is None:
        return box.clock.middle if box.clock is not None else 9.0
    clock = pitcher.fastball_clock
    return opposite(other_hand_clock(clock) if pitcher.hand == "left" else clock)


def percent_of_fastball(mph: float, pitcher: Pitcher) -> float:
    """Return a change of speed [mph] in percent of the fastball."""
    return 100 * mph / (pitcher.fastball or USUAL_FASTBALL)


def ball_now(
    start: str, now: Now, target: Target, profiles: Profiles, short_of: Collection[Wish] = ()
) -> Ball:
    """Return where the ball is, for a right-hander.

    What was not measured is taken from the middle of the starting profile. A ball that backs up has no clock
    to speak of: its line to the plate comes first. `short_of` names what the coach says is missing; where no
    measurement shows it, a step or two are taken to be missing.
    """
    box = right_handers(target.box, target.pitcher)
    entry = profiles.get(start, {})
    clock = now.clock
    if clock is not None and target.pitcher.hand == "left":
        clock = other_hand_clock(clock)
    if clock is None and entry.get("clock") is not None:
        clock = read_band(entry["clock"]).middle
    active = now.active
    if active is None and entry.get("active_percent") is not None:
        active = sum(entry["active_percent"]) / 2
    speed = _SLOW if now.speed is None and start == "loopy" else now.speed
    if start == "arm-side":
        clock = None
    if start == "none-yet":
        clock = turned(box.clock.middle, _FAR_CLOCK) if clock is None and box.clock is not None else clock
        active = box.active[0] - STEP["active"] if active is None else active
    if "speed" in short_of and (speed is None or speed >= box.speed[0]):
        speed = box.speed[0] - STEP["speed"]
    if "active" in short_of and (active is None or active >= box.active[0]):
        active = box.active[0] - STEP["active"]
    drop, side = _missing_movement(clock, active, box)
    return Ball(
        speed,
        clock,
        active,
        max(drop, STEP["drop"]) if "drop" in short_of else drop,
        max(side, STEP["side"]) if "side" in short_of else side,
        _LINE_FIRST * STEP["strikes"] if "strikes" in short_of or start == "arm-side" else 0.0,
        1.0 if "steady" in short_of or start == "scattered" else 0.0,
        1.0 if "drop" in short_of else _FROM_THE_CLOCK,
        1.0 if "side" in short_of else _FROM_THE_CLOCK,
    )


def _outside(value: float, span: tuple[float, float]) -> float:
    return max(span[0] - value, value - span[1], 0.0)


def _missing_movement(clock: float | None, active: float | None, box: Box) -> tuple[float, float]:
    """Return the drop and side [in] the nearest place in the box would add; below 0 what can be spared."""
    if clock is None or active is None or box.clock is None:
        return -math.inf, -math.inf
    here = _drop_and_side(clock, active)
    near = _drop_and_side(_nearest_clock(clock, box.clock), min(max(active, box.active[0]), box.active[1]))
    ends = [_drop_and_side(end, share) for end in (box.clock.start, box.clock.end) for share in box.active]

    def missing(part: int) -> float:
        short = near[part] - here[part]
        return short if short > 0 else min(0.0, min(end[part] for end in ends) - here[part])

    return missing(0), missing(1)


def _nearest_clock(clock: float, band: Band) -> float:
    if band.holds(clock):
        return clock
    return min((band.start, band.end), key=lambda end: hours_apart(clock, end))


def _drop_and_side(clock: float, active: float) -> tuple[float, float]:
    """Return roughly how far such spin moves a ball down and to the glove side [in] (estimate)."""
    angle = math.pi / 6 * turn_between(6.0, clock)
    amount = _INCHES_AT_FULL_SHARE * active / 100
    return amount * math.cos(angle), amount * math.sin(angle)

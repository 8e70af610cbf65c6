"""Where a pitcher's breaking ball is today: the starting profile, recognised from throws.

References
----------
[1] Efron B. and Tibshirani R., An Introduction to the Bootstrap, 1993, chapter 6: drawing again.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from calculators.coaching.clock_faces import Band, read_band
from calculators.coaching.clock_statistics import mean_clock, unrolled
from calculators.coaching.intervals import SEED, redrawn
from calculators.coaching.spread import median, middle_two_thirds
from calculators.coaching.throws import Hand, Throw, written_clock
from calculators.physics.spin import other_hand_clock
from calculators.words import Message, number, say

Profiles = Mapping[str, Mapping[str, Any]]
"""The handbook's list of profiles as plain data, by slug."""

SCATTERED = "scattered"
SCATTERED_CLOCK = 1.5
SCATTERED_SPEED = 4.0
"""A pitch is scattered where two throws in three lie further apart than this [hours], [mph] (estimate)."""

FEWEST_FOR_SCATTER = 8
FEWEST_FOR_A_PROFILE = 5
_REDRAWS = 60
_MOST_DRAWN = 40

_CLOCK_STEP, _SPEED_STEP, _ACTIVE_STEP = 0.5, 3.0, 8.0


@dataclass(frozen=True)
class Recognition:
    """The profile, and how firmly the throws speak for it.

    profile: its slug; None where the throws cannot say. exact: all that was measured lies inside its bounds.
    support: the share of redrawn sets of throws that led to each profile, the largest first [1]_.
    why: what it rests on.
    """

    profile: str | None
    exact: bool
    support: tuple[tuple[str, float], ...]
    why: tuple[Message, ...]


@dataclass(frozen=True)
class _Bounds:
    """A profile as numbers, for a right-hander."""

    slug: str
    clock: Band | None
    speed: tuple[float, float]
    active: tuple[float, float]

    def outside(self, at: _Middles) -> float:
        """Return how far a pitch lies outside, in steps that a coach would notice."""
        away = _beyond(at.speed, *self.speed) / _SPEED_STEP + _beyond(at.active, *self.active) / _ACTIVE_STEP
        if self.clock is None or at.clock is None:
            return away
        return away + self.clock.outside(at.clock) / _CLOCK_STEP


def _beyond(value: float | None, low: float, high: float) -> float:
    if value is None or low <= value <= high:
        return 0.0
    return low - value if value < low else value - high


class _Middles(NamedTuple):
    """The middles of a set of throws, for a right-hander: speed [percent of the fastball], clock, active."""

    speed: float | None
    clock: float | None
    active: float | None


def recognise(
    throws: Sequence[Throw], fastball: float | None, hand: Hand, profiles: Profiles, seed: int = SEED
) -> Recognition:
    """Return the starting profile of the throws of one breaking ball.

    fastball: the same day's typical fastball [mph]; without it nothing is called slow.
    profiles: the handbook's profiles; their bounds decide.
    """
    if not throws:
        why = say("No breaking ball has been thrown yet.")
        return Recognition("none-yet", True, (("none-yet", 1.0),), (why,))
    if len(throws) < FEWEST_FOR_A_PROFILE:
        return Recognition(None, False, (), (say("Too few throws to say. Throw at least five."),))
    bounds = {slug: _bounds(slug, entry) for slug, entry in profiles.items()}
    measured = [(throw.speed, throw.steady_clock, throw.active) for throw in throws]
    known = _known(measured)
    found = _profile(known, fastball, hand, bounds)
    if found is None:
        return Recognition(None, False, (), (say("Without a clock nobody can say. Film a striped ball."),))
    sets = redrawn(measured, _REDRAWS, seed, min(len(measured), _MOST_DRAWN))
    drawn = Counter(
        one for one in (_profile(_known(some), fastball, hand, bounds) for some in sets) if one is not None
    )
    support = tuple((slug, times / _REDRAWS) for slug, times in drawn.most_common())
    if found == SCATTERED:
        why = say("The throws differ too much from each other to call them one pitch.")
        return Recognition(found, True, support, (why,))
    at = _middles(known, fastball, hand)
    return Recognition(found, bounds[found].outside(at) == 0, support, _why(at, hand))


def profile_of(throws: Sequence[Throw], fastball: float | None, hand: Hand, profiles: Profiles) -> str | None:
    """Return only the starting profile of at least one throw, as `recognise` finds it; None where nothing says."""
    known = _known([(throw.speed, throw.steady_clock, throw.active) for throw in throws])
    return _profile(known, fastball, hand, {slug: _bounds(slug, entry) for slug, entry in profiles.items()})


_Measured = tuple[float | None, float | None, float | None]
"""What decides a profile, of one throw: speed [mph], clock where it means something, active [percent]."""


class _Known(NamedTuple):
    """What was measured of a set of throws, a column each."""

    speeds: list[float]
    clocks: list[float]
    actives: list[float]


def _known(measured: Sequence[_Measured]) -> _Known:
    return _Known(
        *([value for value in column if value is not None] for column in zip(*measured, strict=True))
    )


def _scattered(known: _Known, clock: float | None) -> bool:
    """Return whether the throws are no one pitch: two in three lie too far apart in speed or around `clock`.

    They should be thrown at one asked effort. The clock of bullet spin is left out: it jumps for everybody.
    """
    if len(known.speeds) >= FEWEST_FOR_SCATTER and middle_two_thirds(known.speeds) > SCATTERED_SPEED:
        return True
    if len(known.clocks) < FEWEST_FOR_SCATTER:
        return False
    return clock is None or middle_two_thirds(unrolled(known.clocks, clock)) > SCATTERED_CLOCK


def _bounds(slug: str, entry: Mapping[str, Any]) -> _Bounds:
    clock, speed, active = (entry.get(name) for name in ("clock", "speed_percent", "active_percent"))
    return _Bounds(
        slug,
        None if clock is None else read_band(clock),
        (0, 200) if speed is None else (speed[0], speed[1]),
        (0, 100) if active is None else (active[0], active[1]),
    )


def _middles(known: _Known, fastball: float | None, hand: Hand) -> _Middles:
    clock = mean_clock(known.clocks)
    return _Middles(
        100 * median(known.speeds) / fastball if known.speeds and fastball is not None else None,
        other_hand_clock(clock) if clock is not None and hand == "left" else clock,
        median(known.actives) if known.actives else None,
    )


def _profile(known: _Known, fastball: float | None, hand: Hand, bounds: Mapping[str, _Bounds]) -> str | None:
    """Return the profile of some throws; those that need no clock or no shape come first."""
    at = _middles(known, fastball, hand)
    seen = other_hand_clock(at.clock) if at.clock is not None and hand == "left" else at.clock
    if _scattered(known, seen):
        return SCATTERED
    bullet, arm_side, slow = bounds.get("bullet"), bounds.get("arm-side"), bounds.get("loopy")
    if bullet is not None and at.active is not None and at.active < bullet.active[1]:
        return bullet.slug
    if arm_side is not None and at.clock is not None and arm_side.outside(at) == 0:
        return arm_side.slug
    if slow is not None and at.speed is not None and at.speed < slow.speed[1]:
        return slow.slug
    if at.clock is None:
        return None
    with_clock = [one for one in bounds.values() if one.clock is not None]
    return min(with_clock, key=lambda one: one.outside(at)).slug if with_clock else None


def _why(at: _Middles, hand: Hand) -> tuple[Message, ...]:
    found: list[Message] = []
    if at.clock is not None:
        clock = other_hand_clock(at.clock) if hand == "left" else at.clock
        found.append(say("The clock reads {clock}.", clock=written_clock(clock)))
    if at.speed is not None:
        found.append(say("The speed is {percent} percent of the fastball.", percent=number(at.speed)))
    if at.active is not None:
        found.append(say("{percent} percent of the spin moves the ball.", percent=number(at.active)))
    return tuple(found)

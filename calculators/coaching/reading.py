"""One pitch in one session, read: what is typical of it, how it scatters, and what was left out.

Which readings are bad is decided before anybody looks at a result: the same rule for every throw, whatever
the cue or the block, and what it sets aside is listed.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from calculators.coaching.clock_faces import hours_apart
from calculators.coaching.clock_statistics import clock_deviation, mean_clock, unrolled
from calculators.coaching.intervals import Interval, bca_interval, wilson
from calculators.coaching.ranks import Estimate, typical
from calculators.coaching.spread import Ellipse, deviation, ellipse
from calculators.coaching.throws import (
    FASTBALL,
    QUANTITIES,
    Quantity,
    Reason,
    Throw,
    of_pitch,
    strikes,
    values,
)

HALF = 0.5
GUESS_SPEED = 2.0
GUESS_CLOCK = 0.5
"""A guess counts as right within this much [mph], [hours] (common practice)."""

FEWEST_FOR_SCATTER = 3
_REDRAWS = 300


@dataclass(frozen=True)
class BadReads:
    """Which readings count as bad: those outside `limits`, in the unit of each quantity."""

    limits: Mapping[Quantity, tuple[float, float]] = field(default_factory=dict)


@dataclass(frozen=True)
class SetAside:
    """One reading set aside: which throw, which quantity, and what it read."""

    number: int
    quantity: Quantity
    value: float


def set_aside(throws: Sequence[Throw], rule: BadReads) -> tuple[tuple[Throw, ...], tuple[SetAside, ...]]:
    """Return the throws with bad readings marked as missing, and every reading that was set aside."""
    aside: list[SetAside] = []
    kept: list[Throw] = []
    for throw in throws:
        bad = [
            SetAside(throw.number, name, value)
            for name, (low, high) in rule.limits.items()
            if (value := getattr(throw, name)) is not None and not low <= value <= high
        ]
        if bad:
            changes: dict[str, Any] = {one.quantity: None for one in bad}
            reasons = (*throw.missing, *((one.quantity, "bad read") for one in bad))
            throw = replace(throw, **changes, missing=reasons)
        aside.extend(bad)
        kept.append(throw)
    return tuple(kept), tuple(aside)


@dataclass(frozen=True)
class Summary:
    """One quantity over some throws.

    typical: the middle and its interval. deviation: from throw to throw; None with fewer than two.
    count: how many were measured. missing: how many were not, by reason.
    """

    typical: Estimate
    deviation: float | None
    count: int
    missing: Mapping[Reason, int]


@dataclass(frozen=True)
class Cloud:
    """The ellipse that holds half of the throws by their movement up and to the glove side [in]."""

    ellipse: Ellipse
    count: int


@dataclass(frozen=True)
class Reading:
    """One pitch in one session.

    summaries: by quantity; one that was never measured is absent. clock is in [0, 12), its interval may run
    on past 12 or below 0. fastball: the same session's typical fastball [mph], of `fastballs` measured ones.
    speed_percent: of that fastball. strikes, called: counts, with the interval of their share (0 to 1).
    cloud: how the movement scatters. guesses_right, guesses: the pitcher's own guesses of speed and clock.
    """

    pitch: str
    throws: int
    summaries: Mapping[Quantity, Summary]
    fastball: Estimate | None
    fastballs: int
    speed_percent: Estimate | None
    strikes: int
    called: int
    strike_share: Interval | None
    cloud: Cloud | None
    guesses_right: int
    guesses: int


def read(throws: Sequence[Throw], pitch: str) -> Reading:
    """Return the reading of one pitch of a session.

    throws: all throws of the session, fastballs among them. pitch: which one to read.
    """
    chosen = of_pitch(throws, pitch)
    summaries = {name: found for name in QUANTITIES if (found := summarize(chosen, name)) is not None}
    speeds = values(of_pitch(throws, FASTBALL), "speed")
    fastball = typical(speeds) if speeds else None
    speed = summaries.get("speed")
    hits, called = strikes(chosen)
    right, guesses = _guesses(chosen)
    return Reading(
        pitch,
        len(chosen),
        summaries,
        fastball,
        len(speeds),
        None if speed is None or fastball is None else _percent(speed.typical, fastball),
        hits,
        called,
        wilson(hits, called),
        cloud(chosen),
        right,
        guesses,
    )


def summarize(throws: Sequence[Throw], quantity: Quantity) -> Summary | None:
    """Return one quantity over some throws; None where it was measured on none."""
    measured = values(throws, quantity)
    if not measured:
        return None
    reasons = [reason for throw in throws if (reason := throw.why_missing(quantity)) is not None]
    return Summary(
        typical_clock(measured) if quantity == "clock" else typical(measured),
        _scatter(measured, quantity),
        len(measured),
        dict(Counter(reasons)),
    )


def typical_clock(clocks: Sequence[float]) -> Estimate:
    """Return the mean clock [hours] of at least one clock, and its interval on the line through it.

    The interval's ends may lie below 0 or above 12, so that low stays below high.
    """
    middle = mean_clock(clocks)
    if middle is None:
        return Estimate(clocks[0], Interval(0, 12))
    around = typical(unrolled(clocks, middle)).interval
    return Estimate(middle, None if around is None else Interval(middle + around.low, middle + around.high))


def cloud(throws: Sequence[Throw]) -> Cloud | None:
    """Return how the movement scatters; None with fewer than three throws measured both ways."""
    pairs = _movements(throws)
    if len(pairs) < FEWEST_FOR_SCATTER:
        return None
    return Cloud(_ellipse(pairs), len(pairs))


def area_interval(throws: Sequence[Throw]) -> Interval | None:
    """Return the interval of the cloud's area [square inches]; None where there is no cloud.

    Slow beside the rest, and with ten throws it is short: it misses more often than it says.
    """
    pairs = _movements(throws)
    if len(pairs) < FEWEST_FOR_SCATTER:
        return None
    return bca_interval(pairs, lambda drawn: _ellipse(drawn).area, resamples=_REDRAWS)


def deviation_interval(throws: Sequence[Throw], quantity: Quantity) -> Interval | None:
    """Return the interval of a quantity's deviation from throw to throw; None with fewer than three values.

    Slow beside the rest, and with ten throws it is short: it misses more often than it says.
    """
    measured = values(throws, quantity)
    if len(measured) < FEWEST_FOR_SCATTER:
        return None
    middle = mean_clock(measured) if quantity == "clock" else None
    on_a_line = measured if middle is None else unrolled(measured, middle)
    return bca_interval(on_a_line, deviation, resamples=_REDRAWS)


def _movements(throws: Sequence[Throw]) -> list[tuple[float, float]]:
    return [(throw.up, throw.glove) for throw in throws if throw.up is not None and throw.glove is not None]


def _ellipse(pairs: Sequence[tuple[float, float]]) -> Ellipse:
    return ellipse([up for up, _ in pairs], [glove for _, glove in pairs], HALF)


def _scatter(measured: Sequence[float], quantity: Quantity) -> float | None:
    if len(measured) < 2:
        return None
    return clock_deviation(measured) if quantity == "clock" else deviation(measured)


def _percent(speed: Estimate, fastball: Estimate) -> Estimate:
    """Return one speed in percent of another; the give or take of both, as shares, adds as squares."""
    percent = 100 * speed.value / fastball.value
    if speed.interval is None or fastball.interval is None:
        return Estimate(percent, None)

    def off(one: Estimate, end: float) -> float:
        return (end - one.value) / one.value

    below = math.hypot(off(speed, speed.interval.low), off(fastball, fastball.interval.high))
    above = math.hypot(off(speed, speed.interval.high), off(fastball, fastball.interval.low))
    return Estimate(percent, Interval(percent * (1 - below), percent * (1 + above), speed.interval.level))


def _guesses(throws: Sequence[Throw]) -> tuple[int, int]:
    """Return how many of the pitcher's own guesses were right, and how many could be judged."""
    judged = [
        abs(throw.guess_speed - throw.speed) <= GUESS_SPEED
        for throw in throws
        if throw.guess_speed is not None and throw.speed is not None
    ] + [
        hours_apart(throw.guess_clock, throw.clock) <= GUESS_CLOCK + 1e-9
        for throw in throws
        if throw.guess_clock is not None and throw.clock is not None
    ]
    return sum(judged), len(judged)

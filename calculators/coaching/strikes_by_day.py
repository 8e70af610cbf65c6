"""Strikes with and without a cue on several days: each day's throws are compared with that day's only.

On a good day more of everything is a strike. Thrown together, days with many cued throws would speak for the
cue and days with few against it.

References
----------
[1] Mantel N. and Haenszel W., J. Natl. Cancer Inst. 22, 1959: how much each day counts, and the chance.
[2] Sato T., Biometrics 45, 1989: the variance of the difference put together so.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calculators.coaching.intervals import LEVEL, Interval, normal_quantile


@dataclass(frozen=True)
class CalledDay:
    """The called throws of one day: strikes and throws, plain and with the cue; at least one of each kind."""

    plain_strikes: int
    plain: int
    cued_strikes: int
    cued: int

    @property
    def weight(self) -> float:
        """How much the day counts [1]_."""
        return self.plain * self.cued / (self.plain + self.cued)


@dataclass(frozen=True)
class StrikeChange:
    """Strikes as shares, 0 to 1: plain, with the cue, and the change with its interval.

    weight: the throws behind it; as many as from two kinds of twice that size each.
    """

    plain: float
    cued: float
    change: float
    interval: Interval
    weight: float


def change_of_strikes(days: Sequence[CalledDay], level: float = LEVEL) -> StrikeChange:
    """Return how much larger the share of strikes was with the cue, day by day [1]_ [2]_. At least one day."""
    weight = sum(day.weight for day in days)
    plain = sum(day.weight * day.plain_strikes / day.plain for day in days) / weight
    cued = sum(day.weight * day.cued_strikes / day.cued for day in days) / weight
    change = cued - plain
    away = normal_quantile((1 + level) / 2) * math.sqrt(max(0.0, _variance(days, change))) / weight
    interval = Interval(max(-1.0, change - away), min(1.0, change + away), level)
    return StrikeChange(plain, cued, change, interval, weight)


def _variance(days: Sequence[CalledDay], change: float) -> float:
    """Return the variance of the change, times the square of the weight [2]_."""
    found = 0.0
    for day in days:
        thrown = day.plain + day.cued
        uneven = (
            day.plain_strikes * day.cued**2
            - day.cued_strikes * day.plain**2
            + day.plain * day.cued * (day.plain - day.cued) / 2
        )
        both = day.cued_strikes * (day.plain - day.plain_strikes) + day.plain_strikes * (
            day.cued - day.cued_strikes
        )
        found += change * uneven / thrown**2 + both / (2 * thrown)
    return found


def chance_of_strikes(days: Sequence[CalledDay]) -> float:
    """Return the chance of strikes this uneven if each day's throws were shuffled among themselves.

    Two-sided and exact: every way to deal out each day's strikes is counted.
    """
    ways = [1]
    expected = 0.0
    for day in days:
        strikes, thrown = day.plain_strikes + day.cued_strikes, day.plain + day.cued
        expected += strikes * day.cued / thrown
        dealt = [
            math.comb(strikes, hits) * math.comb(thrown - strikes, day.cued - hits)
            for hits in range(day.cued + 1)
        ]
        ways = _both(ways, dealt)
    away = abs(sum(day.cued_strikes for day in days) - expected)
    as_far = sum(count for hits, count in enumerate(ways) if abs(hits - expected) >= away - 1e-9)
    return as_far / sum(ways)


def _both(first: Sequence[int], second: Sequence[int]) -> list[int]:
    """Return in how many ways each sum of two counts comes about."""
    found = [0] * (len(first) + len(second) - 1)
    for here, ways in enumerate(first):
        for there, others in enumerate(second):
            found[here + there] += ways * others
    return found

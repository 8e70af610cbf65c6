"""Give or take: intervals for a share of throws, and for any summary by drawing the throws again.

The draws come from a fixed seed and use only `random.Random.random`, whose sequence Python promises to keep,
so that a phone and a laptop show the same interval.

References
----------
[1] Wilson E.B., Probable inference, the law of succession, and statistical inference, JASA 22, 1927.
[2] Newcombe R.G., Interval estimation for the difference between independent proportions, Statistics in
    Medicine 17, 1998, 873-890: method 10.
[3] Efron B. and Tibshirani R., An Introduction to the Bootstrap, 1993: percentile intervals in chapter 13,
    BCa intervals in section 14.3.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeVar

from calculators.coaching.spread import quantile

T = TypeVar("T")

LEVEL = 0.90
SEED = 1868
RESAMPLES = 1000


@dataclass(frozen=True)
class Interval:
    """From `low` to `high`: such an interval misses the truth in one session in ten (at level 0.90)."""

    low: float
    high: float
    level: float = LEVEL

    def holds(self, value: float) -> bool:
        """Return whether the interval contains a value."""
        return self.low <= value <= self.high


def normal_share_above(deviations: float) -> float:
    """Return the share of a normal spread that lies above so many standard deviations."""
    return math.erfc(deviations / math.sqrt(2)) / 2


@lru_cache(maxsize=16)
def normal_quantile(share: float) -> float:
    """Return the standard deviations below which a share (above 0, below 1) of a normal spread lies."""
    if share > 0.5:
        return -normal_quantile(1 - share)
    low, high = -40.0, 0.0
    for _ in range(70):
        middle = (low + high) / 2
        low, high = (middle, high) if normal_share_above(-middle) < share else (low, middle)
    return (low + high) / 2


def two_sided(level: float) -> float:
    """Return how many standard deviations either way hold the share `level` of a normal spread."""
    return normal_quantile((1 + level) / 2)


def wilson(hits: int, throws: int, level: float = LEVEL) -> Interval | None:
    """Return the interval for a share, 0 to 1, from hits among throws [1]_; None without a throw."""
    if throws == 0:
        return None
    z = two_sided(level)
    share, weight = hits / throws, z * z / throws
    centre = (share + weight / 2) / (1 + weight)
    half = z * math.sqrt(share * (1 - share) / throws + weight / (4 * throws)) / (1 + weight)
    low = 0.0 if hits == 0 else centre - half
    high = 1.0 if hits == throws else centre + half
    return Interval(low, high, level)


def share_difference(
    hits: int, throws: int, other_hits: int, other_throws: int, level: float = LEVEL
) -> Interval | None:
    """Return the interval for how much larger the first share is than the other [2]_; None without throws."""
    first, other = wilson(hits, throws, level), wilson(other_hits, other_throws, level)
    if first is None or other is None:
        return None
    share, other_share = hits / throws, other_hits / other_throws
    difference = share - other_share
    return Interval(
        difference - math.hypot(share - first.low, other.high - other_share),
        difference + math.hypot(first.high - share, other_share - other.low),
        level,
    )


def redrawn(
    throws: Sequence[T], resamples: int, seed: int = SEED, size: int | None = None
) -> Iterator[list[T]]:
    """Yield sets drawn from the throws with replacement, each as large as the throws or of `size`."""
    draw, count = random.Random(seed).random, len(throws)
    for _ in range(resamples):
        yield [throws[int(draw() * count)] for _ in range(size or count)]


def percentile_interval(
    throws: Sequence[T],
    summary: Callable[[list[T]], float],
    level: float = LEVEL,
    resamples: int = RESAMPLES,
    seed: int = SEED,
) -> Interval:
    """Return the percentile interval of a summary of at least one throw [3]_."""
    drawn = sorted(map(summary, redrawn(throws, resamples, seed)))
    return Interval(quantile(drawn, (1 - level) / 2), quantile(drawn, (1 + level) / 2), level)


def bca_interval(
    throws: Sequence[T],
    summary: Callable[[list[T]], float],
    level: float = LEVEL,
    resamples: int = RESAMPLES,
    seed: int = SEED,
) -> Interval:
    """Return the bias-corrected and accelerated interval of a summary of at least two throws [3]_.

    It allows for a summary whose scatter grows with its size, such as an area or a deviation. Where every
    draw gives the same value, that value is both ends.
    """
    drawn = sorted(map(summary, redrawn(throws, resamples, seed)))
    found = summary(list(throws))
    below = sum(value < found for value in drawn)
    level_with = sum(value == found for value in drawn)
    share_below = (below + level_with / 2) / resamples
    if not 0 < share_below < 1 or drawn[0] == drawn[-1]:
        return Interval(drawn[0], drawn[-1], level)
    bias, acceleration = normal_quantile(share_below), _acceleration(throws, summary)

    def corrected(share: float) -> float:
        shifted = bias + normal_quantile(share)
        return 1 - normal_share_above(bias + shifted / (1 - acceleration * shifted))

    low, high = corrected((1 - level) / 2), corrected((1 + level) / 2)
    return Interval(quantile(drawn, low), quantile(drawn, high), level)


def _acceleration(throws: Sequence[T], summary: Callable[[list[T]], float]) -> float:
    left_one_out = [summary([*throws[:index], *throws[index + 1 :]]) for index in range(len(throws))]
    centre = math.fsum(left_one_out) / len(left_one_out)
    squares = math.fsum((centre - value) ** 2 for value in left_one_out)
    cubes = math.fsum((centre - value) ** 3 for value in left_one_out)
    return cubes / (6 * squares**1.5) if squares > 0 else 0.0

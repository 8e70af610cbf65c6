"""Middles and differences by order alone: no shape of scatter is assumed, and no random draw is needed.

With ten throws a bootstrap interval of a mean is too short and one of a median too long; these intervals keep
their promise for any scatter. Up to `MOST_EXACT` throws every way of mixing the throws is counted; above that
the normal approximation serves, and `MOST_VALUES` evenly spread values stand for a larger group.

References
----------
[1] Hodges J.L. and Lehmann E.L., Estimates of location based on rank tests, Ann. Math. Stat. 34, 1963.
[2] Hollander M., Wolfe D.A. and Chicken E., Nonparametric Statistical Methods, 2014: intervals in sections
    3.3 (one group) and 4.3 (two groups), ties in section 4.1.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from calculators.coaching.intervals import LEVEL, Interval, normal_share_above, two_sided
from calculators.coaching.spread import median

MOST_EXACT = 60
MOST_VALUES = 64


@dataclass(frozen=True)
class Estimate:
    """A value and its interval; no interval where there are too few throws for one."""

    value: float
    interval: Interval | None


def typical(values: Sequence[float], level: float = LEVEL) -> Estimate:
    """Return the typical value of at least one: the middle of the averages of all pairs [1]_ [2]_."""
    stand_ins = _stand_ins(values)
    count = len(stand_ins)
    averages = sorted((stand_ins[i] + stand_ins[j]) / 2 for i in range(count) for j in range(i, count))
    pairs = len(values) * (len(values) + 1) // 2
    return _estimate(averages, _one_group_place(len(values), level), pairs, level)


def shift(plain: Sequence[float], cued: Sequence[float], level: float = LEVEL) -> Estimate:
    """Return how much higher `cued` is than `plain`: the middle of all differences between them [1]_ [2]_."""
    without = _stand_ins(plain)
    differences = sorted(value - other for value in _stand_ins(cued) for other in without)
    pairs = len(plain) * len(cued)
    return _estimate(differences, _two_group_place(len(plain), len(cued), level), pairs, level)


def _stand_ins(values: Sequence[float]) -> list[float]:
    """Return the values in order; of a large group, some of them, spread evenly, to stand for all."""
    ordered, count = sorted(values), len(values)
    if count <= MOST_VALUES:
        return ordered
    return [ordered[(2 * i + 1) * count // (2 * MOST_VALUES)] for i in range(MOST_VALUES)]


def _estimate(ordered: Sequence[float], from_end: int | None, pairs: int, level: float) -> Estimate:
    """Return the middle, and as interval the values `from_end` places from either end, counted in `pairs`."""
    if from_end is None:
        return Estimate(median(ordered), None)
    place = from_end if pairs == len(ordered) else max(1, from_end * len(ordered) // pairs)
    return Estimate(median(ordered), Interval(ordered[place - 1], ordered[-place], level))


def chance(plain: Sequence[float], cued: Sequence[float]) -> float:
    """Return the chance of a difference at least this large if the throws were shuffled between the groups.

    Two-sided, on the sum of ranks; equal values share their ranks. Exact up to `MOST_EXACT` throws in all.
    """
    ranks = _double_ranks([*plain, *cued])
    size, count = len(cued), len(ranks)
    double_sum, expected = sum(ranks[len(plain) :]), size * (count + 1)
    away = abs(double_sum - expected)
    if away == 0:
        return 1.0
    if count <= MOST_EXACT:
        sums = _sums_of_subsets(tuple(sorted(ranks)), size)
        as_far = sum(sums[: max(0, expected - away + 1)]) + sum(sums[expected + away :])
        return as_far / math.comb(count, size)
    variance = _rank_variance(ranks, size)
    if variance == 0:
        return 1.0
    return min(1.0, 2 * normal_share_above(max(0.0, away / 2 - 0.5) / math.sqrt(variance)))


def _double_ranks(values: Sequence[float]) -> list[int]:
    """Return twice the rank of each value, whole also where equal values share a rank."""
    ordered = sorted(values)
    first = {value: place for place, value in reversed(list(enumerate(ordered, start=1)))}
    last = {value: place for place, value in enumerate(ordered, start=1)}
    return [first[value] + last[value] for value in values]


def _rank_variance(double_ranks: Sequence[int], size: int) -> float:
    """Return the variance of the rank sum of `size` values drawn from all."""
    count = len(double_ranks)
    squares = sum((rank - (count + 1)) ** 2 for rank in double_ranks) / 4
    return size * (count - size) * squares / (count * (count - 1))


@lru_cache(maxsize=64)
def _sums_of_subsets(numbers: tuple[int, ...], size: int) -> tuple[int, ...]:
    """Return, for each total from 0, how many ways there are to choose `size` numbers with that sum.

    All totals are held as the digits of one large whole number, so that adding is one step.
    """
    width = 8 * (len(numbers) // 8 + 1)
    by_size = [1] + [0] * size
    for taken, number in enumerate(numbers, start=1):
        for chosen in range(min(size, taken), 0, -1):
            by_size[chosen] += by_size[chosen - 1] << number * width
    return _digits(by_size[size], width)


@lru_cache(maxsize=64)
def _sums_of_signs(count: int) -> tuple[int, ...]:
    """Return, for each total from 0, how many sets of the ranks 1 to `count` have that sum."""
    width = 8 * (count // 8 + 1)
    ways = 1
    for rank in range(1, count + 1):
        ways += ways << rank * width
    return _digits(ways, width)


def _digits(packed: int, width: int) -> tuple[int, ...]:
    size = width // 8
    data = packed.to_bytes((packed.bit_length() // width + 1) * size, "little")
    return tuple(int.from_bytes(data[at : at + size], "little") for at in range(0, len(data), size))


def _one_group_place(count: int, level: float) -> int | None:
    if count > MOST_EXACT:
        middle = count * (count + 1) / 4
        return math.floor(middle - two_sided(level) * math.sqrt(middle * (2 * count + 1) / 6))
    return _place(_sums_of_signs(count), 2**count, level)


def _two_group_place(count: int, other: int, level: float) -> int | None:
    if count + other > MOST_EXACT:
        variance = count * other * (count + other + 1) / 12
        return math.floor(count * other / 2 - two_sided(level) * math.sqrt(variance))
    size = min(count, other)
    least = size * (size + 1) // 2
    sums = _sums_of_subsets(tuple(range(1, count + other + 1)), size)
    return _place(sums[least:], math.comb(count + other, size), level)


def _place(ways: Sequence[int], of: int, level: float) -> int | None:
    """Return how many places from either end the interval ends, None where even the ends do not suffice."""
    allowed, used = (1 - level) / 2 * of, 0
    for place, more in enumerate(ways):
        used += more
        if used > allowed:
            return place or None
    return None

"""Rank estimates and chances against printed tables and against scipy."""

from __future__ import annotations

import itertools
import math
import random

import numpy as np
import pytest
from scipy import stats

from calculators.coaching.ranks import chance, shift, typical


def some(seed: int, count: int, middle: float = 75.0) -> list[float]:
    draw = random.Random(seed)
    return [draw.gauss(middle, 1.4) for _ in range(count)]


def all_differences(plain: list[float], cued: list[float]) -> list[float]:
    return sorted(b - a for a, b in itertools.product(plain, cued))


@pytest.mark.parametrize(
    ("count", "other", "level", "critical"),
    [
        # Printed tables of Mann & Whitney's U, two-sided 10 % and 5 %.
        (5, 5, 0.90, 4),
        (5, 5, 0.95, 2),
        (8, 8, 0.90, 15),
        (8, 8, 0.95, 13),
        (10, 10, 0.90, 27),
        (10, 10, 0.95, 23),
        (10, 20, 0.90, 62),
        (10, 20, 0.95, 55),
        (20, 20, 0.95, 127),
    ],
)
def test_interval_ends_where_the_printed_table_says(
    count: int, other: int, level: float, critical: int
) -> None:
    plain, cued = some(1, other), some(2, count, 76.0)
    found = shift(plain, cued, level)
    differences = all_differences(plain, cued)
    assert found.interval is not None
    assert (found.interval.low, found.interval.high) == (differences[critical], differences[-critical - 1])
    assert found.value == pytest.approx(float(np.median(differences)))


@pytest.mark.parametrize(
    ("count", "level", "critical"),
    [(5, 0.90, 0), (6, 0.90, 2), (10, 0.90, 10), (10, 0.95, 8), (20, 0.90, 60)],
)
def test_typical_value_ends_where_wilcoxons_table_says(count: int, level: float, critical: int) -> None:
    # Printed tables of Wilcoxon's signed ranks, two-sided.
    values = some(3, count)
    averages = sorted((a + b) / 2 for a, b in itertools.combinations_with_replacement(values, 2))
    found = typical(values, level)
    assert found.interval is not None
    assert (found.interval.low, found.interval.high) == pytest.approx(
        (averages[critical], averages[-critical - 1])
    )
    assert found.value == pytest.approx(float(np.median(averages)))


def test_four_throws_cannot_carry_an_interval() -> None:
    # The table has no entry: even the extremes of four miss the middle one time in eight.
    assert typical(some(4, 4)).interval is None
    assert shift(some(4, 2), some(5, 3)).interval is None


@pytest.mark.parametrize(("plain", "cued"), [(3, 3), (10, 10), (20, 10), (10, 5)])
def test_chance_is_scipys_exact_one(plain: int, cued: int) -> None:
    a, b = some(plain, plain), some(cued + 50, cued, 75.8)
    assert chance(a, b) == pytest.approx(stats.mannwhitneyu(a, b, method="exact").pvalue, rel=1e-9)


def test_chance_with_equal_values_is_that_of_all_shuffles() -> None:
    # Speeds in whole mph: scipy's permutation test over all 12!/(8!4!) ways, on the sum of shared ranks.
    plain, cued = [74, 75, 75, 76, 75, 74, 76, 75], [76, 76, 77, 75]
    shared = stats.rankdata([*plain, *cued])
    rank_of = dict(zip([*plain, *cued], shared, strict=True))

    def rank_sum(first, second, axis=-1):
        return np.sum(np.vectorize(rank_of.get)(second), axis=axis)

    expected = 4 * 13 / 2
    theirs = stats.permutation_test(
        (np.array(plain), np.array(cued)),
        lambda first, second, axis=-1: np.abs(rank_sum(first, second, axis) - expected),
        alternative="greater",
        n_resamples=np.inf,
        vectorized=True,
    )
    assert chance(plain, cued) == pytest.approx(theirs.pvalue, rel=1e-9)


def test_chance_of_many_throws_is_scipys_normal_one() -> None:
    a, b = [round(value) for value in some(6, 300)], [round(value) for value in some(7, 150, 75.2)]
    theirs = stats.mannwhitneyu(b, a, method="asymptotic", use_continuity=True).pvalue
    assert chance(a, b) == pytest.approx(theirs, rel=1e-9)


def test_no_difference_at_all_is_no_surprise() -> None:
    assert chance([75.0] * 6, [75.0] * 6) == 1.0
    assert chance([75.0] * 60, [75.0] * 60) == 1.0


@pytest.mark.parametrize(("plain", "cued"), [(100, 70), (400, 250), (2000, 900)])
def test_large_groups_lose_next_to_nothing_to_their_stand_ins(plain: int, cued: int) -> None:
    a, b = some(8, plain), some(9, cued, 75.7)
    differences = np.sort(np.subtract.outer(b, a).ravel())
    found = shift(a, b)
    assert found.interval is not None
    # Normal approximation of U: nm / 2 - 1.645 sqrt(nm (n + m + 1) / 12).
    place = math.floor(plain * cued / 2 - 1.6449 * (plain * cued * (plain + cued + 1) / 12) ** 0.5)
    error = 1.4 * (1 / plain + 1 / cued) ** 0.5
    assert found.value == pytest.approx(float(np.median(differences)), abs=0.15 * error)
    assert found.interval.low == pytest.approx(differences[place - 1], abs=0.25 * error)
    assert found.interval.high == pytest.approx(differences[-place], abs=0.25 * error)

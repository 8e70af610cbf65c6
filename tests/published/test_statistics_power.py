"""The smallest change a number of throws can show, against Cohen's printed table and scipy's power of the t test."""

from __future__ import annotations

import math

import pytest
from scipy import stats

from calculators.coaching.comparison import smallest_change

BY_RANK = math.pi / 3
"""Hodges and Lehmann, Ann. Math. Stat. 27, 1956: throws by rank in place of each throw of a t test."""
STEPS = 0.5
"""Throws of each kind that the steps of a rank test's chances cost (by simulation, tests/coaching)."""


@pytest.mark.parametrize(
    ("needed", "deviations"),
    [(9, 1.4), (12, 1.2), (17, 1.0), (26, 0.8), (33, 0.7), (45, 0.6), (64, 0.5), (100, 0.4), (393, 0.2)],
)
def test_a_change_needs_the_throws_that_cohen_prints_and_a_few_for_going_by_rank(
    needed: int, deviations: float
) -> None:
    # Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 2: so many in each of two
    # groups find a difference of so many deviations in a t test with power 0.80 at 5 % two-sided.
    throws = BY_RANK * needed + STEPS
    assert smallest_change(1.0, throws, throws) == pytest.approx(deviations, rel=0.012)


@pytest.mark.parametrize(("plain", "cued"), [(5, 5), (10, 10), (20, 10), (50, 50)])
def test_a_t_test_of_as_much_worth_finds_that_change_four_times_in_five(plain: int, cued: int) -> None:
    # The power of a t test is that of the noncentral t distribution, here scipy's.
    worth = 1 / (BY_RANK * (1 / (plain - STEPS) + 1 / (cued - STEPS)))
    degrees = plain + cued - 2
    away = smallest_change(1.0, plain, cued) * math.sqrt(worth)
    power = stats.nct.sf(stats.t.ppf(0.975, degrees), degrees, away)
    assert power == pytest.approx(0.80, abs=0.005)

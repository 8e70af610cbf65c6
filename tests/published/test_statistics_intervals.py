"""Intervals against published worked examples and against scipy."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from calculators.coaching.intervals import (
    bca_interval,
    normal_quantile,
    percentile_interval,
    redrawn,
    share_difference,
    two_sided,
    wilson,
)
from calculators.coaching.spread import mean

# Efron & Tibshirani, An Introduction to the Bootstrap, 1993, table 14.1: test A of 26 children.
CHILDREN = [
    48,
    36,
    20,
    29,
    42,
    42,
    20,
    42,
    22,
    41,
    45,
    14,
    6,
    0,
    33,
    28,
    34,
    4,
    32,
    24,
    47,
    41,
    24,
    26,
    30,
    41,
]


def plain_variance(values: list[float]) -> float:
    middle = mean(values)
    return sum((value - middle) ** 2 for value in values) / len(values)


@pytest.mark.parametrize(
    ("hits", "throws", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (1, 29, 0.0061, 0.1718)],
)
def test_share_interval_of_newcombe(hits: int, throws: int, low: float, high: float) -> None:
    # Newcombe 1998, Statistics in Medicine 17:857-872, table I, method 3, 95 %.
    found = wilson(hits, throws, 0.95)
    assert found is not None
    assert (found.low, found.high) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize("throws", [1, 7, 10, 40])
def test_share_interval_agrees_with_scipy(throws: int) -> None:
    for hits in range(throws + 1):
        theirs = stats.binomtest(hits, throws).proportion_ci(0.90, method="wilson")
        ours = wilson(hits, throws)
        assert ours is not None
        assert (ours.low, ours.high) == pytest.approx((theirs.low, theirs.high), abs=1e-12)


def test_strikes_of_ten_throws_may_be_off_by_thirty_points() -> None:
    # The simple formula 1.96 * sqrt(p (1 - p) / n) gives 31, 22, 18, 14 and 10 points for these counts; the
    # score interval is a little shorter in the middle.
    for throws, points in ((10, 31), (20, 22), (30, 18), (50, 14), (100, 10)):
        found = wilson(throws // 2, throws, 0.95)
        assert found is not None
        assert 100 * (found.high - found.low) / 2 == pytest.approx(points, abs=5)


def test_no_throw_gives_no_interval() -> None:
    assert wilson(0, 0) is None
    assert share_difference(0, 0, 1, 2) is None


def test_difference_of_two_shares_of_newcombe() -> None:
    # Newcombe 1998, Statistics in Medicine 17:873-890, table II, contrast 56/70 - 48/80, method 10, 95 %.
    found = share_difference(56, 70, 48, 80, 0.95)
    assert found is not None
    assert (found.low, found.high) == pytest.approx((0.0524, 0.3339), abs=5e-5)


@pytest.mark.parametrize(
    ("level", "deviations"), [(0.80, 1.2816), (0.90, 1.6449), (0.95, 1.9600), (0.99, 2.5758)]
)
def test_normal_table(level: float, deviations: float) -> None:
    # Any printed table of the normal distribution.
    assert two_sided(level) == pytest.approx(deviations, abs=5e-5)


@pytest.mark.parametrize("share", [1e-12, 1e-4, 0.025, 0.3, 0.5, 0.8, 0.975, 0.9999])
def test_normal_quantile_agrees_with_scipy(share: float) -> None:
    assert normal_quantile(share) == pytest.approx(stats.norm.ppf(share), abs=1e-9)


def test_bootstrap_intervals_of_a_variance_as_printed() -> None:
    # Efron & Tibshirani 1993, table 14.2, 90 %: percentile (100.8, 233.9), BCa (115.8, 259.6), for a variance
    # of 171.5. Their 2000 draws leave each end open by about 4, the far end of the BCa interval by about 8.
    assert plain_variance(CHILDREN) == pytest.approx(171.5, abs=0.05)
    plain = percentile_interval(CHILDREN, plain_variance, 0.90, 10_000)
    assert (plain.low, plain.high) == pytest.approx((100.8, 233.9), abs=4)
    corrected = bca_interval(CHILDREN, plain_variance, 0.90, 10_000)
    assert corrected.low == pytest.approx(115.8, abs=4)
    assert corrected.high == pytest.approx(259.6, abs=8)


@pytest.mark.parametrize(("ours", "method"), [(percentile_interval, "percentile"), (bca_interval, "BCa")])
def test_bootstrap_intervals_agree_with_scipy(ours, method: str) -> None:
    theirs = stats.bootstrap(
        (np.array(CHILDREN, float),), np.var, confidence_level=0.90, method=method, n_resamples=9999, rng=1
    ).confidence_interval
    found = ours(CHILDREN, plain_variance, 0.90, 9999)
    assert (found.low, found.high) == pytest.approx((theirs.low, theirs.high), rel=0.02)


def test_draws_are_the_same_on_every_machine() -> None:
    # Python documents that Random(seed).random() keeps its sequence; the Mersenne Twister is Matsumoto &
    # Nishimura 1998. numpy's own implementation of it gives the same draws from the same key.
    twister = np.random.RandomState()
    twister.seed([1868])
    theirs = [int(share * 26) for share in twister.random_sample(26)]
    (drawn,) = redrawn(range(26), 1, 1868)
    assert drawn == theirs


def test_throws_that_are_all_alike_have_an_interval_of_no_length() -> None:
    found = bca_interval([75.0] * 10, mean)
    assert (found.low, found.high) == (75.0, 75.0)

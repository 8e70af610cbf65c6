"""Quantiles, deviations and ellipses against numpy and scipy."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calculators.coaching.spread import (
    deviation,
    ellipse,
    median,
    middle_two_thirds,
    pooled_deviation,
    quantile,
)

numbers = st.lists(st.floats(-100, 100), min_size=1, max_size=40)


@given(numbers, st.floats(0, 1))
def test_quantiles_are_numpys_median_unbiased_ones(values: list[float], share: float) -> None:
    theirs = np.quantile(values, share, method="median_unbiased")
    assert quantile(values, share) == pytest.approx(theirs, abs=1e-9)


@given(numbers)
def test_median_is_numpys(values: list[float]) -> None:
    assert median(values) == pytest.approx(float(np.median(values)), abs=1e-12)


@given(st.lists(st.floats(-100, 100), min_size=2, max_size=40))
def test_deviation_is_numpys_with_one_less(values: list[float]) -> None:
    assert deviation(values) == pytest.approx(float(np.std(values, ddof=1)), abs=1e-9)


def test_pooled_deviation_is_the_one_of_student() -> None:
    # The t test of two groups rests on it: scipy's standard error is this times sqrt(1/n + 1/m).
    a, b = [74.0, 75.5, 76.0, 75.0], [77.0, 78.5, 76.5]
    test = stats.ttest_ind(b, a)
    error = (np.mean(b) - np.mean(a)) / test.statistic
    assert pooled_deviation([a, b]) * math.sqrt(1 / 4 + 1 / 3) == pytest.approx(error)


def cloud(seed: int, count: int) -> tuple[list[float], list[float]]:
    draw = random.Random(seed)
    ups = [draw.gauss(-10, 2) for _ in range(count)]
    return ups, [0.6 * up + draw.gauss(10, 2.5) for up in ups]


@pytest.mark.parametrize("share", [0.5, 0.9])
def test_ellipse_is_that_of_the_covariance_matrix(share: float) -> None:
    ups, gloves = cloud(1, 30)
    matrix = np.cov(ups, gloves)
    reach = stats.chi2.ppf(share, 2)
    found = ellipse(ups, gloves, share)
    assert found.area == pytest.approx(math.pi * reach * math.sqrt(np.linalg.det(matrix)), rel=1e-9)
    lengths, axes = np.linalg.eigh(matrix)
    assert (found.short, found.long) == pytest.approx(np.sqrt(reach * lengths), rel=1e-9)
    assert abs(np.dot(axes[:, 1], (math.cos(found.turned), math.sin(found.turned)))) == pytest.approx(1)


def test_ellipse_holds_its_share_of_many_throws() -> None:
    ups, gloves = cloud(2, 20_000)
    found = ellipse(ups, gloves, 0.5)
    turn = math.cos(found.turned), math.sin(found.turned)
    inside = 0
    for up, glove in zip(ups, gloves, strict=True):
        x, y = up - found.centre[0], glove - found.centre[1]
        along, across = x * turn[0] + y * turn[1], y * turn[0] - x * turn[1]
        inside += (along / found.long) ** 2 + (across / found.short) ** 2 <= 1
    assert inside / 20_000 == pytest.approx(0.5, abs=0.012)


def test_middle_two_thirds_of_a_normal_spread_is_about_two_deviations() -> None:
    # Normal table: the quantile of 5/6 is 0.967.
    draw = random.Random(3)
    values = [draw.gauss(0, 1) for _ in range(20_000)]
    assert middle_two_thirds(values) == pytest.approx(2 * 0.967, abs=0.03)

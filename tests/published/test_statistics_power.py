"""The smallest change a number of throws can show, against the printed table and textbook power."""

from __future__ import annotations

import pytest
from scipy import stats

from calculators.coaching.comparison import USUAL_DEVIATION, smallest_change


@pytest.mark.parametrize(
    ("block", "deviations"), [(5, 1.8), (8, 1.4), (10, 1.25), (15, 1.0), (20, 0.9), (30, 0.7), (50, 0.55)]
)
def test_smallest_change_by_throws_in_each_block(block: int, deviations: float) -> None:
    # The coaches' table of detectable differences, 80 % power and two-sided 5 %, in deviations, rounded.
    assert smallest_change(1.0, block, block) == pytest.approx(deviations, abs=0.035)


@pytest.mark.parametrize("block", [10, 20, 50])
def test_power_of_that_change_is_four_in_five(block: int) -> None:
    # Power of the z test: P(Z > 1.96 - d / sqrt(2 / n)), from scipy's normal distribution.
    reached = smallest_change(1.0, block, block) / (2 / block) ** 0.5
    assert stats.norm.sf(stats.norm.ppf(0.975) - reached) == pytest.approx(0.80, abs=1e-9)


@pytest.mark.parametrize(
    ("level", "mph", "minutes", "inches"),
    [("adult", 1.5, 25, 2.5), ("high_school", 2.0, 38, 3.1), ("twelve_and_under", 2.5, 56, 2.5)],
)
def test_ten_against_ten_at_each_level(level, mph: float, minutes: float, inches: float) -> None:
    # content/drills/cue-trial.md prints the speeds. 20, 30 and 45 minutes between throws give the others.
    usual = USUAL_DEVIATION[level]
    assert smallest_change(usual["speed"], 10, 10) == pytest.approx(mph, abs=0.05)
    assert 60 * smallest_change(usual["clock"], 10, 10) == pytest.approx(minutes, abs=0.7)
    assert smallest_change(usual["up"], 10, 10) == pytest.approx(inches, abs=0.05)

"""Clock averages against a textbook example and against scipy."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calculators.coaching.clock_statistics import agreement, clock_deviation, mean_clock, unrolled

clocks = st.lists(st.floats(0, 11.99), min_size=1, max_size=30)


def test_a_textbook_sample_of_directions() -> None:
    # Zar, Biostatistical Analysis, example 26.4: eight directions in degrees; mean 99, r = 0.825; circular
    # standard deviation 36 from the tables, sqrt(-2 ln r) = 35.5.
    hours = [degrees / 30 for degrees in (45, 55, 81, 96, 110, 117, 132, 154)]
    assert 30 * mean_clock(hours) == pytest.approx(99, abs=0.5)
    assert agreement(hours) == pytest.approx(0.825, abs=5e-4)
    assert 30 * clock_deviation(hours) == pytest.approx(
        math.degrees(math.sqrt(-2 * math.log(0.82522))), abs=0.01
    )


@given(clocks)
def test_mean_and_deviation_agree_with_scipy(hours: list[float]) -> None:
    length = agreement(hours)
    if length < 1e-3:
        return
    theirs = stats.circmean(hours, high=12)
    assert abs((mean_clock(hours) - theirs + 6) % 12 - 6) < 1e-7
    assert clock_deviation(hours) == pytest.approx(stats.circstd(hours, high=12), abs=1e-6)


def test_ten_to_twelve_and_ten_past_average_to_twelve() -> None:
    mean = mean_clock([11 + 50 / 60, 10 / 60])
    assert min(mean, 12 - mean) == pytest.approx(0, abs=1e-9)


def test_opposite_clocks_have_no_mean() -> None:
    assert mean_clock([3.0, 9.0]) is None
    assert mean_clock([]) is None
    assert clock_deviation([3.0, 9.0]) == math.inf


@given(st.lists(st.floats(-1, 1), min_size=2, max_size=20), st.floats(0, 11.99))
def test_a_narrow_set_of_clocks_scatters_like_numbers(offsets: list[float], middle: float) -> None:
    hours = [(middle + offset / 4) % 12 for offset in offsets]
    assert unrolled(hours, middle) == pytest.approx([offset / 4 for offset in offsets], abs=1e-9)
    mean = sum(offsets) / len(offsets) / 4
    plain = math.sqrt(sum((offset / 4 - mean) ** 2 for offset in offsets) / len(offsets))
    assert clock_deviation(hours) == pytest.approx(plain, abs=2e-3)

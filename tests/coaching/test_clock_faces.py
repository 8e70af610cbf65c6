"""A clock face has no ends: bands and distances run across twelve, and mirrors come back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.clock_faces import (
    Band,
    around,
    hours_apart,
    opposite,
    read_band,
    read_clock,
    turn_between,
    turned,
)

clocks = st.floats(0, 12, exclude_max=True)


def test_the_curve_of_a_one_oclock_fastball_mirrors_to_seven() -> None:
    # Common practice: a fastball at 1:00 and a curve at 7:00 spin on one line in opposite directions.
    assert opposite(read_clock("1:00")) == pytest.approx(read_clock("7:00"))


def test_twelve_is_a_quarter_of_an_hour_from_a_quarter_to() -> None:
    assert hours_apart(read_clock("12:00"), read_clock("11:45")) == pytest.approx(0.25)
    assert turn_between(read_clock("11:45"), read_clock("12:15")) == pytest.approx(0.5)


def test_a_band_across_twelve_holds_what_lies_in_it_and_nothing_else() -> None:
    band = read_band(["11:00", "12:15"])
    assert band.middle == pytest.approx(read_clock("11:37") + 0.5 / 60)
    assert band.holds(read_clock("12:00"))
    assert band.holds(read_clock("11:00"))
    assert band.outside(read_clock("12:45")) == pytest.approx(0.5)
    assert band.outside(read_clock("10:30")) == pytest.approx(0.5)


def test_a_left_handers_band_is_the_mirror_image_with_its_ends_exchanged() -> None:
    # Common practice: a right-hander's high three-quarter fastball, 12:30 to 1:15, is a left-hander's
    # 10:45 to 11:30, and its opposite is 4:45 to 5:30.
    left = read_band(["12:30", "1:15"]).other_hand
    assert (left.start, left.end) == pytest.approx((read_clock("10:45"), read_clock("11:30")))
    across = left.opposite
    assert (across.start, across.end) == pytest.approx((read_clock("4:45"), read_clock("5:30")))


@given(clocks, clocks)
def test_distance_is_the_same_both_ways_and_never_more_than_half_the_dial(a: float, b: float) -> None:
    assert hours_apart(a, b) == pytest.approx(hours_apart(b, a))
    assert 0 <= hours_apart(a, b) <= 6


@given(clocks, clocks)
def test_turning_by_the_turn_between_arrives(a: float, b: float) -> None:
    assert hours_apart(turned(a, turn_between(a, b)), b) == pytest.approx(0, abs=1e-9)


@given(clocks, st.floats(0.01, 5.9))
def test_a_band_around_a_clock_has_it_in_the_middle(clock: float, hours: float) -> None:
    band = around(clock, hours)
    assert hours_apart(band.middle, clock) == pytest.approx(0, abs=1e-9)
    assert band.outside(turned(clock, hours + 0.05)) == pytest.approx(0.05, abs=1e-6)


@given(clocks, clocks)
def test_mirroring_a_band_twice_gives_it_back(start: float, end: float) -> None:
    twice = Band(start, end).other_hand.other_hand
    assert hours_apart(twice.start, start) == pytest.approx(0, abs=1e-9)
    assert hours_apart(twice.end, end) == pytest.approx(0, abs=1e-9)

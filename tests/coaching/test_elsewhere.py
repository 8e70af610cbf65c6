"""The same pitch from another distance or in other air."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.coaching.elsewhere import SamePitch, from_distance
from calculators.physics.flight import STILL_AIR, Conditions
from calculators.physics.spin import Spin, other_hand
from calculators.physics.units import FOOT, INCH, MPH, RPM

CURVE = SamePitch(5.5 * FOOT, -1.5 * FOOT, 5.6 * FOOT, 68 * MPH, Spin(2050 * RPM, 7.0, 0.75), 28 * INCH)


def test_without_air_spin_moves_nothing_from_any_distance() -> None:
    for feet in (46, 50, 54, 60.5):
        there = from_distance(CURVE, feet * FOOT, Conditions(density=1e-9))
        assert there.moved.amount == pytest.approx(0, abs=1e-6)


def test_movement_grows_with_the_square_of_the_way() -> None:
    # A steady push moves a ball by half its size times time squared; speed falls a little on the way, which
    # adds to the longer one.
    near = from_distance(CURVE, 46 * FOOT, STILL_AIR).moved.amount
    far = from_distance(CURVE, 60.5 * FOOT, STILL_AIR).moved.amount
    ways = (60.5 - 5.5 - 17 / 12) / (46 - 5.5 - 17 / 12)
    assert far / near == pytest.approx(ways**2, rel=0.05)


def test_youth_distance_gives_more_than_half_of_the_grown_ups_movement() -> None:
    # Common practice: the same pitch from 46 ft has 55 to 65 percent of its movement from 60.5 ft. Where a
    # youth releases it a foot less in front, it comes out at the lower end.
    near = from_distance(replace(CURVE, extension=4.5 * FOOT), 46 * FOOT, STILL_AIR).moved.amount
    far = from_distance(CURVE, 60.5 * FOOT, STILL_AIR).moved.amount
    assert 0.5 < near / far < 0.65


@given(st.floats(0.8, 1.25))
def test_movement_goes_with_the_density_of_the_air(density: float) -> None:
    plain = from_distance(CURVE, 60.5 * FOOT, STILL_AIR).moved.amount
    other = from_distance(CURVE, 60.5 * FOOT, Conditions(density=density)).moved.amount
    assert other / plain == pytest.approx(density / STILL_AIR.density, rel=0.02)


def test_a_left_hander_gets_the_mirror_image() -> None:
    left = replace(CURVE, aside=-CURVE.aside, spin=other_hand(CURVE.spin))
    ours = from_distance(CURVE, 54 * FOOT, STILL_AIR).moved
    theirs = from_distance(left, 54 * FOOT, STILL_AIR).moved
    assert (theirs.across, theirs.up) == pytest.approx((-ours.across, ours.up))

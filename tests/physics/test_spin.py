"""Clock, active share and spin vector say the same thing."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calculators.physics.aim import launch_velocity
from calculators.physics.spin import (
    Spin,
    active_share,
    gyro_angle,
    other_hand,
    other_hand_clock,
    spin_from_vector,
    spin_vector,
)
from calculators.physics.units import DEGREE

velocities = st.builds(launch_velocity, st.floats(15, 45), st.floats(-0.4, 0.6), st.floats(-0.2, 0.2))


@given(
    velocities,
    st.floats(1, 370),
    st.floats(0.01, 11.99),
    st.floats(0.01, 0.999),
    st.sampled_from([-1.0, 1.0]),
)
def test_a_spin_survives_the_way_to_a_vector_and_back(
    velocity: tuple[float, float, float], rate: float, clock: float, active: float, bullet: float
) -> None:
    found = spin_from_vector(spin_vector(Spin(rate, clock, active, bullet), velocity), velocity)
    assert (found.rate, found.clock, found.active) == pytest.approx((rate, clock, active), abs=1e-9, rel=1e-9)
    assert found.bullet == bullet


@pytest.mark.parametrize(
    ("clock", "direction"),
    [(0.0, (-1, 0, 0)), (6.0, (1, 0, 0)), (9.0, (0, 0, 1)), (3.0, (0, 0, -1))],
    ids=["pure backspin", "pure topspin", "glove side of a right-hander", "arm side of a right-hander"],
)
def test_axes_of_the_four_pure_spins(clock: float, direction: tuple[float, float, float]) -> None:
    level = (0.0, -35.0, 0.0)
    assert spin_vector(Spin(200.0, clock, 1.0), level) == pytest.approx(
        [200 * part for part in direction], abs=1e-9
    )


def test_a_right_handers_bullet_turns_clockwise_as_he_sees_it() -> None:
    # Clockwise seen from behind: by the right-hand rule the axis points the way the ball goes.
    assert spin_vector(Spin(200.0, 0.0, 0.0, 1.0), (0.0, -35.0, 0.0)) == pytest.approx((0, -200, 0), abs=1e-9)


@pytest.mark.parametrize(
    ("degrees", "share"), [(0, 1.0), (15, 0.97), (30, 0.87), (45, 0.71), (60, 0.50), (75, 0.26), (90, 0.0)]
)
def test_active_share_is_the_cosine_of_the_gyro_angle(degrees: float, share: float) -> None:
    # Young & Nathan, "Studies of the active spin ratio", 2020: the share is the cosine of the angle.
    assert active_share(degrees * DEGREE) == pytest.approx(share, abs=0.005)
    assert gyro_angle(active_share(degrees * DEGREE)) == pytest.approx(degrees * DEGREE, abs=1e-7)


@pytest.mark.parametrize(("right", "left"), [(7.5, 4.5), (0.0, 0.0), (6.0, 6.0), (1.0, 11.0), (9.0, 3.0)])
def test_the_left_handers_clock_is_twelve_minus_the_right_handers(right: float, left: float) -> None:
    assert other_hand_clock(right) == left


@given(st.floats(0, 11.99))
def test_the_mirror_of_the_mirror_is_the_pitch_itself(clock: float) -> None:
    spin = Spin(200.0, clock, 0.7)
    assert other_hand(other_hand(spin)).clock == pytest.approx(clock, abs=1e-12)
    assert other_hand(other_hand(spin)).bullet == spin.bullet


def test_an_array_of_spins_reads_like_each_alone() -> None:
    clocks = np.linspace(0.5, 11.5, 12)
    velocity = launch_velocity(np.full(12, 35.0), np.full(12, 0.02), np.full(12, 0.03))
    vectors = spin_vector(Spin(np.full(12, 240.0), clocks, np.full(12, 0.7)), velocity)
    assert spin_from_vector(vectors, velocity).clock == pytest.approx(clocks, abs=1e-9)
    first = spin_vector(Spin(240.0, float(clocks[0]), 0.7), launch_velocity(35.0, 0.02, 0.03))
    assert [float(part[0]) for part in vectors] == pytest.approx(first, rel=1e-12)
    assert math.dist((0, 0, 0), first) == pytest.approx(240.0)

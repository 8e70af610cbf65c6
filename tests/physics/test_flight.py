"""What must hold for every pitch, whatever its speed and spin."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calculators.physics.aim import OutOfReachError, launch_velocity, pitch_to, thrown
from calculators.physics.ball import DULLEST_BALL, LIVELIEST_BALL, RULE_BOOK_BALL
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions, Release, arrive, fly
from calculators.physics.lift import (
    STANDARD_LIFT,
    Exponential,
    LiftFit,
    PowerLaw,
    Proportional,
    Saturating,
    Scaled,
    Steady,
)
from calculators.physics.movement import Movement, fall, movement, spinless
from calculators.physics.spin import Spin, other_hand
from calculators.physics.units import DEGREE, FOOT, INCH, MPH, RPM

speeds = st.floats(40, 100).map(lambda mph: mph * MPH)
rates = st.floats(100, 3500).map(lambda rpm: rpm * RPM)
clocks = st.floats(0, 11.999)
shares = st.floats(0, 1)
spins = st.builds(Spin, rates, clocks, shares, st.sampled_from([-1.0, 1.0]))
angles = st.floats(-3, 5).map(lambda degrees: degrees * DEGREE)
positions = st.tuples(st.floats(-1, 1), st.sampled_from([42 * FOOT, 55 * FOOT]), st.floats(0.5, 2.1))


@st.composite
def releases(draw: st.DrawFn) -> Release[float]:
    """Any pitch."""
    velocity = launch_velocity(draw(speeds), draw(angles), draw(angles))
    return thrown(draw(positions), velocity, draw(spins))


def moved(release: Release[float], conditions: Conditions = STILL_AIR) -> Movement[float]:
    """Return the movement of a pitch."""
    return movement(arrive(release, conditions), arrive(spinless(release), conditions))


def straight_pitch(mph: float, spin: Spin[float]) -> Release[float]:
    """A pitch sent slightly upward from 55 ft."""
    return thrown((0.0, 55 * FOOT, 1.8), launch_velocity(mph * MPH, 1 * DEGREE, 0.0), spin)


@given(releases())
def test_energy_never_rises_in_still_air(release: Release[float]) -> None:
    def energy(velocity: tuple[float, float, float], height: float) -> float:
        return sum(part**2 for part in velocity) / 2 + STILL_AIR.gravity * height

    levels = [energy(moment.velocity, moment.position[2]) for moment in fly(release).moments]
    assert all(later <= earlier + 1e-9 for earlier, later in pairwise(levels))


@given(positions, speeds, angles, angles, spins)
def test_the_other_hand_throws_the_mirror_image(
    position: tuple[float, float, float], speed: float, up: float, aside: float, spin: Spin[float]
) -> None:
    x, y, z = position
    right = arrive(thrown(position, launch_velocity(speed, up, aside), spin))
    left = arrive(thrown((-x, y, z), launch_velocity(speed, up, -aside), other_hand(spin)))
    assert left.position == pytest.approx((-right.position[0], *right.position[1:]), abs=1e-9)
    assert left.time == pytest.approx(right.time, abs=1e-12)


@given(positions, speeds, angles, angles, clocks)
def test_a_ball_without_spin_has_no_movement(
    position: tuple[float, float, float], speed: float, up: float, aside: float, clock: float
) -> None:
    still = moved(thrown(position, launch_velocity(speed, up, aside), Spin(0.0, clock, 1.0)))
    assert (still.across, still.up) == (0.0, 0.0)


@given(speeds, angles, rates)
def test_pure_bullet_spin_does_not_push_at_release(speed: float, up: float, rate: float) -> None:
    weightless = Conditions(gravity=0.0)
    bullet = thrown((0.0, 55 * FOOT, 1.8), launch_velocity(speed, up, 0.0), Spin(rate, 6.0, 0.0))
    assert moved(bullet, weightless).amount < 1e-9


@given(speeds, clocks)
def test_the_clock_names_the_way_the_ball_is_pushed(speed: float, clock: float) -> None:
    # Behind the pitcher 9:00 is his left, the catcher's right; 12:00 is up.
    weightless = Conditions(gravity=0.0)
    pitch = thrown((0.0, 55 * FOOT, 0.0), launch_velocity(speed, 0.0, 0.0), Spin(2400 * RPM, clock, 1.0))
    push = moved(pitch, weightless)
    hand = np.pi * clock / 6
    assert push.across / push.amount == pytest.approx(-np.sin(hand), abs=1e-9)
    assert push.up / push.amount == pytest.approx(np.cos(hand), abs=1e-9)


@given(releases(), st.floats(0.75, 1.15))
def test_movement_goes_with_density(release: Release[float], share: float) -> None:
    # To first order the push, and so the movement, is in proportion to the density.
    dense, thin = moved(release), moved(release, Conditions(density=share * STILL_AIR.density))
    assert thin.amount == pytest.approx(share * dense.amount, rel=0.06, abs=0.02 * INCH)


@given(st.floats(45, 95), clocks, st.floats(0.3, 1), st.floats(300, 3000), st.floats(20, 500))
def test_more_spin_moves_the_ball_more(
    mph: float, clock: float, active: float, rpm: float, more: float
) -> None:
    less_spin = moved(straight_pitch(mph, Spin(rpm * RPM, clock, active)))
    more_spin = moved(straight_pitch(mph, Spin((rpm + more) * RPM, clock, active)))
    assert more_spin.amount > less_spin.amount


@given(st.floats(45, 95), clocks, st.floats(300, 3000), st.floats(0.3, 0.9), st.floats(0.02, 0.1))
def test_a_larger_active_share_moves_the_ball_more(
    mph: float, clock: float, rpm: float, active: float, more: float
) -> None:
    less = moved(straight_pitch(mph, Spin(rpm * RPM, clock, active)))
    bigger = moved(straight_pitch(mph, Spin(rpm * RPM, clock, active + more)))
    assert bigger.amount > less.amount


def test_backspin_rides_and_topspin_drops() -> None:
    ride = moved(straight_pitch(85, Spin(2200 * RPM, 0.0, 1.0)))
    drop = moved(straight_pitch(75, Spin(2200 * RPM, 6.0, 1.0)))
    assert ride.up > 10 * INCH
    assert drop.up < -10 * INCH
    assert abs(ride.across) < 1e-9
    assert abs(drop.across) < 1e-9


def test_a_light_large_ball_moves_about_a_twentieth_more() -> None:
    # Official Baseball Rules 3.01 leave 5 to 5 1/4 oz and 9 to 9 1/4 in; area over mass then varies by
    # -5.0 to +5.3 % about the middle.
    middle = RULE_BOOK_BALL.area / RULE_BOOK_BALL.mass
    assert LIVELIEST_BALL.area / LIVELIEST_BALL.mass / middle == pytest.approx(1.053, abs=5e-4)
    assert DULLEST_BALL.area / DULLEST_BALL.mass / middle == pytest.approx(0.950, abs=5e-4)
    curve = straight_pitch(75, Spin(2400 * RPM, 6.0, 0.8))
    lively = moved(curve, Conditions(ball=LIVELIEST_BALL)).amount
    assert lively / moved(curve).amount == pytest.approx(1.05, abs=0.015)


ALL_FITS: tuple[LiftFit, ...] = (
    STANDARD_LIFT,
    Saturating(),
    Exponential(),
    PowerLaw(),
    Proportional(),
    Steady(0.2),
    Scaled(STANDARD_LIFT, 0.9),
)


@pytest.mark.parametrize("fit", ALL_FITS, ids=lambda fit: type(fit).__name__)
def test_many_pitches_at_once_fly_like_each_alone(fit: LiftFit) -> None:
    draw = np.random.default_rng(7)
    count = 40
    speed, rate = draw.uniform(18, 45, count), draw.uniform(0, 360, count)
    up, aside = draw.uniform(-0.05, 0.1, count), draw.uniform(-0.05, 0.05, count)
    spin = Spin(rate, draw.uniform(0, 12, count), draw.uniform(0, 1, count))
    position = (draw.uniform(-1, 1, count), draw.uniform(12, 17, count), draw.uniform(1, 2, count))
    conditions = Conditions(lift=fit)
    together = thrown(position, launch_velocity(speed, up, aside), spin)
    crossing = arrive(together, conditions, steps=12)
    for i in range(count):
        one = thrown(
            tuple(float(part[i]) for part in position),
            launch_velocity(float(speed[i]), float(up[i]), float(aside[i])),
            Spin(float(rate[i]), float(spin.clock[i]), float(spin.active[i])),
        )
        alone = arrive(one, conditions, steps=12)
        assert [part[i] for part in crossing.position] == pytest.approx(alone.position, rel=1e-12, abs=1e-12)
        assert crossing.time[i] == pytest.approx(alone.time, rel=1e-12)


@settings(max_examples=50)
@given(positions, speeds, spins, st.floats(0.0, 1.5))
def test_an_aimed_pitch_crosses_its_target(
    position: tuple[float, float, float], speed: float, spin: Spin[float], height: float
) -> None:
    end = pitch_to((0.1, height), position, speed, spin).end
    assert end.position == pytest.approx((0.1, PLATE_FRONT, height), abs=1e-4)


def test_many_pitches_can_be_aimed_at_once() -> None:
    speed = np.linspace(25, 42, 9)
    spin = Spin(np.full(9, 240.0), np.linspace(0, 11, 9), np.full(9, 0.8))
    end = pitch_to((0.0, 0.7), (0.5 + 0 * speed, 16.8 + 0 * speed, 1.8 + 0 * speed), speed, spin).end
    assert np.abs(end.position[0]).max() < 1e-4
    assert np.abs(end.position[2] - 0.7).max() < 1e-4


def test_a_ball_too_slow_to_reach_the_plate_is_refused() -> None:
    with pytest.raises(OutOfReachError, match="more speed"):
        pitch_to((0.0, 0.7), (0.0, 56 * FOOT, 1.5), 26 * MPH, Spin(1000 * RPM, 6.0, 1.0))


def test_a_tailwind_brings_the_ball_sooner_and_a_crosswind_carries_it() -> None:
    pitch = straight_pitch(75, Spin(2400 * RPM, 6.0, 0.8))
    calm = arrive(pitch)
    assert arrive(pitch, Conditions(wind=(0.0, -4.0, 0.0))).time < calm.time
    assert arrive(pitch, Conditions(wind=(3.0, 0.0, 0.0))).position[0] > calm.position[0] + 1 * INCH


def test_fall_counts_gravity_and_movement_does_not() -> None:
    spinless_ball = straight_pitch(75, Spin(0.0, 0.0, 1.0))
    assert fall(fly(spinless_ball)) > 30 * INCH
    assert moved(spinless_ball).amount == 0.0

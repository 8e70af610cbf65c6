"""Flights with an answer in closed form. The formula stands beside each test.

The ball is the middle of the rule book's (5 1/8 oz, 9 1/8 in) in air of 1.197 kg/m3.
"""

from __future__ import annotations

import math

import pytest

from calculators.physics.ball import Ball
from calculators.physics.drag import speed_after, time_over
from calculators.physics.flight import Conditions, Moment, Release, arrive
from calculators.physics.lift import Proportional, Steady
from calculators.physics.movement import speed
from calculators.physics.units import FOOT, INCH, MPH, RPM

EXACT = 1e-8
DISTANCE = 55 * FOOT - 17 * INCH


def level_pitch(
    mph: float, distance: float, spin: tuple[float, float, float], conditions: Conditions, steps: int = 400
) -> Moment[float]:
    """Throw level from `distance` metres in front of the plane, straight at it."""
    release = Release((0.0, distance, 0.0), (0.0, -mph * MPH, 0.0), spin)
    return arrive(release, conditions, plane=0.0, steps=steps)


def test_air_grip_of_the_middle_ball() -> None:
    # Density x area / (2 x mass) with the rule book's middle mass and circumference.
    assert Conditions().air_grip == pytest.approx(0.0176095, abs=5e-8)


def test_drag_alone_gives_the_exponential_law() -> None:
    # dv/dx = -k v, so t = (e^(k d) - 1) / (k v0): the time formula printed in Wilcox, Basic Fluid
    # Mechanics, problem 10.28.
    end = level_pitch(90, DISTANCE, (0, 0, 0), Conditions(drag=0.35, gravity=0))
    assert end.time == pytest.approx(0.42706832, abs=EXACT)
    assert speed(end) == pytest.approx(36.380817, abs=1e-6)
    assert speed(end) / MPH == pytest.approx(81.381569, abs=1e-6)
    slowing = Conditions().air_grip * 0.35
    assert time_over(DISTANCE, 90 * MPH, slowing) == pytest.approx(0.42706832, abs=EXACT)
    assert speed_after(DISTANCE, 90.0, slowing) == pytest.approx(81.381569, abs=1e-6)


@pytest.mark.parametrize(
    ("mph", "drag", "seconds", "mph_at_plate"), [(90, 0.40, 0.491868, 78.273), (100, 0.20, 0.427238, 93.258)]
)
def test_drag_alone_with_the_ball_of_a_textbook(
    mph: float, drag: float, seconds: float, mph_at_plate: float
) -> None:
    # Wilcox, Basic Fluid Mechanics, problem 10.28: 3 in across, 5.125 oz, 0.00234 slug/ft3, 60.5 ft.
    slug_per_cubic_foot = 14.593902937 / FOOT**3
    ball = Ball(mass=5.125 * 0.028349523125, circumference=3 * INCH * math.pi)
    conditions = Conditions(density=0.00234 * slug_per_cubic_foot, ball=ball, drag=drag, gravity=0)
    end = level_pitch(mph, 60.5 * FOOT, (0, 0, 0), conditions)
    assert end.time == pytest.approx(seconds, abs=1e-6)
    assert speed(end) / MPH == pytest.approx(mph_at_plate, abs=1e-3)


def test_steady_lift_bends_the_path_into_a_circle_whatever_the_drag() -> None:
    # Sideways acceleration K C_L v^2 = v^2 / R, so R = 1 / (K C_L) while drag only slows the ball.
    conditions = Conditions(drag=0.35, lift=Steady(0.20), gravity=0)
    end = level_pitch(90, DISTANCE, (0, 0, 200.0), conditions)
    radius = 1 / (conditions.air_grip * 0.20)
    assert radius == pytest.approx(283.93711, abs=1e-5)
    assert end.position[0] / INCH == pytest.approx(18.508157, abs=1e-6)
    assert end.position[0] == pytest.approx(radius - math.sqrt(radius**2 - DISTANCE**2), abs=EXACT)
    assert end.time == pytest.approx(0.42731625, abs=EXACT)
    assert speed(end) == pytest.approx(36.378794, abs=1e-6)


def proportional_to(turning: float, spin: float, conditions: Conditions) -> Proportional:
    """Return the lift under which a spin square to the motion turns it by `turning` [rad/s]."""
    return Proportional(turning / (conditions.air_grip * conditions.ball.radius * spin))


def test_lift_in_proportion_to_spin_turns_the_motion_evenly() -> None:
    # a = W (z x v): the path is a circle run at steady speed; sin(angle) = W D / v.
    spin = 1800 * RPM
    turning = 4.1e-4 * spin
    airless = Conditions(drag=0.0, gravity=0.0)
    conditions = Conditions(drag=0.0, gravity=0.0, lift=proportional_to(turning, spin, airless))
    end = level_pitch(85, 60 * FOOT, (0, 0, spin), conditions)
    assert turning == pytest.approx(0.0772832, abs=1e-7)
    assert end.position[0] / INCH == pytest.approx(13.394875, abs=1e-6)
    assert end.time == pytest.approx(0.48139447, abs=EXACT)


def test_a_differential_equations_exercise() -> None:
    # A textbook exercise on the curveball: k = 0.001, spin 1000 rad/s, 70 ft/s, g = 32 ft/s2, after 0.2 s.
    # x = 70 sin 0.2, y = 70 (1 - cos 0.2), z = -0.64 ft.
    gravity = 32 * FOOT
    thin = Conditions(drag=0.0, gravity=gravity)
    conditions = Conditions(drag=0.0, gravity=gravity, lift=proportional_to(1.0, 1000.0, thin))
    ahead = 13.906853 * FOOT
    end = level_pitch(70 * FOOT / MPH, ahead, (0, 0, 1000.0), conditions)
    assert end.time == pytest.approx(0.2, abs=1e-7)
    assert end.position[0] / FOOT == pytest.approx(1.395340, abs=1e-6)
    assert end.position[2] / FOOT == pytest.approx(-0.64, abs=1e-6)


@pytest.mark.parametrize(("distance", "inches"), [(60 * FOOT, 39.885184), (DISTANCE, 31.810358)])
def test_fall_in_a_vacuum(distance: float, inches: float) -> None:
    # Galileo: half g t squared, at 90 mph all the way.
    end = level_pitch(90, distance, (0, 0, 0), Conditions(density=0.0))
    assert -end.position[2] / INCH == pytest.approx(inches, abs=1e-6)
    assert end.time == pytest.approx(distance / (90 * MPH), abs=EXACT)

"""What a doubt about the throw does at the plate."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from calculators.physics.aim import launch_velocity
from calculators.physics.doubt import Doubts, Thrown, crossings, effects, together
from calculators.physics.drag import speed_after
from calculators.physics.flight import PLATE_FRONT, STILL_AIR, Conditions
from calculators.physics.movement import movement
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, INCH, MPH, RPM

CURVE = Thrown(
    (0.0, 55 * FOOT, 6 * FOOT),
    launch_velocity(78 * MPH, 0.0, 0.0),
    Spin(2300 * RPM, 6.0, 0.70),
    Conditions(gravity=0.0),
)
FIVE_DEGREES = 5 / 30
DOUBTS = Doubts(1 * MPH, 100 * RPM, FIVE_DEGREES, 0.05, 0.02)


def amount(pitch: Thrown) -> float:
    """Return the movement of a pitch in inches."""
    return movement(*crossings(pitch)).amount / INCH


def test_changes_of_one_curve() -> None:
    # Worked out apart from this code with a general-purpose solver (78 mph, 2300 rpm, active share 0.70,
    # 53.58 ft, no gravity): 18.571 in; 1 mph more takes 0.130, 100 rpm more adds 0.446, 0.05 more active
    # share adds 0.733, 2 % denser air adds 0.379; the axis 5 degrees off shifts it 1.62 in across.
    assert amount(CURVE) == pytest.approx(18.571, abs=1e-3)
    shifts = {effect.cause: effect for effect in effects(CURVE, DOUBTS)}
    assert -shifts["speed"].up / INCH == pytest.approx(-0.130, abs=2e-3)
    assert -shifts["spin rate"].up / INCH == pytest.approx(0.446, abs=2e-3)
    assert -shifts["active share"].up / INCH == pytest.approx(0.733, abs=2e-3)
    assert -shifts["air"].up / INCH == pytest.approx(0.379, abs=2e-3)
    assert abs(shifts["clock"].across) / INCH == pytest.approx(1.62, abs=5e-3)


def test_a_tenth_more_lift_shifts_it_by_a_tenth() -> None:
    # The same sums: lift 10 % up, 1.9 in more movement.
    lift = next(effect for effect in effects(CURVE, DOUBTS) if effect.cause == "lift")
    assert lift.amount / INCH == pytest.approx(1.9, abs=0.1)


def test_the_doubt_about_drag_is_worth_one_mph_at_the_plate() -> None:
    # C_D 0.40 in place of 0.35 (an estimate of how far balls differ), by the exponential law of Wilcox, Basic
    # Fluid Mechanics, problem 10.28 (wilcox-fluid-mechanics).
    drag = next(effect for effect in effects(CURVE, DOUBTS) if effect.cause == "drag")
    way = 55 * FOOT - PLATE_FRONT
    rougher, usual = (speed_after(way, 78.0, STILL_AIR.air_grip * c_d) for c_d in (0.40, 0.35))
    assert drag.speed / MPH == pytest.approx(rougher - usual, rel=0.03)
    assert drag.speed / MPH == pytest.approx(-1, abs=0.1)


def test_the_largest_doubt_comes_first() -> None:
    found = effects(CURVE, replace(DOUBTS, clock=1.0))
    assert found[0].cause == "clock"
    assert [effect.amount for effect in found] == sorted((effect.amount for effect in found), reverse=True)


def test_a_fully_active_pitch_can_only_lose_active_share() -> None:
    full = replace(CURVE, spin=replace(CURVE.spin, active=1.0))
    share = next(effect for effect in effects(full, DOUBTS) if effect.cause == "active share")
    assert share.up > 0


def test_independent_doubts_add_as_squares() -> None:
    # JCGM 100:2008, 5.1.2.
    assert together([3.0, 4.0, 12.0]) == 13.0
    assert together([]) == 0.0


def test_nothing_shifts_without_doubt_about_the_throw_but_air_lift_and_ball() -> None:
    still = effects(CURVE, Doubts(0.0, 0.0, 0.0, 0.0, 0.0))
    moved = {effect.cause for effect in still if not math.isclose(effect.amount, 0.0, abs_tol=1e-12)}
    assert moved == {"ball", "lift", "drag"}

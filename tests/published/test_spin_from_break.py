"""The way back from a path to the spin, against worked examples.

Method: Nathan's note on finding the spin axis from a pitch's path (2015, revised 2018 and 2020).
"""

from __future__ import annotations

import pytest

from calculators.physics.flight import PLATE_FRONT, Conditions
from calculators.physics.inverse import spin_from_path
from calculators.physics.lift import STANDARD_LIFT
from calculators.physics.movement import slant, speed, steepness
from calculators.physics.path import SteadyPath, forces_along
from calculators.physics.units import DEGREE, FOOT, MPH, RPM
from calculators.physics.vectors import Vector

RELEASE = 55 * FOOT
AIR = Conditions(gravity=32.174 * FOOT)


def feet(x: float, y: float, z: float) -> Vector[float]:
    return (x * FOOT, y * FOOT, z * FOOT)


SAMPLE = SteadyPath(feet(1.958, 50, 6.041), feet(-0.469, -115.739, -0.622), feet(-10.947, 23.455, -32.665))
"""One pitch of a public sample of nine-number paths, from a reference plane at 50 ft."""


def test_times_speeds_and_crossing_of_the_worked_pitch() -> None:
    plate, start = SAMPLE.moment_at(PLATE_FRONT), SAMPLE.moment_at(RELEASE)
    assert plate.time == pytest.approx(0.43932292, abs=1e-8)
    assert plate.time - start.time == pytest.approx(0.48233610, abs=1e-8)
    assert speed(start) / MPH == pytest.approx(79.60261, abs=1e-5)
    assert speed(plate) / MPH == pytest.approx(72.69764, abs=1e-5)
    assert plate.position[0] / FOOT == pytest.approx(0.695547, abs=1e-6)
    assert plate.position[2] / FOOT == pytest.approx(2.615493, abs=1e-6)
    assert steepness(plate) / DEGREE == pytest.approx(-8.082372, abs=1e-6)
    assert slant(plate) / DEGREE == pytest.approx(-2.865947, abs=1e-6)


def test_forces_and_spin_of_the_worked_pitch() -> None:
    forces = forces_along(SAMPLE, RELEASE, AIR)
    assert forces.slowing / FOOT == pytest.approx(23.110090, abs=1e-6)
    assert [part / FOOT for part in forces.push] == pytest.approx([-11.494550, 0.398369, -1.963488], abs=1e-6)
    assert forces.drag == pytest.approx(0.347270, abs=1e-6)
    assert forces.lift == pytest.approx(0.175330, abs=1e-6)
    found = spin_from_path(SAMPLE, RELEASE, AIR)
    assert found.spin_ratio == pytest.approx(0.142217, abs=1e-6)
    assert found.rate / RPM == pytest.approx(1249.500, abs=1e-3)
    assert found.axis == pytest.approx((0.170068, 0.058783, -0.983678), abs=1e-6)
    assert not found.capped
    assert not found.beyond(STANDARD_LIFT)


def test_a_large_lift_reads_back_as_a_runaway_spin_and_is_marked() -> None:
    # A second pitch of the same sample has C_L 0.3279, which the two-line fit reads as 4137 rpm: more than
    # the fit rests on.
    ratio = STANDARD_LIFT.spin_ratio(0.3279)
    assert ratio == pytest.approx(0.3965, abs=1e-4)
    assert ratio > STANDARD_LIFT.measured[1]
    steep = SteadyPath(SAMPLE.position, SAMPLE.velocity, feet(-22.0, 23.455, -32.665))
    found = spin_from_path(steep, RELEASE, AIR)
    assert found.beyond(STANDARD_LIFT)
    assert not found.capped


def test_lift_beyond_all_measurements_is_capped() -> None:
    # Nathan, Am. J. Phys. 76 (2008) 119: spin ratios up to 0.595 were measured.
    wild = SteadyPath(SAMPLE.position, SAMPLE.velocity, feet(-40.0, 23.455, -32.665))
    found = spin_from_path(wild, RELEASE, AIR)
    assert found.capped
    assert found.spin_ratio == pytest.approx(0.6, abs=1e-9)

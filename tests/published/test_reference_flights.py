"""Eight flights solved by a general-purpose solver, against ours.

reference_trajectories.csv was made with the same forces by an explicit method of order eight at a relative
tolerance of 1e-12 and checked by an implicit one; the two differ by less than 3e-12 m. Its model: C_D 0.35,
lift of Sawicki, Hubbard & Stronge (Am. J. Phys. 71 (2003) 1152), air 1.197 kg/m3, g 9.80665 m/s2, the middle
ball of the rule book, spin fixed in space, still air.
"""

from __future__ import annotations

import csv
import math
from pathlib import Path

import pytest

from calculators.physics.aim import launch_velocity
from calculators.physics.flight import Release, fly
from calculators.physics.movement import fall, movement, slant, speed, spinless, steepness, veer
from calculators.physics.spin import spin_from_vector
from calculators.physics.units import DEGREE, FOOT, INCH, MPH, RPM

ROWS = list(csv.DictReader((Path(__file__).parent / "reference_trajectories.csv").open(encoding="utf-8")))
HUNDREDTH_INCH = 0.01

every_flight = pytest.mark.parametrize("row", ROWS, ids=[row["description"] for row in ROWS])


def figures(row: dict[str, str], *names: str) -> tuple[float, ...]:
    """Return the named columns as numbers."""
    return tuple(float(row[name]) for name in names)


def release_of(row: dict[str, str]) -> Release[float]:
    """Return the release the row starts from, its spin vector as given."""
    x, y, z = (feet * FOOT for feet in figures(row, "x0_ft", "y0_ft", "z0_ft"))
    vx, vy, vz = figures(row, "vx0_mps", "vy0_mps", "vz0_mps")
    wx, wy, wz = figures(row, "wx_rad_s", "wy_rad_s", "wz_rad_s")
    return Release((x, y, z), (vx, vy, vz), (wx, wy, wz))


@every_flight
def test_the_ball_arrives_where_and_when_the_reference_says(row: dict[str, str]) -> None:
    end = fly(release_of(row)).end
    x, z, time, mph = figures(row, "x_plate_m", "z_plate_m", "t_plate_s", "speed_plate_mph")
    assert (end.position[0] - x) / INCH == pytest.approx(0, abs=HUNDREDTH_INCH)
    assert (end.position[2] - z) / INCH == pytest.approx(0, abs=HUNDREDTH_INCH)
    assert end.time == pytest.approx(time, abs=1e-6)
    assert speed(end) / MPH == pytest.approx(mph, abs=1e-3)


@every_flight
def test_the_margin_below_a_hundredth_of_an_inch_is_a_hundredfold(row: dict[str, str]) -> None:
    end = fly(release_of(row)).end
    x, z = figures(row, "x_plate_m", "z_plate_m")
    assert math.hypot(end.position[0] - x, end.position[2] - z) / INCH < HUNDREDTH_INCH / 100


@every_flight
def test_the_spinless_ball_arrives_where_the_reference_says(row: dict[str, str]) -> None:
    end = fly(spinless(release_of(row))).end
    x, z, time = figures(row, "x_plate_nospin_m", "z_plate_nospin_m", "t_plate_nospin_s")
    assert end.position[0] / INCH == pytest.approx(x / INCH, abs=HUNDREDTH_INCH)
    assert end.position[2] / INCH == pytest.approx(z / INCH, abs=HUNDREDTH_INCH)
    assert end.time == pytest.approx(time, abs=1e-6)


@every_flight
def test_movement_and_fall(row: dict[str, str]) -> None:
    release = release_of(row)
    flight = fly(release)
    moved = movement(flight.end, fly(spinless(release)).end)
    across, up, line_x, line_z = figures(
        row, "move_x_in", "move_z_in", "dev_from_line_x_in", "dev_from_line_z_in"
    )
    assert moved.across / INCH == pytest.approx(across, abs=HUNDREDTH_INCH)
    assert moved.up / INCH == pytest.approx(up, abs=HUNDREDTH_INCH)
    assert veer(flight) / INCH == pytest.approx(line_x, abs=HUNDREDTH_INCH)
    assert -fall(flight) / INCH == pytest.approx(line_z, abs=HUNDREDTH_INCH)


@every_flight
def test_angles_over_the_plate(row: dict[str, str]) -> None:
    end = fly(release_of(row)).end
    down, aside = figures(row, "vert_approach_deg", "horiz_approach_deg")
    assert steepness(end) / DEGREE == pytest.approx(down, abs=1e-4)
    assert slant(end) / DEGREE == pytest.approx(aside, abs=1e-4)


@every_flight
def test_release_direction_and_active_share(row: dict[str, str]) -> None:
    release = release_of(row)
    mph, up, aside, rpm, active = figures(
        row, "speed_mph", "elev_deg", "azim_deg", "spin_rpm", "active_fraction_release"
    )
    assert launch_velocity(mph * MPH, up * DEGREE, aside * DEGREE) == pytest.approx(
        release.velocity, abs=1e-7
    )
    spin = spin_from_vector(release.spin, release.velocity)
    assert spin.rate / RPM == pytest.approx(rpm, abs=1e-3)
    assert spin.active == pytest.approx(active, abs=1e-8)


def test_the_left_hander_is_the_mirror_image() -> None:
    right, left = (
        fly(release_of(row)) for row in ROWS if row["description"].startswith(("oblique", "mirror"))
    )
    assert left.end.position[0] == pytest.approx(-right.end.position[0], abs=1e-12)
    assert left.end.position[2] == pytest.approx(right.end.position[2], abs=1e-12)
    assert left.end.time == pytest.approx(right.end.time, abs=1e-12)

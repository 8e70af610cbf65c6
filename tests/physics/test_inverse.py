"""From movement back to spin: every pitch we can throw is found again."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest

from calculators.physics.aim import launch_velocity, pitch_to, thrown
from calculators.physics.flight import PLATE_FRONT, Flight, Release, arrive, fly
from calculators.physics.inverse import SpinNotFoundError, launch_toward, spin_from_crossing, spin_from_path
from calculators.physics.lift import (
    PUBLISHED_FITS,
    STANDARD_LIFT,
    Exponential,
    InvertibleFit,
    Saturating,
)
from calculators.physics.movement import Movement, movement, spinless
from calculators.physics.path import SteadyPath, forces_along, steady_movement
from calculators.physics.spin import Spin
from calculators.physics.units import FOOT, INCH, MPH, RPM

RELEASE = (-0.5, 55 * FOOT, 1.8)
SPEED = 78 * MPH
REFERENCE = Path(__file__).parents[1] / "published" / "reference_trajectories.csv"
CURVE = Spin(2300 * RPM, 7.25, 0.7)


def aimed(spin: Spin[float]) -> Flight[float]:
    """A pitch to the middle of the zone."""
    return pitch_to((0.0, 0.7), RELEASE, SPEED, spin)


def movement_of(flight: Flight[float], spin: Spin[float]) -> Movement[float]:
    release = thrown(RELEASE, flight.start.velocity, spin)
    return movement(flight.end, arrive(spinless(release)))


def crossing_of(flight: Flight[float]) -> tuple[float, float]:
    return flight.end.position[0], flight.end.position[2]


def nine_numbers(flight: Flight[float]) -> SteadyPath[float]:
    """Return the path of steady acceleration that fits a flight best, by least squares."""
    times = [moment.time for moment in flight.moments]
    fitted = [np.polyfit(times, [moment.position[i] for moment in flight.moments], 2) for i in range(3)]
    halves, velocity, position = (tuple(float(part[power]) for part in fitted) for power in range(3))
    return SteadyPath(position, velocity, tuple(2 * half for half in halves))


def test_ten_thousand_pitches_are_found_again() -> None:
    draw = np.random.default_rng(11)
    count = 10_000
    speed = draw.uniform(45, 100, count) * MPH
    velocity = launch_velocity(speed, draw.uniform(-0.03, 0.06, count), draw.uniform(-0.04, 0.04, count))
    position = (
        draw.uniform(-1, 1, count),
        draw.uniform(41, 55, count) * FOOT,
        draw.uniform(1, 2, count),
    )
    active = draw.uniform(0.1, 1.0, count)
    most = 0.59 * speed / (0.0369 * active)
    spin = Spin(np.minimum(draw.uniform(600, 3400, count) * RPM, most), draw.uniform(0, 12, count), active)
    pitch = thrown(position, velocity, spin)
    end = arrive(pitch)
    crossing = (end.position[0], end.position[2])
    launched = launch_toward(crossing, movement(end, arrive(spinless(pitch))), position, speed)
    assert all(np.abs(found - real).max() < 1e-6 for found, real in zip(launched, velocity, strict=True))

    found = spin_from_crossing(crossing, position, launched, spin.rate)
    off = np.abs(found.rate / (spin.rate * active) - 1)
    # Close to fully active two spins give the same crossing (see spin_from_crossing); the other is near.
    single = active < 0.98
    assert off[single].max() < 1e-3
    assert off.max() < 3e-2
    hours_off = np.abs((found.clock - spin.clock + 6) % 12 - 6)
    assert hours_off[single].max() < 1 / 600
    assert not found.capped.any()


def test_one_pitch_is_found_from_movement_speed_and_where_it_crossed() -> None:
    flight = aimed(CURVE)
    velocity = launch_toward(crossing_of(flight), movement_of(flight, CURVE), RELEASE, SPEED)
    assert velocity == pytest.approx(flight.start.velocity, abs=1e-4)
    found = spin_from_crossing(crossing_of(flight), RELEASE, velocity, CURVE.rate)
    assert found.active_share(CURVE.rate) == pytest.approx(0.7, abs=1e-4)
    assert found.clock == pytest.approx(7.25, abs=1e-3)


def test_without_the_total_spin_the_bullet_spins_own_push_is_counted_as_active() -> None:
    flight = aimed(CURVE)
    found = spin_from_crossing(crossing_of(flight), RELEASE, flight.start.velocity)
    assert found.active_share(CURVE.rate) == pytest.approx(0.7, abs=0.05)
    assert found.active_share(CURVE.rate) != pytest.approx(0.7, abs=1e-3)


def test_more_active_spin_than_spin_is_reported_and_not_hidden() -> None:
    # Half of the real total: the movement now needs more than all of it.
    flight = aimed(CURVE)
    found = spin_from_crossing(crossing_of(flight), RELEASE, flight.start.velocity, CURVE.rate / 2)
    assert found.active_share(CURVE.rate / 2) > 1.2


def test_a_movement_no_spin_gives_is_capped_and_marked() -> None:
    flight = aimed(Spin(0.0, 0.0, 1.0))
    x, z = crossing_of(flight)
    found = spin_from_crossing((x, z - 60 * INCH), RELEASE, flight.start.velocity)
    assert found.capped
    assert found.beyond(STANDARD_LIFT)
    assert found.spin_ratio == pytest.approx(0.6, abs=1e-9)
    assert found.clock == pytest.approx(6.0, abs=0.1)


def test_a_capped_pitch_does_not_hold_up_the_others() -> None:
    velocity = tuple(np.full(2, part) for part in aimed(CURVE).start.velocity)
    x, z = crossing_of(aimed(CURVE))
    position = tuple(np.full(2, part) for part in RELEASE)
    crossing = (np.array([x, x]), np.array([z, z - 60 * INCH]))
    found = spin_from_crossing(crossing, position, velocity, np.full(2, CURVE.rate))
    assert list(found.capped) == [False, True]
    assert found.rate[0] / CURVE.rate == pytest.approx(0.7, abs=1e-4)


def test_a_crossing_that_is_not_a_number_is_refused() -> None:
    with pytest.raises(SpinNotFoundError, match="check the crossing"):
        spin_from_crossing((float("nan"), 0.7), RELEASE, aimed(CURVE).start.velocity)


@pytest.mark.parametrize("fit", PUBLISHED_FITS, ids=lambda fit: type(fit).__name__)
def test_each_fit_reads_back_what_it_gave(fit: InvertibleFit) -> None:
    ratios = np.linspace(0.01, 0.6, 60)
    assert fit.spin_ratio(fit.coefficient(ratios)) == pytest.approx(ratios, rel=1e-10)
    assert fit.spin_ratio(fit.coefficient(0.25)) == pytest.approx(0.25, rel=1e-12)


@pytest.mark.parametrize("fit", [Saturating(), Exponential()], ids=lambda fit: type(fit).__name__)
def test_a_fit_that_levels_off_is_capped_below_its_ceiling(fit: InvertibleFit) -> None:
    # Read backward, S grows without bound toward C_L = 1 / 2.32 and 0.336.
    flight = aimed(Spin(0.0, 0.0, 1.0))
    x, z = crossing_of(flight)
    found = spin_from_crossing((x, z - 60 * INCH), RELEASE, flight.start.velocity, fit=fit)
    assert found.capped
    assert found.spin_ratio == pytest.approx(0.6, abs=1e-6)


def test_nine_numbers_fitted_to_a_reference_flight_give_its_active_share() -> None:
    # The oblique curve of reference_trajectories.csv has an active share of 0.70 and a clock near 7:30 at
    # release; nine numbers give the mean over the flight, while the axis stays and the path bends.
    rows = csv.DictReader(REFERENCE.open(encoding="utf-8"))
    row = next(row for row in rows if row["description"].startswith("oblique"))
    release = Release(
        tuple(float(row[name]) * FOOT for name in ("x0_ft", "y0_ft", "z0_ft")),
        (float(row["vx0_mps"]), float(row["vy0_mps"]), float(row["vz0_mps"])),
        (float(row["wx_rad_s"]), float(row["wy_rad_s"]), float(row["wz_rad_s"])),
    )
    found = spin_from_path(nine_numbers(fly(release, steps=60)), release.position[1])
    assert found.active_share(float(row["spin_rpm"]) * RPM) == pytest.approx(0.70, abs=0.05)
    assert found.clock == pytest.approx(7.5, abs=0.2)


def test_movement_counted_over_the_last_forty_feet_is_smaller() -> None:
    flight = fly(thrown(RELEASE, aimed(CURVE).start.velocity, CURVE), steps=60)
    path = nine_numbers(flight)
    forces = forces_along(path, RELEASE[1])
    whole = steady_movement(path, forces, RELEASE[1])
    late = steady_movement(path, forces, 40 * FOOT)
    ours = movement_of(flight, CURVE)
    assert whole.amount == pytest.approx(ours.amount, rel=0.05)
    distances = (40 * FOOT - PLATE_FRONT) / (RELEASE[1] - PLATE_FRONT)
    assert late.amount / whole.amount == pytest.approx(distances**2, rel=0.1)

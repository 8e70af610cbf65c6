"""Air against the standard atmosphere, the reference formula for moist air, and worked examples."""

from __future__ import annotations

import pytest

from calculators.physics.air import (
    SEA_LEVEL_PRESSURE,
    density,
    density_at,
    density_cipm_2007,
    standard_pressure,
    standard_temperature,
    vapour_pressure,
)
from calculators.physics.units import FOOT, celsius, fahrenheit


@pytest.mark.parametrize(
    ("pressure", "degrees", "humidity", "reference", "simple"),
    [
        (101325, 20, 0.5, 1.19931, 1.19887),
        (101325, 15, 0.0, 1.22552, 1.22501),
        (101325, 25, 0.5, 1.17732, 1.17693),
        (101325, 30, 0.6, 1.15368, 1.15334),
        (83400, 25, 0.3, 0.97054, 0.97028),
    ],
)
def test_density_of_moist_air(
    pressure: float, degrees: float, humidity: float, reference: float, simple: float
) -> None:
    # CIPM-2007: Picard, Davis, Gläser & Fujii, Metrologia 45 (2008) 149; rows worked out elsewhere.
    assert density_cipm_2007(pressure, degrees, humidity) == pytest.approx(reference, abs=6e-6)
    assert density(pressure, degrees, humidity) == pytest.approx(simple, abs=6e-6)
    assert density(pressure, degrees, humidity) == pytest.approx(reference, rel=5e-4)


@pytest.mark.parametrize(
    ("altitude", "kelvin", "pascal", "kilograms", "share"),
    [
        (0, 288.150, 101325.0, 1.22500, 1.0),
        (304.8, 286.169, 97716.7, 1.18955, 0.9711),
        (500, 284.900, 95461.3, 1.16727, 0.9529),
        (609.6, 284.188, 94213.6, 1.15490, 0.9428),
        (1000, 281.651, 89876.3, 1.11166, 0.9075),
        (1500, 278.402, 84559.7, 1.05810, 0.8638),
        (1524, 278.246, 84311.1, 1.05558, 0.8617),
        (1600, 277.753, 83527.7, 1.04764, 0.8552),
        (2000, 275.154, 79501.4, 1.00655, 0.8217),
        (2500, 271.906, 74691.8, 0.95695, 0.7812),
    ],
)
def test_standard_atmosphere(
    altitude: float, kelvin: float, pascal: float, kilograms: float, share: float
) -> None:
    # U.S. Standard Atmosphere, 1976, at geometric altitudes.
    assert standard_temperature(altitude) == pytest.approx(kelvin, abs=6e-4)
    assert standard_pressure(altitude) == pytest.approx(pascal, abs=0.6)
    dry = density(standard_pressure(altitude), standard_temperature(altitude) - 273.15, 0.0)
    assert dry == pytest.approx(kilograms, rel=3e-5)
    assert dry / density(SEA_LEVEL_PRESSURE, 15.0, 0.0) == pytest.approx(share, abs=6e-5)


def test_five_thousand_feet() -> None:
    # Engineering ToolBox, U.S. Standard Atmosphere in feet: 5000 ft, 20.48e-4 slug/ft3.
    dry = density(standard_pressure(5000 * FOOT), standard_temperature(5000 * FOOT) - 273.15, 0.0)
    assert dry == pytest.approx(20.48e-4 * 14.593902937 / FOOT**3, rel=3e-4)


def test_boiling_and_freezing_vapour() -> None:
    # Tetens' formula meets the known points: 611 Pa at 0 and 2339 Pa at 20 degrees C (steam tables).
    assert vapour_pressure(0.0, 1.0) == pytest.approx(611, abs=1)
    assert vapour_pressure(20.0, 1.0) == pytest.approx(2339, rel=2e-3)


def test_altitude_rules_and_humidity_hardly_counts() -> None:
    # Bahill, Baldwin & Ramberg, Int. J. Sports Sci. Eng. 3 (2009) 109: altitude explains most of the
    # variation of density, temperature far less, humidity least.
    usual = density_at(260.0, 22.0, 0.5)
    by_altitude = abs(density_at(0.0, 22.0, 0.5) - density_at(1609.0, 22.0, 0.5)) / usual
    by_temperature = abs(density_at(260.0, 10.0, 0.5) - density_at(260.0, 35.0, 0.5)) / usual
    by_humidity = abs(density_at(260.0, 22.0, 0.1) - density_at(260.0, 22.0, 0.9)) / usual
    assert by_altitude > by_temperature > by_humidity
    assert by_humidity < 0.01


def test_temperature_scales() -> None:
    # Fixed points of the scales: 32 and 212 degrees F are 0 and 100 degrees C.
    assert (celsius(32.0), celsius(212.0)) == pytest.approx((0.0, 100.0))
    assert fahrenheit(20.0) == pytest.approx(68.0)

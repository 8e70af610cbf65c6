"""How dense the air is: from altitude, temperature and humidity.

References
----------
[1] U.S. Standard Atmosphere, 1976: the layer below 11 km.
[2] O. Tetens, 1930, saturation vapour pressure over water, as used in meteorology.
[3] A. Picard, R. S. Davis, M. Gläser, K. Fujii, "Revised formula for the density of moist air
    (CIPM-2007)", Metrologia 45 (2008) 149. Valid 600-1100 hPa and 15-27 degrees C.
"""

from __future__ import annotations

import math

from calculators.physics.quantity import N

ZERO_CELSIUS = 273.15
SEA_LEVEL_PRESSURE = 101325.0
SEA_LEVEL_TEMPERATURE = 288.15
LAPSE_RATE = 0.0065
PRESSURE_EXPONENT = 5.25588
EARTH_RADIUS = 6356766.0
GAS_CONSTANT_DRY = 287.05
GAS_CONSTANT_VAPOUR = 461.495

REFERENCE_DENSITY = 1.197
"""Air at sea level, 20 degrees C and half humid, rounded as in the reference flights (kg/m3)."""


def standard_temperature(altitude: N) -> N:
    """Return the temperature [K] of the standard atmosphere [1]_ at a geometric altitude [m]."""
    geopotential = EARTH_RADIUS * altitude / (altitude + EARTH_RADIUS)
    return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential


def standard_pressure(altitude: N) -> N:
    """Return the pressure [Pa] of the standard atmosphere [1]_ at a geometric altitude [m]."""
    return SEA_LEVEL_PRESSURE * (standard_temperature(altitude) / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT


def vapour_pressure(celsius: N, humidity: N) -> N:
    """Return the pressure [Pa] of the water vapour in air [2]_.

    celsius: air temperature [degrees C]. humidity: relative humidity, 0 to 1.
    """
    return humidity * 610.78 * math.e ** (17.27 * celsius / (celsius + 237.3))


def density(pressure: N, celsius: N, humidity: N) -> N:
    """Return the density of moist air [kg/m3]: dry air and vapour, each as an ideal gas.

    pressure: station pressure [Pa], never the sea-level figure of a weather report.
    celsius: air temperature [degrees C]. humidity: relative humidity, 0 to 1.
    Within 0.05 % of the full formula [3]_ in ordinary weather.
    """
    kelvin = celsius + ZERO_CELSIUS
    vapour = vapour_pressure(celsius, humidity)
    return (pressure - vapour) / (GAS_CONSTANT_DRY * kelvin) + vapour / (GAS_CONSTANT_VAPOUR * kelvin)


def density_at(altitude: N, celsius: N, humidity: N) -> N:
    """Return the density of moist air [kg/m3] where no barometer is at hand.

    altitude: height above the sea [m]. celsius: temperature [degrees C]. humidity: 0 to 1.
    """
    return density(standard_pressure(altitude), celsius, humidity)


def density_cipm_2007(pressure: float, celsius: float, humidity: float) -> float:
    """Return the density of moist air [kg/m3] by the reference formula [3]_, at 0.04 % carbon dioxide.

    pressure: station pressure [Pa]. celsius: temperature [degrees C]. humidity: 0 to 1.
    """
    p, t, kelvin = pressure, celsius, celsius + ZERO_CELSIUS
    saturated = math.exp(
        1.2378847e-5 * kelvin**2 - 1.9121316e-2 * kelvin + 33.93711047 - 6.3431645e3 / kelvin
    )
    enhancement = 1.00062 + 3.14e-8 * p + 5.6e-7 * t**2
    vapour_share = humidity * enhancement * saturated / p
    virial = (
        1.58123e-6
        - 2.9331e-8 * t
        + 1.1043e-10 * t**2
        + (5.707e-6 - 2.051e-8 * t) * vapour_share
        + (1.9898e-4 - 2.376e-6 * t) * vapour_share**2
    )
    compressibility = 1 - p / kelvin * virial + (p / kelvin) ** 2 * (1.83e-11 - 0.765e-8 * vapour_share**2)
    return 3.483740e-3 * p / (compressibility * kelvin) * (1 - 0.3780 * vapour_share)

"""Units: multiply to come in, divide to go out. Inside, everything is SI and angles are radians.

`78 * MPH` is a speed in metres per second; `speed / MPH` is that speed in miles per hour.

References
----------
[1] International yard and pound agreement, 1959: 1 ft = 0.3048 m and 1 lb = 0.45359237 kg, exactly.
"""

from __future__ import annotations

import math

from calculators.physics.quantity import N

FOOT = 0.3048
INCH = FOOT / 12
MILE = 5280 * FOOT
MPH = MILE / 3600
KMH = 1 / 3.6
POUND = 0.45359237
OUNCE = POUND / 16
RPM = 2 * math.pi / 60
DEGREE = math.pi / 180
CENTIMETRE = 0.01


def celsius(fahrenheit: N) -> N:
    """Return a temperature in degrees Celsius from degrees Fahrenheit."""
    return (fahrenheit - 32.0) / 1.8


def fahrenheit(celsius: N) -> N:
    """Return a temperature in degrees Fahrenheit from degrees Celsius."""
    return celsius * 1.8 + 32.0

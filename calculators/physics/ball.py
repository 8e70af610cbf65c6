"""The ball: its weight and size by the rules, and how far a legal ball may differ.

References
----------
[1] Official Baseball Rules 3.01: 5 to 5 1/4 ounces, 9 to 9 1/4 inches around.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calculators.physics.units import INCH, OUNCE


@dataclass(frozen=True)
class Ball:
    """A ball: `mass` [kg] and `circumference` [m]."""

    mass: float
    circumference: float

    @property
    def radius(self) -> float:
        """Radius [m]."""
        return self.circumference / (2 * math.pi)

    @property
    def area(self) -> float:
        """The disc the air meets [m2]."""
        return math.pi * self.radius**2

    def air_grip(self, density: float) -> float:
        """Return how hard air of `density` [kg/m3] works on this ball: density x area / (2 x mass) [1/m].

        An air force changes the ball's motion by air_grip x coefficient x speed squared.
        """
        return density * self.area / (2 * self.mass)


LIGHTEST, HEAVIEST = 5 * OUNCE, 5.25 * OUNCE
SMALLEST, LARGEST = 9 * INCH, 9.25 * INCH

RULE_BOOK_BALL = Ball((LIGHTEST + HEAVIEST) / 2, (SMALLEST + LARGEST) / 2)
"""The middle of what the rules allow [1]_: 5 1/8 ounces, 9 1/8 inches around."""

LIVELIEST_BALL = Ball(LIGHTEST, LARGEST)
"""The legal ball [1]_ that air moves most: light and large."""

DULLEST_BALL = Ball(HEAVIEST, SMALLEST)
"""The legal ball [1]_ that air moves least: heavy and small."""

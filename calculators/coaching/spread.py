"""How throws scatter: quantiles, deviations, and the ellipse that holds a share of them.

References
----------
[1] Hyndman R.J. and Fan Y., Sample quantiles in statistical packages, American Statistician 50, 1996:
    definition 8, whose bias hardly depends on how many values there are.
[2] Johnson R.A. and Wichern D.W., Applied Multivariate Statistical Analysis, 2007, section 4.2: the ellipse
    of constant density; with two quantities it holds the share 1 - exp(-c^2 / 2).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass


def quantile(values: Sequence[float], share: float) -> float:
    """Return the value below which a share (0 to 1) of at least one value lies [1]_."""
    return _quantile_of_ordered(sorted(values), share)


def _quantile_of_ordered(ordered: Sequence[float], share: float) -> float:
    place = (len(ordered) + 1 / 3) * share + 1 / 3
    below = min(max(math.floor(place), 1), len(ordered))
    above = min(below + 1, len(ordered))
    part = min(max(place - below, 0.0), 1.0)
    return ordered[below - 1] + part * (ordered[above - 1] - ordered[below - 1])


def median(values: Sequence[float]) -> float:
    """Return the middle of at least one value."""
    ordered = sorted(values)
    half = len(ordered) // 2
    return ordered[half] if len(ordered) % 2 else (ordered[half - 1] + ordered[half]) / 2


def middle_two_thirds(values: Sequence[float]) -> float:
    """Return how far apart the middle two thirds of at least one value lie; a wild throw does not count."""
    ordered = sorted(values)
    return _quantile_of_ordered(ordered, 5 / 6) - _quantile_of_ordered(ordered, 1 / 6)


def mean(values: Sequence[float]) -> float:
    """Return the average of at least one value."""
    return math.fsum(values) / len(values)


def deviation(values: Sequence[float]) -> float:
    """Return the standard deviation of at least two values, as an estimate for the pitcher (n - 1)."""
    return pooled_deviation([values])


def pooled_deviation(groups: Sequence[Sequence[float]]) -> float:
    """Return the standard deviation inside groups, whatever their means; some group needs two values."""
    squares = math.fsum(
        (value - centre) ** 2 for group in groups for centre in [mean(group)] for value in group
    )
    return math.sqrt(squares / sum(len(group) - 1 for group in groups))


@dataclass(frozen=True)
class Ellipse:
    """Where a share of the throws lies, if they scatter like a normal cloud.

    centre, long, short: in the unit of the values; long and short are half axes.
    turned: from the first quantity's axis to the long axis, toward the second [rad], -pi/2 to pi/2.
    """

    centre: tuple[float, float]
    long: float
    short: float
    turned: float

    @property
    def area(self) -> float:
        """The area inside, in the unit squared."""
        return math.pi * self.long * self.short


def ellipse(firsts: Sequence[float], seconds: Sequence[float], share: float) -> Ellipse:
    """Return the ellipse that holds a share (0 to 1) of throws measured in two quantities [2]_.

    firsts, seconds: the two quantities of each throw, in the same order; at least two throws.
    """
    centre = (mean(firsts), mean(seconds))
    across, along, both = covariance(firsts, seconds)
    middle, half = (across + along) / 2, math.hypot((across - along) / 2, both)
    reach = -2 * math.log(1 - share)
    return Ellipse(
        centre,
        math.sqrt(reach * (middle + half)),
        math.sqrt(reach * max(0.0, middle - half)),
        math.atan2(2 * both, across - along) / 2,
    )


def covariance(firsts: Sequence[float], seconds: Sequence[float]) -> tuple[float, float, float]:
    """Return both variances and the covariance of two quantities (n - 1), from at least two throws."""
    x, y = mean(firsts), mean(seconds)
    pairs = [(first - x, second - y) for first, second in zip(firsts, seconds, strict=True)]
    degrees = len(pairs) - 1
    return (
        math.fsum(a * a for a, _ in pairs) / degrees,
        math.fsum(b * b for _, b in pairs) / degrees,
        math.fsum(a * b for a, b in pairs) / degrees,
    )

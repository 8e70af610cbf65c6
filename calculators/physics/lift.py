"""How strongly spin pushes the ball: the lift coefficient as a function of the spin ratio.

The force is 1/2 density x area x C_L x speed squared, along spin x motion. C_L depends on the spin ratio
S = radius x transverse spin / speed. Spin along the motion counts for nothing: using the total spin in S,
or scaling C_L(total) by the sine of the angle, is another model and gives other answers.

The fits agree within a tenth where pitches live and part company above S = 0.35 (slow balls, much spin).

References
----------
[1] G. S. Sawicki, M. Hubbard, W. J. Stronge, "How to hit home runs: optimum baseball bat swing
    parameters for maximum range trajectories", Am. J. Phys. 71 (2003) 1152.
[2] A. M. Nathan, "The effect of spin on the flight of a baseball", Am. J. Phys. 76 (2008) 119:
    measured C_L agrees with [1] for S below 0.3 and hardly depends on speed.
[3] R. Cross, Physics of Baseball & Softball, Springer, 2011.
[4] University course notes on computational physics (trajectory of a baseball), fit to experiments.
[5] A. M. Nathan, notes on the three-dimensional spin axis, 2015, revised 2018 and 2020.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

from calculators.physics.quantity import N, greater, lesser, maths_for


class LiftFit(Protocol):
    """A published curve through measured lift coefficients."""

    @property
    def source(self) -> str:
        """Id of the source in the handbook's list."""
        ...

    @property
    def measured(self) -> tuple[float, float]:
        """Spin ratios between which the curve rests on measurements."""
        ...

    def coefficient(self, spin_ratio: N) -> N:
        """Return C_L at a spin ratio of zero or more."""
        ...


class InvertibleFit(LiftFit, Protocol):
    """A fit that can be read backward."""

    def spin_ratio(self, coefficient: N) -> N:
        """Return the spin ratio at which the fit has this C_L, which must lie below the fit's ceiling."""
        ...


@dataclass(frozen=True)
class TwoLines:
    """Two straight lines that meet [1]_: the handbook's own choice, confirmed by [2]_ below S = 0.3."""

    source: str = "sawicki-2003"
    measured: tuple[float, float] = (0.0, 0.3)

    def coefficient(self, spin_ratio: N) -> N:
        """Return the lower of 1.5 S and 0.09 + 0.6 S."""
        return lesser(1.5 * spin_ratio, 0.09 + 0.6 * spin_ratio)

    def spin_ratio(self, coefficient: N) -> N:
        """Return the larger of C_L / 1.5 and (C_L - 0.09) / 0.6."""
        return greater(coefficient / 1.5, (coefficient - 0.09) / 0.6)


@dataclass(frozen=True)
class Saturating:
    """A curve that levels off [3]_: S / (0.4 + 2.32 S)."""

    source: str = "cross-2011"
    measured: tuple[float, float] = (0.05, 0.5)

    def coefficient(self, spin_ratio: N) -> N:
        """Return S / (0.4 + 2.32 S)."""
        return spin_ratio / (0.4 + 2.32 * spin_ratio)

    def spin_ratio(self, coefficient: N) -> N:
        """Return 0.4 C_L / (1 - 2.32 C_L)."""
        return 0.4 * coefficient / (1.0 - 2.32 * coefficient)


@dataclass(frozen=True)
class Exponential:
    """A curve that levels off at `ceiling` [5]_: 0.336 (1 - exp(-6.041 S))."""

    ceiling: float = 0.336
    source: str = "nathan-axis-note"
    measured: tuple[float, float] = (0.05, 0.3)

    def coefficient(self, spin_ratio: N) -> N:
        """Return 0.336 (1 - exp(-6.041 S))."""
        return self.ceiling * (1.0 - math.e ** (-6.041 * spin_ratio))

    def spin_ratio(self, coefficient: N) -> N:
        """Return -ln(1 - C_L / 0.336) / 6.041."""
        logarithm: N = maths_for(coefficient).log(1.0 - coefficient / self.ceiling)
        return -logarithm / 6.041


@dataclass(frozen=True)
class PowerLaw:
    """A power of the spin ratio [4]_: 0.62 S^0.7."""

    source: str = "course-notes-lift"
    measured: tuple[float, float] = (0.05, 0.3)

    def coefficient(self, spin_ratio: N) -> N:
        """Return 0.62 S^0.7."""
        return 0.62 * spin_ratio**0.7

    def spin_ratio(self, coefficient: N) -> N:
        """Return (C_L / 0.62)^(1 / 0.7)."""
        return (coefficient / 0.62) ** (1 / 0.7)


@dataclass(frozen=True)
class Proportional:
    """Textbook lift in proportion to spin, `slope` x S: roughly right at slope 1 and S below 0.3."""

    slope: float = 1.0
    source: str = "nathan-spin-down-2008"
    measured: tuple[float, float] = (0.0, 0.3)

    def coefficient(self, spin_ratio: N) -> N:
        """Return slope x S."""
        return self.slope * spin_ratio


@dataclass(frozen=True)
class Steady:
    """The same lift at any spin: for exercises in which C_L is given."""

    value: float
    source: str = "white-fluid-mechanics"
    measured: tuple[float, float] = (0.0, math.inf)

    def coefficient(self, spin_ratio: N) -> N:
        """Return the given value."""
        return 0.0 * spin_ratio + self.value


@dataclass(frozen=True)
class Scaled:
    """Another fit raised or lowered: `factor` 1.1 stands for a tenth more lift."""

    fit: LiftFit
    factor: float

    @property
    def source(self) -> str:
        """Id of the source of the fit."""
        return self.fit.source

    @property
    def measured(self) -> tuple[float, float]:
        """Spin ratios between which the fit rests on measurements."""
        return self.fit.measured

    def coefficient(self, spin_ratio: N) -> N:
        """Return the fit's C_L times the factor."""
        return self.factor * self.fit.coefficient(spin_ratio)


STANDARD_LIFT = TwoLines()

PUBLISHED_FITS: tuple[InvertibleFit, ...] = (STANDARD_LIFT, Saturating(), PowerLaw(), Exponential())

LEAST_SPREAD = 0.10
"""How far one ball's movement may differ from any fit, as a share of it (estimate)."""

MOST_SPIN_RATIO = 0.6
"""Largest spin ratio measured [2]_; read backward, the fits run away beyond it."""

FITS_PART_AT = 0.35
"""Spin ratio above which the fits no longer agree."""


def spread(spin_ratio: float) -> float:
    """Return how uncertain C_L is at a spin ratio, as a share of itself: never less than LEAST_SPREAD.

    It is half the range of the published fits over their middle.
    """
    values = [fit.coefficient(spin_ratio) for fit in PUBLISHED_FITS]
    low, high = min(values), max(values)
    return max(LEAST_SPREAD, (high - low) / (high + low)) if high > 0 else LEAST_SPREAD

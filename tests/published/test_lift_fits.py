"""The lift fits against their published formulas, tabulated apart from this code.

Sawicki, Hubbard & Stronge 2003; Cross 2011; a power law from university course notes; the exponential of
Nathan's notes on the spin axis; and lift in proportion to spin, as Adair and Nathan use for rough sums.
"""

from __future__ import annotations

import pytest

from calculators.physics.lift import (
    Exponential,
    LiftFit,
    PowerLaw,
    Proportional,
    Saturating,
    Scaled,
    TwoLines,
    spread,
)

FITS: tuple[LiftFit, ...] = (TwoLines(), Saturating(), PowerLaw(), Exponential(), Proportional())

TABLE = {
    0.02: (0.0300, 0.0448, 0.0401, 0.0382, 0.02),
    0.05: (0.0750, 0.0969, 0.0762, 0.0876, 0.05),
    0.08: (0.1200, 0.1366, 0.1058, 0.1288, 0.08),
    0.10: (0.1500, 0.1582, 0.1237, 0.1524, 0.10),
    0.15: (0.1800, 0.2005, 0.1643, 0.2002, 0.15),
    0.20: (0.2100, 0.2315, 0.2010, 0.2356, 0.20),
    0.25: (0.2400, 0.2551, 0.2349, 0.2618, 0.25),
    0.30: (0.2700, 0.2737, 0.2669, 0.2811, 0.30),
    0.40: (0.3300, 0.3012, 0.3265, 0.3060, 0.40),
    0.50: (0.3900, 0.3205, 0.3817, 0.3196, 0.50),
    0.60: (0.4500, 0.3348, 0.4336, 0.3270, 0.60),
}


@pytest.mark.parametrize("spin_ratio", TABLE)
def test_fits_give_their_tabulated_values(spin_ratio: float) -> None:
    found = [fit.coefficient(spin_ratio) for fit in FITS]
    assert found == pytest.approx(TABLE[spin_ratio], abs=6e-5)


@pytest.mark.parametrize(
    ("spin_ratio", "half_range"), [(0.02, 0.20), (0.10, 0.12), (0.20, 0.08), (0.30, 0.03), (0.50, 0.10)]
)
def test_how_far_the_fits_differ(spin_ratio: float, half_range: float) -> None:
    # Half the range of the four curved fits over their middle, worked out from the table above.
    curved = [fit.coefficient(spin_ratio) for fit in FITS[:4]]
    assert (max(curved) - min(curved)) / (max(curved) + min(curved)) == pytest.approx(half_range, abs=0.006)
    assert spread(spin_ratio) == pytest.approx(max(0.10, half_range), abs=0.006)


def test_no_spin_no_lift() -> None:
    assert all(fit.coefficient(0.0) == 0.0 for fit in FITS)


def test_the_form_that_circulates_under_a_wrong_name_is_not_used() -> None:
    # C_L = 1.5 S / (0.4 + 2.32 S) is often quoted; it is half as large again as Cross's own fit.
    wrong = 1.5 * 0.2 / (0.4 + 2.32 * 0.2)
    assert wrong == pytest.approx(0.347, abs=5e-4)
    assert Saturating().coefficient(0.2) == pytest.approx(wrong / 1.5, rel=1e-12)
    assert all(fit.coefficient(0.2) < 0.75 * wrong for fit in FITS)


def test_ideal_flow_lift_is_not_used() -> None:
    # Kutta-Joukowski lift on a sphere (about 5.3 S) and NASA's teaching-page form (about 6.3 S) are five to
    # six times the measured lift.
    assert all(4 < 5.3 * 0.2 / fit.coefficient(0.2) < 6 for fit in FITS)


def test_a_scaled_fit_is_the_same_curve_raised() -> None:
    raised = Scaled(TwoLines(), 1.1)
    assert raised.coefficient(0.2) == pytest.approx(0.231, abs=1e-12)
    assert (raised.source, raised.measured) == ("sawicki-2003", (0.0, 0.3))
